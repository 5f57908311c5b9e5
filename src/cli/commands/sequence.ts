// `sequence FILE`: the best order of all steps, with its proof.

import { sequenceOf, type WorkUp } from '../../job/workUp.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import { printProblem } from '../../problem/problem.ts'
import { aboutWork, titleOf, unitsNote } from '../aboutWork.ts'
import type { SequenceAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { needsOf } from '../because.ts'
import { conflictAnswer } from '../conflictAnswer.ts'
import { faultAnswer } from '../faults.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { noReturnsOf } from '../noReturns.ts'
import { openWork } from '../openWork.ts'
import { progressOf } from '../progress.ts'
import { penFor } from '../words/pen.ts'
import { beforeSteps, sequenceWords } from '../words/sequenceWords.ts'

export interface SequenceAsked extends Asked {
  /** States that the search may look at. */
  readonly effort?: number
  /** Ends the search early. */
  readonly seconds?: number
}

export async function sequence(io: Io, file: string, asked: SequenceAsked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { result, wall_s } = searched(work, io, asked)
  if (asked.json) io.out(jsonLine(sequenceAnswerOf(file, work, { result, wall_s })))
  else {
    const pen = penFor(io)
    io.out([pen.strong(titleOf(work)), ...unitsNote(work, asked), ...sequenceWords(work, result, pen)].join('\n'))
    tellFaults(work, io)
  }
  return result.value && work.faults.length === 0 ? 0 : 1
}

/** What contradicts itself, beside the answer that may rest on it. */
export function tellFaults({ faults }: WorkUp, { err }: Pick<Io, 'err'>): void {
  for (const fault of faults) err(printProblem(fault))
}

/** The search, with word of it on the way when it takes long. */
export function searched(
  work: WorkUp,
  io: Io,
  { effort, seconds }: Pick<SequenceAsked, 'effort' | 'seconds'>,
): { result: PlanResult; wall_s: number } {
  const began = io.now()
  const result = sequenceOf(work, {
    ...(effort !== undefined && { effort }),
    ...(seconds !== undefined && { timeLimit_s: seconds, now: io.now }),
    onProgress: progressOf(io),
  })
  return { result, wall_s: (io.now() - began) / 1000 }
}

function sequenceAnswerOf(
  file: string,
  work: WorkUp,
  { result, wall_s }: { result: PlanResult; wall_s: number },
): SequenceAnswer {
  const { problem } = work
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const { value, bound, proven, feasible, conflict, effort } = result
  const named = (name: string) => (name === 'any' ? null : name)
  return {
    schema: 'matchmark-sequence/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    effort,
    seed: 0,
    value: value && [...value],
    bound: bound && [...bound],
    proven,
    feasible,
    tries: triesAnswer(result),
    assumptions: result.assumptions.map(({ relation, reason, wouldChange }) => ({
      relation,
      says: reason.says,
      standing: reason.standing,
      wouldChange,
    })),
    steps: result.steps.map(({ op, mode, start_s, end_s, people }) => {
      const operation = operations.get(op)!
      const { setup, people: hands } = operation.modes.find(({ id }) => id === mode)!
      return {
        id: op,
        does: operation.does,
        mode,
        start_s,
        end_s,
        people: people ? [...people] : null,
        hands,
        workpiece: named(setup.workpiece),
        attitude: setup.workpiece === 'any' ? null : named(setup.attitude),
        station: named(setup.station),
        tools: setup.tools === 'any' ? [] : [...setup.tools],
        needIds: needsOf(operation, mode).map(({ id }) => id),
      }
    }),
    turnovers: beforeSteps(problem, result)
      .flatMap(({ changes }) => changes)
      .filter(({ what }) => what === 'attitude').length,
    minutes: value && value[1] / 60,
    noReturn: noReturnsOf(problem, result).map(({ step, says }) => ({ step, says })),
    conflict: conflictAnswer(conflict),
    faults: work.faults.map(faultAnswer),
    wall_s,
  }
}

function triesAnswer({ tries }: PlanResult): SequenceAnswer['tries'] {
  if (!tries) return null
  const { low, usual, high, bound, proven, loops } = tries
  return {
    low: [...low],
    usual: [...usual],
    high: [...high],
    bound: [...bound],
    proven,
    loops: loops.map(({ again, renews, noReturn, ...loop }) => ({
      ...loop,
      again: [...again],
      renews: [...renews],
      noReturn: [...noReturn],
    })),
  }
}
