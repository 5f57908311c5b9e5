import type { Connection, Unit } from '../../model/unit.ts'
import { usualTime } from '../amounts.ts'
import { lastFastSteps } from '../fasteners/setsHolding.ts'
import type { ClockDraft, Contribution, OrderDraft, StepDraft } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import { usualOrder } from '../order.ts'
import type { GasketGiven } from './given.ts'

/**
 * A gasket is laid on inside the step of the part that squeezes it, unless it has its `own step`. Sealant always has one, for its
 * clocks hang on it: from its start to the last step that makes the part fast runs the open time; from there to every fill the cure.
 */
export function steps(connection: Connection, given: GasketGiven, unit: Unit): Contribution {
  const { gasket } = given
  const part = given['squeezed by']
  const laying = given['own step'] ? (gasket ?? connection.id) : undefined
  const sealing = given.sealant ? `sealant ${connection.id}` : undefined

  const own: StepDraft[] = []
  // A gasket that is a part has the step of a part, as it is not carried.
  if (laying !== undefined && gasket === undefined) {
    own.push({
      id: laying,
      does: `Lay the gasket of ${part} on`,
      as: part,
      takes: given.takes ?? usualTime(2, 5),
      tools: [],
      reach: [],
      within: layingWork(given),
    })
  }
  if (sealing) own.push(spreading(sealing, given))

  return {
    ...NOTHING,
    steps: own,
    orders: ordersOf({ laying, sealing, part, unit }),
    clocks: sealing ? sealantClocks({ sealing, part, given, unit }) : [],
    within: laying === undefined ? layingWork(given).map((does) => ({ part, does })) : layingOwn(gasket, given),
    closing: sealing ? [{ part, steps: [sealing] }] : [],
    carried: gasket !== undefined && laying === undefined ? [{ part: gasket, withPart: part }] : [],
  }
}

const layingOwn = (gasket: string | undefined, given: GasketGiven) =>
  gasket === undefined ? [] : layingWork(given).map((does) => ({ part: gasket, does }))

function layingWork(given: GasketGiven): string[] {
  if (given.sealant && given.gasket === undefined) return []
  const holes = given.holes?.join(', ') ?? 'oil, drain and vent holes'
  const way = given['way round']
  return [
    `Hold the gasket to both faces: ${holes} ${given.holes?.length === 1 ? 'stays' : 'stay'} open.`,
    `Lay the gasket on ${way ? `with ${way}` : 'and look through its holes'}; both faces are clean and dry.`,
  ]
}

function spreading(id: string, given: GasketGiven): StepDraft {
  const part = given['squeezed by']
  return {
    id,
    does: `Spread ${given.sealant?.what ?? 'the sealant'} on the joint of ${part}`,
    as: part,
    takes: given.takes ?? usualTime(3, 6),
    tools: [],
    reach: [],
    noReturn: `The joint of ${part} is wet: opening it again means cleaning both faces and new sealant.`,
    within: [
      'Degrease both faces and look that they are dry.',
      'Spread it thin and without gaps, round the holes on the inside: no bead may be squeezed into the housing.',
    ],
  }
}

function ordersOf(of: {
  laying: string | undefined
  sealing: string | undefined
  part: string
  unit: Unit
}): OrderDraft[] {
  const { laying, sealing, part, unit } = of
  const orders: OrderDraft[] = []
  if (laying !== undefined)
    orders.push(usualOrder(laying, part, `The gasket lies on the face before ${part} squeezes it.`))
  if (sealing === undefined) return orders
  if (laying !== undefined) orders.push(usualOrder(sealing, laying, 'The sealant is under the gasket.'))
  orders.push(usualOrder(sealing, part, `The sealant is spread before ${part} squeezes it.`))
  for (const { id, trial } of unit.checks.values()) {
    if (trial.includes(part))
      orders.push(usualOrder(id, sealing, `${part} is tried dry, without sealant, before it is sealed.`))
  }
  return orders
}

function sealantClocks(of: { sealing: string; part: string; given: GasketGiven; unit: Unit }): ClockDraft[] {
  const { sealing, part, given, unit } = of
  const { 'open time': open, cure, 'cure before': named } = given.sealant ?? {}
  const last = lastFastSteps(unit, part)
  const said = (standing: ClockDraft['standing']) => ({
    standing,
    source: given.source ?? 'the tube, as told in the unit file',
  })
  const opening = open
    ? last.map(
        (step): ClockDraft => ({
          id: `${sealing}: open until ${step}`,
          from: { step: sealing, edge: 'start' },
          to: { step, edge: 'end' },
          most_s: open.low,
          says: `${part} is tight before the sealant skins: ${minutes(open.low)} from the first bead.`,
          ...said(open.standing),
        }),
      )
    : []
  const waiting = named ?? [...unit.fills.keys()]
  const curing = cure
    ? last.flatMap((step) =>
        waiting.map(
          (then): ClockDraft => ({
            id: `${sealing}: cured after ${step} for ${then}`,
            from: { step, edge: 'end' },
            to: { step: then, edge: 'start' },
            least_s: cure.high,
            says: `${then} waits until the sealant of ${part} has cured, ${minutes(cure.high)}.`,
            ...said(cure.standing),
          }),
        ),
      )
    : []
  return [...opening, ...curing]
}

const minutes = (seconds: number): string => `${Math.round(seconds / 60)} min`
