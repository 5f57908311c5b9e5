// The job as the other rooms know it, from what its entries add up to.
import type { AsFound, Instrument, Job, Reading, StockShim } from '../job/model/job.ts'
import type { Body } from '../journal/entry.ts'
import { quantity } from '../quantity/quantity.ts'
import type { Known } from '../unit/model/unit.ts'
import type { JobState, PartState, ReadingState } from './state.ts'

type WrittenKnown = NonNullable<Body<'reading'>['reads']>

/**
 * The job for workUp, verdicts and papers. A reading that another one rules over is left out here; it stays in the state. Steps that stand are in
 * the order in which they were signed.
 *
 * Places count instead of lines: the third reading stands `at` line 3 of the job's record.
 */
export function jobOf(state: JobState): Job {
  const { opened, unit } = state
  return {
    schema: 'job/1',
    file: state.stream,
    id: state.stream,
    invented: opened.invented === true,
    unit: unit?.file ?? '',
    ...(opened.serial !== undefined && { serial: opened.serial }),
    ...(opened.variant !== undefined && { variant: opened.variant }),
    variantAt: place(0),
    ...(opened.owner !== undefined && { owner: opened.owner }),
    ...(opened.note !== undefined && { note: opened.note }),
    lengthUnit: opened.sizes?.in ?? 'mm',
    sizesStanding: opened.sizes?.standing ?? 'seen',
    asFound: new Map([...state.parts.values()].map((part, index) => [part.part, asFoundOf(part, index)])),
    readings: state.readings.filter(({ rules }) => rules !== 'another').map(readingOf),
    shims: [...opened.shims.values()].map(shimOf),
    plant: plantOf(opened.plant),
    done: doneIn(state).map((step, index) => ({ step, at: place(index) })),
  }
}

const place = (index: number) => ({ line: index + 1, column: 1 })

/** Steps that are done, in the order of their first signature since they were last undone. */
const doneIn = ({ steps, happened }: JobState): readonly string[] => {
  const order = new Map(happened.map(({ entry }, index) => [entry, index]))
  return [...steps.values()]
    .filter(({ stands }) => stands === 'done')
    .sort((a, b) => order.get(a.done[0]!.entry)! - order.get(b.done[0]!.entry)!)
    .map(({ step }) => step)
}

function asFoundOf({ part, where, conditions, decision }: PartState, index: number): AsFound {
  // As it came off; where nobody said so of it, what was said first.
  const condition = (conditions.find(({ when }) => when === 'found') ?? conditions[0])?.condition
  return {
    part,
    at: place(index),
    ...(where !== undefined && { where }),
    ...(condition !== undefined && { condition }),
    ...(decision && { decision: decision.decision }),
  }
}

function readingOf(state: ReadingState, index: number): Reading {
  const { part, feature, reads, temperature, where, person, at } = state
  const by = state.by === undefined ? person : state.by
  const date = state.date === undefined ? dateOf(at.ms) : state.date
  return {
    at: place(index),
    part,
    feature,
    ...(reads && { reads: known(reads, 'm') }),
    ...(state.with !== undefined && { with: state.with }),
    ...(temperature && { temperature: known(temperature, 'K') }),
    ...(where !== undefined && { where }),
    ...(by !== null && { by }),
    ...(date !== null && { date }),
  }
}

/** The day in UTC. */
const dateOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10)

const shimOf = ({ id, reads, nominal, for: use }: JobShim, index: number): StockShim => ({
  id,
  at: place(index),
  ...(reads && { reads: known(reads, 'm') }),
  ...(nominal && { nominal: known(nominal, 'm') }),
  ...(use !== undefined && { for: use }),
})
type JobShim = NonNullable<Body<'job-opened'>['shims']>[number]

function plantOf(plant: Body<'job-opened'>['plant']): Job['plant'] {
  const { people, crew, room, press, oven, instruments = [], wrenches = [] } = plant ?? {}
  return {
    ...(people !== undefined && { people }),
    ...(crew && { crew }),
    ...(room && { room: known(room, 'K') }),
    ...(press && { press: { ...(press.rating && { rating: known(press.rating, 'N') }) } }),
    ...(oven && { oven: { ...(oven.upTo && { upTo: known(oven.upTo, 'K') }) } }),
    instruments: new Map(
      instruments.map(({ id, uncertainty, due }): [string, Instrument] => [
        id,
        { ...(uncertainty && { uncertainty: known(uncertainty, 'm') }), ...(due !== undefined && { due }) },
      ]),
    ),
    wrenches: wrenches.map(({ name, range }) => ({ name, ...(range && { range: known(range, 'N·m') }) })),
  }
}

type Si<Unit extends string> = ReturnType<typeof quantity<Unit>>

/** The numbers are in SI already; here they get their type. */
function known<Unit extends string>({ low, high, standing, source }: WrittenKnown, unit: Unit): Known<Si<Unit>> {
  return {
    low: quantity(low, unit),
    high: quantity(high, unit),
    standing,
    ...(source !== undefined && { source }),
  }
}
