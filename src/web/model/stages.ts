// The stages of a job, in their order, and how far each has come by what the journal has of it.
export const STAGES = [
  'book in',
  'strip',
  'inspect',
  'decide',
  'kit',
  'set',
  'sequence',
  'build',
  'prove',
  'hand over',
  'teach',
] as const
export type Stage = (typeof STAGES)[number]
export type StageState = 'to come' | 'in hand' | 'done'
