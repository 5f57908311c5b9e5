import type { Second } from '../../../quantity/quantity.ts'
import type { Connection, Known, Unit } from '../../model/unit.ts'
import { usualTime } from '../amounts.ts'
import type { Contribution, OrderDraft, StepDraft } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import { toldOrder, usualOrder } from '../order.ts'
import type { FastenersGiven } from './given.ts'
import { lengthsOf, orderOf, placesOf } from './places.ts'
import { setsHolding } from './setsHolding.ts'
import { stagesText } from './stages.ts'

/**
 * A set of fasteners is work inside the step of the part that it holds; with `own step` it is a step that bears its name,
 * and the part is not fast before. Dowels come before fitted bolts, these before bolts with clearance; a lock comes after the
 * torque, and after the check that settles something with this joint.
 */
export function steps(connection: Connection, given: FastenersGiven, unit: Unit): Contribution {
  const { id } = connection
  const { holds } = given
  const own = given['own step'] === true
  const tightening = own ? id : holds
  const lock = given.lock
  const lockStep = lock?.['own step'] ? `lock ${id}` : undefined
  const work = tighteningWork(given, unit)
  const lockWork = lock && !lockStep ? [lockText(given, id)] : []

  const orders: OrderDraft[] = []
  if (own) orders.push(usualOrder(holds, id, `${holds} is home before it is tightened down.`))
  for (const first of given.after ?? []) {
    orders.push(toldOrder(first, tightening, `${id}: tightened after ${first}.`))
  }
  if (own) orders.push(...looserSetsAfter(connection, given, unit))
  if (lockStep) orders.push(...ordersOfLock({ lockStep, tightening, holds, unit }))

  const ownSteps: StepDraft[] = own
    ? [
        {
          id,
          does: given.dowels ? `Set the dowels of ${holds}: ${id}` : `Tighten ${id} of ${holds}`,
          as: holds,
          takes: given.takes ?? tighteningTime(given),
          tools: given.tools ?? [],
          reach: [],
          within: [...work, ...lockWork],
        },
      ]
    : []
  const lockSteps: StepDraft[] = lockStep
    ? [
        {
          id: lockStep,
          does: lockText(given, id),
          as: holds,
          takes: lock?.takes ?? usualTime(2, 5),
          tools: [],
          reach: [],
          noReturn: `${lock?.with ?? 'The lock'} is renewed once it was bent, staked or cut.`,
        },
      ]
    : []

  const carried = [...(given.screws ?? []), ...(lock?.part ? [lock.part] : [])]
  return {
    ...NOTHING,
    steps: [...ownSteps, ...lockSteps],
    orders,
    within: own ? [] : [...work, ...lockWork].map((does) => ({ part: holds, does })),
    fast: own ? [{ part: holds, steps: [id] }] : [],
    closing: own ? [{ part: holds, steps: [id] }] : [],
    carried: carried.map((part) => ({ part, withPart: holds })),
  }
}

function tighteningWork(given: FastenersGiven, unit: Unit): string[] {
  if (given.dowels) return ['Bring the dowels home by wiggling the part, never by pulling on the bolts.']
  const lengths = lengthsOf(given)
  const order = orderOf(given)
  // On the map the numbers are the order: the names of the holes beside them would be taken for it.
  const hasMap = placesOf(given).length > 0
  return [
    ...(lengths.length > 1
      ? [
          hasMap
            ? `Put each length where the map has its letter: ${lengths.map(({ letter }) => letter).join(', ')}.`
            : `Put each length in its holes: ${lengths.map(({ letter, holes }) => `${letter} in ${holes.join(', ') || 'the holes that it was taken from'}`).join('; ')}.`,
        ]
      : []),
    'Start every one by hand, several turns.',
    order.length > 0
      ? `Tighten in small even steps in the order ${hasMap ? 'of the numbers on the map' : order.join(', ')}.`
      : 'Tighten in small even steps, crosswise or from the centre.',
    ...stagesText(given, unit),
  ]
}

const lockText = ({ lock }: FastenersGiven, id: string): string =>
  lock?.does ?? `Lock ${id} with ${lock?.with ?? 'its lock'}, after the torque`

/** Dowels locate, fitted bolts locate more finely, the others only clamp. */
const rank = ({ dowels, fitted }: FastenersGiven): number => (dowels ? 0 : fitted ? 1 : 2)

function looserSetsAfter(connection: Connection, given: FastenersGiven, unit: Unit): OrderDraft[] {
  return setsHolding(unit, given.holds)
    .filter((other) => other.given['own step'] && rank(other.given) > rank(given))
    .map((other) =>
      usualOrder(
        connection.id,
        other.connection.id,
        `${connection.id} locate ${given.holds}: they are home before ${other.connection.id} clamp it.`,
      ),
    )
}

function ordersOfLock(of: { lockStep: string; tightening: string; holds: string; unit: Unit }): OrderDraft[] {
  const checks = [...of.unit.checks.values()].filter(
    ({ settles, wants, trial }) => settles !== undefined && wants.includes(of.holds) && !trial.includes(of.holds),
  )
  return [
    usualOrder(of.tightening, of.lockStep, 'The lock is closed after the torque.'),
    ...checks.map(({ id }) =>
      usualOrder(id, of.lockStep, `${id} may still change this joint: the lock is closed after it.`),
    ),
  ]
}

function tighteningTime(given: FastenersGiven): Known<Second> {
  const count = given.pieces ?? (placesOf(given).length || undefined)
  return count === undefined
    ? { ...usualTime(5, 15), standing: 'supposed' }
    : usualTime(count, 2 * count, 'common practice, no source: one to two minutes for each')
}
