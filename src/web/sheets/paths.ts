// The addresses of the sheets. A step is named, not numbered: in another sequence it has another number.
import type { Stage } from '../model/stages.ts'

export const sequencePath = (job: string): string => `/job/${encodeURIComponent(job)}/sequence`
export const buildPath = (job: string, step?: string): string =>
  `/job/${encodeURIComponent(job)}/build${step === undefined ? '' : `/${encodeURIComponent(step)}`}`

export const stagePaths = (job: string): Readonly<Partial<Record<Stage, string>>> => ({
  sequence: sequencePath(job),
  build: buildPath(job),
})
