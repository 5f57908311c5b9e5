// The demonstration unit and its job: they hold together, a good order passes, and every trap that they were built around is refused for its own reason.

import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { checkSequence } from '../planning/checker/checkSequence.ts'
import { judge } from '../planning/judge.ts'
import type { Need } from '../planning/model/problem.ts'
import { plan } from '../planning/plan.ts'
import { needHolds } from '../planning/relations/needs.ts'
import { countUnit } from '../unit/countUnit.ts'
import { readUnit } from '../unit/file/readUnit.ts'
import { readJob } from './file/readJob.ts'
import { sequenceOf, settingsOf, workUp } from './workUp.ts'

const FOLDER = new URL('../../examples/quarry-railway/', import.meta.url)
const text = (file: string) => readFileSync(fileURLToPath(new URL(file, FOLDER)), 'utf8')
const unitRead = readUnit(text('reversing-gearcase.unit.yaml'), 'reversing-gearcase.unit.yaml')
const jobRead = readJob(text('J41.job.yaml'), 'J41.job.yaml')
const faults = [...unitRead.faults, ...jobRead.faults]
if (!unitRead.unit || !jobRead.job) throw new Error(faults.map(String).join('\n'))
const { unit } = unitRead
const { job } = jobRead
const work = workUp({ unit, job })
const { problem } = work

/** Written by hand, as a fitter would go about it; not the order that the planner finds. */
const GOOD = `
blow out, wall ring, cluster bushes, cluster washer A, cluster washer B, cluster, spindle, spindle keep, cluster float,
forward wheel bush, forward sleeve, reverse wheel bush, reverse sleeve, dog sleeve, forward wheel, dog hub, reverse wheel,
jack washer B, jack bearing B, jackshaft, cover B, jack washer A, jack spacer, pump,
warm jack bearing A, selector shaft, jack bearing A, drive sprocket, input spacer, cone A, cup A, cone B, cup B,
feel jack bearing A seated, jack nut, wheel float, jack float, bend the jack tab, drain plug, cover A,
fork, fork rail, detent ball, detent plug, dog travel, prime the pump, delivery pipe,
pump chain, input shaft, cap A, cap A nuts, cap B, cap B nuts, keep plate, keep plate fixing, tensioner,
input float, lock cap A nuts, lock cap B nuts, lock keep plate fixing, chain slack, forward backlash, reverse backlash,
dry joint, sealant joint, upper case, fitted bolts, joint bolts, end cover, end seal, top cover, selecting,
seal B, output key, output sprocket, output nut, bend the output tab, air test, oil, dipstick`
  .split(',')
  .map((step) => step.trim())

const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))

/** Every need that refuses a step of an order, in each of its ways, as it is derived (before needs are closed). */
function refusals(order: readonly string[]): { step: string; need: Need }[] {
  const done = new Set<string>()
  return order.flatMap((step) => {
    const { needs, modes } = operations.get(step)!
    const broken = (all: readonly Need[]) => all.filter((need) => !needHolds(need, (id) => done.has(id)))
    const byMode = modes.map((mode) => broken(mode.needs))
    const found = [...broken(needs), ...(byMode.every((each) => each.length > 0) ? byMode.flat() : [])]
    done.add(step)
    return found.map((need) => ({ step, need }))
  })
}

function moved(step: string, where: 'before' | 'after', other: string): string[] {
  const order = GOOD.filter((each) => each !== step)
  order.splice(order.indexOf(other) + (where === 'after' ? 1 : 0), 0, step)
  return order
}

test.each(['early', 'late'])('the unit holds together: %s', (variant) => {
  const { faults: found } = workUp({ unit, variant })
  expect([...faults, ...found].map(String)).toEqual([])
})

test('the job fits the unit, its serial number picks the variant, and all of it says that it is invented', () => {
  expect(work.faults.map(String)).toEqual([])
  expect([work.variant, work.taken]).toEqual(['late', []])
  expect([unit.invented, job.invented]).toEqual([true, true])
})

