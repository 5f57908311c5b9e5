// Checks, trials and fills: what each wants, what must not be there yet, and where the eye has to come.
import type { Mode, Need, Operation } from '../../planning/model/problem.ts'
import type { Check, Fill } from '../model/unit.ts'
import { ASSEMBLY_BENCH, durationOf } from './durations.ts'
import type { Frame } from './frame.ts'
import type { Openings } from './openings.ts'
import { after, oneOf, reason, whileOneIsAway } from './reasons.ts'
import type { Way } from './ways.ts'

const CHECK_MINUTES = 5
const FILL_MINUTES = 8

export function plainMode({
  frame,
  id,
  tools,
  workpiece,
}: {
  frame: Frame
  id: string
  tools: readonly string[]
  workpiece?: string | undefined
}): Mode {
  const onBench = workpiece !== undefined && workpiece !== frame.unit.housing
  return {
    id: 'as told',
    setup: {
      workpiece: workpiece ?? frame.unit.housing,
      attitude: onBench ? 'any' : (frame.unit.lies.get(id) ?? 'any'),
      station: ASSEMBLY_BENCH,
      tools: tools.length ? [...tools] : 'any',
    },
    people: 1,
    needs: [],
  }
}

/** "Wants this part" means its step, what brings it home and what makes it fast; another check or step means just that. */
export const homeSteps = (name: string, frame: Frame, openings: Openings): readonly string[] =>
  frame.unit.parts.has(name) ? openings.fast(name) : [name]

export function checkStep(check: Check, ways: readonly Way[], frame: Frame, openings: Openings): Operation {
  const { joints } = frame
  const needs: Need[] = []
  const kind = check.trial.length ? 'TRIAL' : 'CHECK'
  const why = (says: string) =>
    reason({ code: kind, says, origin: 'process', standing: 'told', facts: { check: check.id } })
  for (const wanted of check.wants) {
    const loop = check.settles ? ` and fast: it settles ${check.settles}` : ''
    needs.push(
      after(
        `${check.id}: wants ${wanted}`,
        homeSteps(wanted, frame, openings),
        why(`${check.id} wants ${wanted} home${loop}.`),
      ),
    )
  }
  for (const absent of check.without) {
    needs.push(
      oneOf(
        `${check.id}: without ${absent}`,
        [{ done: [], notDone: [absent] }],
        why(`${check.id} is made without ${absent}.`),
      ),
    )
  }
  for (const opening of check.reach) needs.push(...openings.open({ opening, step: check.id, whatFor: check.id }))
  if (check.onBench) {
    needs.push(
      whileOneIsAway(
        `${check.id}: on the bench`,
        frame.chain(check.onBench),
        why(`${check.id} is made on ${check.onBench} on the bench, before that moves.`),
      ),
    )
  }
  for (const part of check.trial) {
    const later = [part, ...joints.closing.filter((each) => each.part === part).flatMap((each) => each.steps)]
    for (const step of later) {
      needs.push(
        oneOf(
          `${check.id}: before ${step}`,
          [{ done: [], notDone: [step] }],
          why(`${check.id} is a trial: ${part} comes off again, and ${step} comes after it.`),
        ),
      )
    }
  }
  const tried = check.trial.length === 1 ? ways.filter((way) => way.part === check.trial[0] && way.mode) : []
  const modes = tried.length
    ? tried.map((way) => ({
        ...(way.mode as Mode),
        needs: (way.mode as Mode).needs.map((need) => ({ ...need, id: `${check.id}, ${need.id}` })),
      }))
    : [plainMode({ frame, id: check.id, tools: check.tools, workpiece: check.onBench })]
  return {
    id: check.id,
    does: check.does ?? `Check: ${check.id}`,
    duration_s: durationOf(check.takes, CHECK_MINUTES),
    modes,
    needs,
  }
}

export function fillStep(fill: Fill, frame: Frame, openings: Openings): Operation {
  const needs: Need[] = []
  const why = (says: string) =>
    reason({ code: 'FILL', says, origin: 'connection', standing: 'told', facts: { fill: fill.id } })
  for (const opening of fill.above) {
    const steps = openings.tight(opening)
    if (steps.length === 0) continue
    needs.push(
      after(
        `${fill.id}: ${opening} tight`,
        steps,
        why(`${fill.id} stands above the ${opening}: that has to be tight first.`),
      ),
    )
  }
  for (const step of fill.after) {
    needs.push(
      after(`${fill.id}: after ${step}`, homeSteps(step, frame, openings), why(`${fill.id} only after ${step}.`)),
    )
  }
  if (fill.through) needs.push(...openings.open({ opening: fill.through, step: fill.id, whatFor: fill.id }))
  return {
    id: fill.id,
    does: `Fill ${fill.litres ? `${fill.litres} l of ` : ''}${fill.what ?? fill.id}${fill.through ? ` through the ${fill.through}` : ''}`,
    duration_s: durationOf(fill.takes, FILL_MINUTES),
    modes: [plainMode({ frame, id: fill.id, tools: [] })],
    needs,
  }
}
