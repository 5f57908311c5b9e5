// What the page asks of the worker, and what it answers. Plain data both ways.

import type { Job } from '../../job/model/job.ts'
import type { Drawing } from '../../paper/drawings/drawing.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { NextTry } from '../../unit/tries/nextTry.ts'
import type { Room } from '../model/drawings.ts'
import type { TakeOff } from '../model/takeOff.ts'
import type { ProposalAsked } from '../model/tryProposal.ts'
import type { StandingStep, WorkedJob } from '../model/workedJob.ts'

/** All that a job is worked out from. */
export interface Sources {
  readonly unitText: string
  readonly unitFile: string
  readonly job: Job
  readonly sequence?: readonly StandingStep[]
  readonly system: System
}

export type Question =
  | { readonly asks: 'work'; readonly id: number; readonly sources: Sources }
  | { readonly asks: 'step'; readonly id: number; readonly step: string; readonly room: Room }
  | { readonly asks: 'line'; readonly id: number; readonly line: string; readonly room: Room }
  | { readonly asks: 'next try'; readonly id: number; readonly asked: ProposalAsked }
  | { readonly asks: 'off'; readonly id: number; readonly step: string; readonly done: readonly string[] }

export type Answer =
  | { readonly id: number; readonly is: 'progress'; readonly states: number }
  | { readonly id: number; readonly is: 'worked'; readonly worked: WorkedJob }
  | { readonly id: number; readonly is: 'drawn'; readonly drawing: Drawing | undefined }
  | { readonly id: number; readonly is: 'next try'; readonly next: NextTry }
  | { readonly id: number; readonly is: 'off'; readonly off: TakeOff | undefined }
  /** What was received cannot be worked out: what people can read of it. */
  | { readonly id: number; readonly is: 'trouble'; readonly says: readonly string[] }