test('it is large enough to show something', () => {
  const { parts, pieces, lines, openings } = countUnit(unit)
  expect(parts).toBeGreaterThanOrEqual(40)
  expect(pieces).toBeGreaterThanOrEqual(90)
  expect(lines).toBe(3)
  expect(openings).toBeGreaterThanOrEqual(3)
  expect(unit.variants.map(({ id }) => id)).toEqual(['early', 'late'])
  expect(problem.operations.length).toBeGreaterThanOrEqual(60)
  expect(problem.operations.length).toBeLessThanOrEqual(90)
})

test('fewer than 15 % of the needs are declared by hand', () => {
  const { all, byHand } = work.derivation.needs
  expect(byHand / all).toBeLessThan(0.15)
})

test('the sizes left open on purpose are asked for, and bar nothing', () => {
  const asked = work.derivation.doubts.map(({ step, about }) => `${step} / ${about}`)
  expect(asked).toEqual(['cover A / jack nut', 'fork / input shaft'])
})

describe('geometry', () => {
  const place = (line: string) => unit.lines.get(line)!.place!
  const apart = (a: string, b: string) =>
    1000 * Math.hypot(place(a).y.low - place(b).y.low, place(a).z.low - place(b).z.low)

  // Spur gears without shift: a = m (z1 + z2) / 2 (ISO 21771:2007); module 4.
  test.each([
    ['1', '2', 24, 48],
    ['1', '3', 24, 24],
    ['2', '3', 46, 22],
  ])('lines %s and %s stand as far apart as their teeth ask', (a, b, z1, z2) => {
    expect(apart(a, b)).toBeCloseTo((4 * (z1 + z2)) / 2, 2)
  })

  // Boundary dimensions: ISO 15:2017, diameter series 2, from memory.
  test.each([
    ['jack bearing A', 40, 80, 18],
    ['jack bearing B', 50, 90, 20],
  ])('%s has the boundary dimensions of its number', (part, bore, outside, width) => {
    const size = (id: string) => 1000 * unit.parts.get(part)!.features.find((feature) => feature.id === id)!.size!.high
    expect([size('bore'), size('outside'), size('width')].map((mm) => Number(mm.toFixed(3)))).toEqual([
      bore,
      outside,
      width,
    ])
  })
})

