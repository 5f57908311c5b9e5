// Needs and reasons, worded. Every sentence that a derived relation carries is made here or beside its rule.
import type { Alternative, Need, OpId, Origin, Reason, Standing } from '../../planning/model/problem.ts'
import { weaker } from '../lines/answer.ts'
import type { Solid } from '../lines/shape.ts'
import type { Span } from '../lines/span.ts'
import type { Unit } from '../model/unit.ts'

const NO_FACTS = {}

export function reason({
  code,
  says,
  origin,
  standing,
  source,
  facts,
}: {
  code: string
  says: string
  origin: Origin
  standing: Standing
  source?: string | undefined
  facts?: Reason['facts']
}): Reason {
  return { code, says, facts: facts ?? NO_FACTS, origin, standing, ...(source ? { source } : {}) }
}

/** What it costs to give up an order that a person told; nothing else is given up. */
const GIVE_UP: Readonly<Record<Standing, number>> = { supposed: 1, usual: 2, told: 5, seen: 10 }

/** Only after these. */
export const after = (id: string, steps: readonly OpId[], why: Reason): Need => ({
  id,
  anyOf: [{ done: [...steps], notDone: [] }],
  reason: why,
  giveUp: why.origin === 'author' ? GIVE_UP[why.standing] : 'never',
})

/** Only while at least one of these has not been done. */
export const whileOneIsAway = (id: string, steps: readonly OpId[], why: Reason): Need => ({
  id,
  anyOf: [...new Set(steps)].map((step) => ({ done: [], notDone: [step] })),
  reason: why,
  giveUp: 'never',
})

export const oneOf = (id: string, anyOf: readonly Alternative[], why: Reason): Need => ({
  id,
  anyOf,
  reason: why,
  giveUp: 'never',
})

/** The same need, no better known than what it rests on besides. */
export const restingOn = (need: Need, grounds: Standing): Need => ({
  ...need,
  reason: { ...need.reason, standing: weaker(need.reason.standing, grounds) },
})

/** A length in the file's unit, as short as it can be said. */
export function size(span: Span, unit: Unit): string {
  const text = (metres: number) => {
    if (metres === Number.POSITIVE_INFINITY) return '…'
    if (metres === Number.NEGATIVE_INFINITY) return '…'
    const value = unit.lengthUnit === 'in' ? (metres * 1000) / 25.4 : metres * 1000
    return String(Number(value.toFixed(unit.lengthUnit === 'in' ? 4 : 3))).replace('-', '−')
  }
  const mark = span.standing === 'supposed' ? '≈ ' : ''
  if (span.low === span.high) return mark + text(span.low)
  if (span.low === Number.NEGATIVE_INFINITY && span.high === Number.POSITIVE_INFINITY) return '?'
  return `${mark}${text(span.low)}..${text(span.high)}`
}

/** "Ø 72/35 at 153..170": a ring as it would be said over the bench. */
export function ring(solid: Solid, unit: Unit): string {
  const place = `at ${size(solid.from, unit)}..${size(solid.to, unit)}`
  if (solid.wall && solid.inside.high === 0) return `the closed wall ${place}`
  if (solid.wall && solid.inside.high === Number.POSITIVE_INFINITY) return `the unmeasured bore ${place}`
  if (solid.wall) return `bore Ø ${size(solid.inside, unit)} ${place}`
  const hole = solid.inside.high === 0 ? '' : `/${size(solid.inside, unit)}`
  return `${solid.tool ? `${solid.tool} ` : ''}Ø ${size(solid.outside, unit)}${hole} ${place}`
}
