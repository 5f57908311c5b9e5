import { beforeAll, expect, test } from 'vitest'
import { sample } from '../../record/testing/quarryRailway.ts'
import { lineDrawing, stepDrawing } from './drawings.ts'
import { type WorkedJob, type Workings, workedJob } from './workedJob.ts'

const { unit, job } = sample()
let worked: WorkedJob
let workings: Workings
beforeAll(() => {
  const out = workedJob({ unit, job, system: 'metric' })
  worked = out.worked
  workings = out.workings
})
const step = (id: string) => worked.steps.find((one) => one.step === id)

test('without a sequence that stands the best one is worked out, with its proof', () => {
  expect(worked.plan).toMatchObject({ proven: true, breaches: [] })
  expect(worked.steps.map(({ number }) => number)).toEqual(worked.steps.map((_, index) => index + 1))
})

test('a sequence that was adopted is kept as it is, and what it no longer fits is said', () => {
  const told = worked.steps.map(({ step: id, mode }) => ({ step: id, mode }))
  const kept = workedJob({ unit, job, sequence: told, system: 'metric' }).worked
  expect(kept.steps.map(({ step: id, mode }) => ({ step: id, mode }))).toEqual(told)
  expect(kept.plan.breaches).toEqual([])
  expect(kept.plan.value).toEqual(worked.plan.value)
  const swapped = [...told.slice(1), told[0]!, { step: 'no such step' }].filter(({ step: id }) => id !== 'dipstick')
  const { plan, steps } = workedJob({ unit, job, sequence: swapped, system: 'metric' }).worked
  expect(steps).toHaveLength(told.length)
  expect(plan.breaches.join(' ')).toMatch(/no such step.*no longer.*dipstick.*end/s)
})

test('steps of the sequence that are done keep their sheets', () => {
  const told = worked.steps.map(({ step: id, mode }) => ({ step: id, mode }))
  const done = told.slice(0, 10).map(({ step: id }) => ({ step: id, at: { line: 1, column: 1 } }))
  expect(workedJob({ unit, job: { ...job, done }, sequence: told, system: 'metric' }).worked.steps).toHaveLength(
    told.length,
  )
})

test('a check has its limit in SI and in the person’s units', () => {
  expect(step('jack float')?.check).toMatchObject({
    measures: 'length',
    limit: { low: 0.00005, high: 0.0002, text: '0.05 to 0.20 mm' },
  })
  const inch = workedJob({
    unit,
    job,
    sequence: worked.steps.map(({ step: id, mode }) => ({ step: id, mode })),
    system: 'inch',
  }).worked
  expect(inch.steps.find((one) => one.step === 'jack float')?.check?.limit?.text).toBe('2.0 to 7.9 thou')
  expect(step('selecting')?.check).toEqual({ id: 'selecting', measures: 'length' })
})

test('a sheet has what the bench wants: settings, cautions, clocks, the order inside, the way it cannot be taken back', () => {
  expect(step('joint bolts')).toMatchObject({
    maps: [{ stages: { length: 3 }, order: { length: 12 } }],
    does: 'Tighten joint bolts of upper case',
  })
  expect(step('joint bolts')?.clocks.map(({ max_s, min_s }) => max_s ?? min_s)).toContain(2400)
  expect(step('sealant joint')?.noReturn).toBeTruthy()
  // One lump of bearing steel in still air, 101.6 °C down to where 0.018 mm of interference is used up.
  const grip = step('jack bearing A')?.clocks.find(({ id }) => id.endsWith('warm in hand'))
  expect(grip).toMatchObject({ from: { op: 'jack bearing A', edge: 'start' }, standing: 'supposed' })
  expect(grip?.max_s).toBeGreaterThan(60)
  expect(grip?.max_s).toBeLessThan(900)
  expect(step('jack bearing A')?.cautions.length).toBeGreaterThan(3)
  expect(step('cone A')?.settings[0]?.figures.map(({ label }) => label)).toContain('interference')
  expect(step('forward sleeve')?.sizes[0]).toMatchObject({ feature: 'outside', limitWorn: { low: 0.05794 } })
})

test('drawings are as wide as they are asked for, and what is no step has none', () => {
  const room = { width: 360, mostHeight: 260, system: 'metric' } as const
  expect(stepDrawing(workings, 'joint bolts', room)?.width).toBe(360)
  expect(stepDrawing(workings, 'nothing', room)).toBeUndefined()
  for (const line of worked.lines) expect(lineDrawing(workings, line, room).svg).toContain('<svg')
})

test('all of it can cross to a worker', () => {
  expect(structuredClone(worked)).toEqual(worked)
  // What the policy of the page would refuse.
  const room = { width: 360, mostHeight: 260, system: 'metric' } as const
  expect(stepDrawing(workings, 'jack bearing A', room)?.svg).not.toMatch(/ style=/)
})

test('a plan for a crew says who does which step; adopted, the names stay; adopted without names, nobody is named', () => {
  const { unit, job } = sample()
  const crew = ['Ada', 'Ben'].map((name) => ({ name, skills: [] }))
  const shared = { ...job, plant: { ...job.plant, people: 2, crew } }
  const planned = workedJob({ unit, job: shared, system: 'metric' }).worked
  expect(planned.steps.every((step) => step.crew !== undefined)).toBe(true)
  expect(new Set(planned.steps.flatMap((step) => step.crew ?? []))).toEqual(new Set(['Ada', 'Ben']))
  const adopted = planned.steps.map(({ step, mode, crew: people }) => ({ step, mode, ...(people && { people }) }))
  const standing = workedJob({ unit, job: shared, sequence: adopted, system: 'metric' }).worked
  expect(standing.plan.breaches).toEqual([])
  const who = (of: typeof planned) => new Map(of.steps.map((step) => [step.step, step.crew]))
  expect(who(standing)).toEqual(who(planned))
  const nameless = adopted.map(({ people: _, ...step }) => step)
  const older = workedJob({ unit, job: shared, sequence: nameless, system: 'metric' }).worked
  expect(older.steps.every((step) => step.crew === undefined)).toBe(true)
  // Ben has left: his steps are still said to be for him, and the rest is judged.
  const alone = { ...job, plant: { ...job.plant, people: 1 } }
  const left = workedJob({ unit, job: alone, sequence: adopted, system: 'metric' }).worked
  expect(left.steps.some((step) => step.crew?.includes('Ben'))).toBe(true)
  expect(left.steps).toHaveLength(adopted.length)
}, 60_000)