describe('the order', () => {
  test('one written by hand is accepted', () => {
    expect(judge(problem, GOOD).breaches.map(({ says }) => says)).toEqual([])
  })

  test('people by name work beside each other, by every rule; a number of people plans for one', () => {
    const workFor = (people: string) => {
      const { job, faults } = readJob(text('J41.job.yaml').replace('people: 2', `people: ${people}`), 'J41.job.yaml')
      expect(faults).toEqual([])
      return workUp({ unit, job: job! }).problem
    }
    const [one, number, alone] = [workFor('1'), workFor('2'), workFor('[{name: M. Ashdown}]')]
    expect({ ...number, people: 1 }).toEqual(one)
    expect(alone).toEqual(one)
    const together = workFor('[{name: M. Ashdown, skills: [fitter]}, {name: J. Tarn}]')
    expect(together).toMatchObject({
      people: 2,
      machines: { press: 1, oven: 1, 'room at jackshaft': 1, 'room at lower case': 2 },
      crew: [
        { id: 'M. Ashdown', skills: ['fitter'] },
        { id: 'J. Tarn', skills: [] },
      ],
    })
    const pressed = together.operations.flatMap(({ modes }) => modes.filter(({ setup }) => setup.station === 'press'))
    expect(pressed.length).toBeGreaterThan(3)
    expect(pressed.every(({ machines }) => machines?.press === 1)).toBe(true)
    const { steps, value } = plan(together, { effort: 30_000 })
    expect(checkSequence(together, { steps, ...(value && { value }) })).toMatchObject({
      right: true,
      breaches: [],
      value,
    })
    expect(new Set(steps.flatMap(({ people = [] }) => people))).toEqual(new Set(['M. Ashdown', 'J. Tarn']))
    // What a step wants away is away until that step has ended.
    const placedAt = new Map(steps.map((step) => [step.op, step]))
    for (const { id, needs, modes } of one.operations) {
      const bars = [...needs, ...modes.flatMap((mode) => mode.needs)].flatMap(({ anyOf }) =>
        anyOf.flatMap(({ notDone }) => notDone),
      )
      const { start_s, end_s } = placedAt.get(id)!
      for (const bar of bars) {
        const other = placedAt.get(bar)!
        expect(other.start_s >= end_s || other.end_s <= start_s, `${bar} during ${id}`).toBe(true)
      }
    }
    // For one person 8 h 47 min is proven the least.
    expect(value![1]).toBeLessThan(0.75 * 31_630)
  })

  test('the float of the pinion shaft is set until it is right: usually twice, and the best sequence stays the best', () => {
    expect(problem.loops).toMatchObject([
      { first: 'keep plate', last: 'input float', tries: { low: 1, usual: 2, high: 3 }, reason: { standing: 'usual' } },
    ])
    const { loops: _, ...once } = problem
    const [tried, plain] = [plan(problem), plan(once)]
    expect(tried.value).toEqual(plain.value)
    expect(tried.proven).toBe(true)
    const { low, usual, high, loops } = tried.tries!
    expect(low).toEqual(tried.value)
    expect(loops[0]!.again).toEqual(expect.arrayContaining(['keep plate', 'input float']))
    expect(usual[1] - low[1]).toBe(loops[0]!.try_s)
    expect(high[1] - low[1]).toBe(2 * loops[0]!.try_s)
  })

  test.each(['early', 'late'])('the best one is found and proven: %s', (variant) => {
    const work = workUp({ unit, variant })
    const result = sequenceOf(work)
    const { proven, value, effort, steps } = result
    expect(proven).toBe(true)
    expect(sequenceOf(workUp({ unit, variant }))).toEqual(result)
    // The checker was written from the contract's page alone.
    expect(checkSequence(work.problem, { steps, ...(value && { value }) })).toMatchObject({
      right: true,
      breaches: [],
      value,
    })
    expect(value![0]).toBe(2)
    expect(effort.states).toBeLessThan(100_000)
  })

  /** [the trap, the step that is moved, where to, beside what, the step that then cannot start, the code, what is said]. */
  const TRAPS = [
    'the chain is forgotten | pump chain | after | input shaft | input shaft | PARKED | input shaft brings pump chain home',
    'a wheel is forgotten | forward wheel | after | jackshaft | jackshaft | PARKED | jackshaft brings forward wheel home',
    'the spindle goes in without the cluster | cluster | after | spindle | spindle | PARKED | spindle brings cluster home',
    'the cluster is tilted in last | cluster | after | input shaft | cluster | CLEAR | cluster gets in only while input shaft is away',
    'the pinion stands over the forward wheel | forward wheel | after | input shaft | forward wheel | BARRED | forward wheel cannot pass input shaft',
    'the spacer is left out | jack spacer | after | jack bearing A | jack spacer | BARRED | jack spacer cannot pass jack bearing A',
    'the ring in the wall is forgotten | wall ring | after | jackshaft | wall ring | BARRED | wall ring cannot pass jack bearing B',
    'the case is stood on end with the jackshaft loose | cover B | after | jack bearing A | jack bearing A | LOOSE | jackshaft is loose in it: first cover B',
    'the bearing is warmed before its place is ready | warm jack bearing A | before | jack spacer | warm jack bearing A | TOLD | jack spacer before warm jack bearing A',
    'the nut is drawn up on the hot bearing | jack nut | before | feel jack bearing A seated | jack nut | TOLD | feel jack bearing A seated before jack nut',
    'the spacer of the pinion shaft is forgotten | input spacer | after | cone A | input spacer | BARRED | input spacer cannot pass cone A',
    'the cup is slid on before its cone | cup A | before | cone A | cone A | BARRED | cone A cannot pass cup A',
    'a cap is put on over an empty bore | cap A | before | input shaft | input shaft | BARRED | input shaft cannot pass cap A',
    'the lock is closed before the float is right | lock cap A nuts | before | input float | lock cap A nuts | CONNECTION | input float may still change this joint',
    'the seal drags on the float | seal B | before | jack float | jack float | CHECK | jack float is made without seal B',
    'the float is wanted after the halves are closed | input float | after | sealant joint | input float | OPENING | input float goes through the joint, which is shut from sealant joint on',
    'sealant on a joint that was not tried dry | dry joint | after | sealant joint | sealant joint | CONNECTION | upper case is tried dry',
    'the clearance bolts pull the case down first | joint bolts | before | fitted bolts | joint bolts | CONNECTION | fitted bolts locate upper case: they are home before joint bolts',
    'the finger finds no fork | fork | after | top cover | top cover | ENGAGES | top cover engages fork blind',
    'the sprocket is on before the seal | seal B | after | output sprocket | seal B | BARRED | seal B cannot pass output sprocket',
    'oil before the air test | oil | before | air test | oil | FILL | oil only after air test',
  ].map((row) => row.split(' | ') as [string, string, 'before' | 'after', string, string, string, string])

  test.each(TRAPS)('trap: %s', (_, step, where, other, at, code, says) => {
    expect(refusals(GOOD)).toEqual([])
    const found = refusals(moved(step, where, other)).filter((refusal) => refusal.step === at)
    const reasons = found.map(({ need }) => need.reason).filter((reason) => reason.says.includes(says))
    expect(reasons.map((reason) => reason.code)).toEqual([code])
  })

  test('three clocks run: the bearing in the oven, the open joint, the cure', () => {
    const bounds = problem.lags.map(({ from, to, min_s, max_s }) => [from.op, to.op, min_s, max_s])
    expect(bounds).toContainEqual(['warm jack bearing A', 'jack bearing A', 1800, 3600])
    expect(bounds).toContainEqual(['sealant joint', 'joint bolts', undefined, 2400])
    expect(bounds).toContainEqual(['joint bolts', 'air test', 7200, undefined])
  })
})

