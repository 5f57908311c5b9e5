import type { StepState } from './state.ts'

/** Whether this person did the step, since it was last undone: his hands cannot vouch for it. */
export const didIt = ({ done }: Pick<StepState, 'done'>, person: string): boolean =>
  done.some((signature) => signature.person === person)
