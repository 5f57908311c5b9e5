// When an opening is open, shut and tight.
import type { Need, Reason } from '../../planning/model/problem.ts'
import type { OpeningId, PartId } from '../model/unit.ts'
import type { Frame } from './frame.ts'
import { oneOf, reason } from './reasons.ts'

export interface Openings {
  /** Hand, tool, eye or part comes through it: what has to be so at that step. */
  readonly open: (ask: { opening: OpeningId; step: string; whatFor: string }) => readonly Need[]
  /** The steps after which it is tight, nested holes included; empty when nothing is known to close it. */
  readonly tight: (opening: OpeningId) => readonly string[]
  readonly closers: (opening: OpeningId) => readonly PartId[]
  /** Home and secured: the part's step, what brings it home, and what makes it fast. */
  readonly fast: (part: PartId) => readonly string[]
}

export function openingsOf(frame: Frame): Openings {
  const { unit, joints } = frame
  const stepOf = (id: PartId) => frame.movers.find((part) => frame.together(part.id).some((each) => each.id === id))?.id

  const closers = (opening: OpeningId) =>
    [...unit.parts.values()].filter((part) => part.closes.includes(opening)).flatMap((part) => stepOf(part.id) ?? [])

  const closingSteps = (part: PartId) =>
    joints.closing.filter((each) => each.part === part).flatMap((each) => each.steps)

  const fast = (part: PartId): readonly string[] => {
    const step = stepOf(part) ?? part
    const head = frame.chain(step).at(-1) ?? step
    const homeWith = frame.parking(head)?.homeWith
    const steps = joints.fast.filter((each) => each.part === step || each.part === part).flatMap((each) => each.steps)
    return [...new Set([step, ...(homeWith ? [head, ...fast(homeWith)] : []), ...steps])]
  }

  const open: Openings['open'] = ({ opening, step, whatFor }) => {
    const known = unit.openings.get(opening)
    const why = (says: string): Reason =>
      reason({ code: 'OPENING', says, origin: 'geometry', standing: 'told', facts: { opening, step } })
    const needs: Need[] = []
    for (const closer of closers(opening)) {
      if (closer === step) continue
      // Work on the closer itself goes on through the hole that it closes.
      if (joints.closing.some((each) => each.part === closer && each.steps.includes(step))) continue
      const says = `${whatFor} goes through the ${opening}, which ${closer} shuts.`
      for (const last of closingSteps(closer)) {
        if (last === step) continue
        needs.push(
          oneOf(
            `${step}: ${opening} before ${last}`,
            [{ done: [], notDone: [last] }],
            why(`${whatFor} goes through the ${opening}, which is shut from ${last} on.`),
          ),
        )
      }
      needs.push(
        oneOf(
          `${step}: ${opening} open of ${closer}`,
          frame.chain(closer).map((id) => ({ done: [], notDone: [id] })),
          why(says),
        ),
      )
    }
    if (known?.in) {
      const carrier = stepOf(known.in)
      if (carrier && carrier !== step && carrier !== unit.housing) {
        needs.push(
          oneOf(
            `${step}: ${opening} is there`,
            [{ done: [...frame.chain(carrier)], notDone: [] }],
            why(`${whatFor} goes through the ${opening}, a hole in ${known.in}.`),
          ),
        )
      }
    }
    return needs
  }

  const tight = (opening: OpeningId, seen: readonly OpeningId[] = []): readonly string[] => {
    if (seen.includes(opening)) return []
    const by = closers(opening)
    const nested = [...unit.openings.values()].filter((each) => each.in && by.includes(stepOf(each.in) ?? each.in))
    return [
      ...new Set([
        ...by.flatMap((part) => frame.chain(part).flatMap(fast)),
        ...nested.flatMap((each) => tight(each.id, [...seen, opening])),
      ]),
    ]
  }

  return { open, tight: (opening) => tight(opening), closers, fast }
}