describe('the job', () => {
  test('six features are read out of their worn limits, by instruments that the shop has', () => {
    const out = job.readings.filter(({ part, feature, reads }) => {
      const limit = unit.parts.get(part)!.features.find(({ id }) => id === feature)!.limitWorn
      return reads && limit && (reads.low < (limit.low ?? 0) || reads.high > (limit.high ?? Number.POSITIVE_INFINITY))
    })
    expect(out.map(({ part, feature }) => `${part}.${feature}`)).toEqual([
      'jackshaft.track B',
      'forward wheel bush.bore',
      'forward sleeve.outside',
      'dog sleeve.groove',
      'fork.pads',
      'cluster washer B.thickness',
    ])
    expect(job.readings.filter((reading) => !job.plant.instruments.has(reading.with ?? '?'))).toEqual([])
  })

  const setting = (connection: string) => settingsOf(work).find((each) => each.connection === connection)!

  test('the measured shims make the pack; the labels would have made another', () => {
    const { says, figures } = setting('input setting')
    const wanted = figures.find(({ label }) => label === 'pack wanted')!
    expect([wanted.low, wanted.high].map((size) => Number((1000 * size).toFixed(3)))).toEqual([0.6, 0.65])
    expect(says).toEqual(['Fit pack S1 + S2 = 0.626 mm (0.0246 in).'])
    const [s1, , , s4] = job.shims
    const labels = s1!.nominal!.low + s4!.nominal!.low
    const measured = s1!.reads!.low + s4!.reads!.low
    expect(labels).toBeLessThanOrEqual(wanted.high + 1e-9)
    expect(measured).toBeGreaterThan(wanted.high)
  })

  test('nothing that can be worked out is out of its limit', () => {
    const out = settingsOf(work).flatMap(({ connection, figures }) =>
      figures.filter(({ verdict }) => verdict === 'out').map(({ label }) => `${connection}: ${label}`),
    )
    expect(out).toEqual([])
  })
})
