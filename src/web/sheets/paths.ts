// The addresses of the sheets. A step is named, not numbered: in another sequence it has another number.
import type { Stage } from '../model/stages.ts'

export const sequencePath = (job: string): string => `/job/${encodeURIComponent(job)}/sequence`
export const buildPath = (job: string, step?: string): string =>
  `/job/${encodeURIComponent(job)}/build${step === undefined ? '' : `/${encodeURIComponent(step)}`}`

/** Sheets that only show what stands: read there, done elsewhere. */
export const SHOWN = [
  'book in',
  'strip',
  'inspect',
  'decide',
  'kit',
  'set',
  'prove',
  'hand over',
] as const satisfies Stage[]
export type Shown = (typeof SHOWN)[number]

const slug = (stage: Stage): string => stage.replaceAll(' ', '-')
export const shownStage = (name: string): Shown | undefined => SHOWN.find((stage) => slug(stage) === name)

/** Where each stage leads; a stage without an address has no sheet. */
export const stagePaths = (job: string): Readonly<Partial<Record<Stage, string>>> => ({
  ...Object.fromEntries(SHOWN.map((stage) => [stage, `/job/${encodeURIComponent(job)}/${slug(stage)}`])),
  sequence: sequencePath(job),
  build: buildPath(job),
})
