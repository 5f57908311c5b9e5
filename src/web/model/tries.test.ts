import { beforeAll, expect, test } from 'vitest'
import { sample, sampleEntries } from '../../record/testing/quarryRailway.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { jobOnSheet } from './jobOnSheet.ts'
import { takeOff } from './takeOff.ts'
import { fittedOf, NO_DRAFT, offSayings, resultNow, triesView, tryOf } from './tries.ts'
import { tryProposal } from './tryProposal.ts'
import type { TrySheet } from './trySheets.ts'
import { type WorkedJob, type Workings, workedJob } from './workedJob.ts'

const office = new Writer('office')
const entries = sampleEntries(office)
const job = jobOnSheet('J41', entries)
let worked: WorkedJob
let workings: Workings
let sheet: TrySheet
beforeAll(() => {
  const made = workedJob({ unit: sample().unit, job: job.job, system: 'metric' })
  worked = made.worked
  workings = made.workings
  sheet = worked.steps.find(({ step }) => step === 'input float')!.tries!
})
const bench = () => {
  const writer = new Writer('bench', 'J41', 'Ada')
  writer.now_ms = office.now_ms
  return writer
}
const readingOf = (low: number, result: 'good' | 'bad') => ({
  kind: 'check-result' as const,
  body: {
    check: 'input float',
    result,
    values: [{ what: 'float of line 1', of: 'length' as const, low, high: low, standing: 'seen' as const }],
  },
})
const viewOf = (more: readonly ReturnType<Writer['write']>[]) =>
  triesView({ job: jobOnSheet('J41', [...entries, ...more]), sheet, system: 'metric', instruments: [] })

test('the setting of the sample is tried at the step that reads it and at the step that it is made with', () => {
  expect(sheet).toMatchObject({
    of: 'input setting',
    check: 'input float',
    first: 'keep plate',
    sign: 1,
    isShims: true,
    isLength: true,
    isBacklash: false,
    limit: { low: 0.00005, high: 0.0001 },
  })
  expect(sheet.shims.map(({ id, text }) => `${id} ${text}`)).toContain('S1 0.528 mm')
  expect(worked.steps.filter(({ tries }) => tries?.of === 'input setting').map(({ step }) => step)).toEqual([
    'keep plate',
    'input float',
  ])
  // Backlash of wheels on fixed centres is read, and nothing sets it.
  expect(worked.steps.find(({ step }) => step === 'forward backlash')?.tries).toBeUndefined()
})

test('what is in: shims by name add up, a pack measured as a whole counts before them, in thou too', () => {
  const of = (draft: Partial<typeof NO_DRAFT>) => fittedOf({ ...NO_DRAFT, ...draft }, sheet, 'metric')
  expect(of({})).toEqual({ is: 'nothing' })
  expect(of({ ids: ['S1', 'S2'] })).toMatchObject({ is: 'said', text: 'S1 + S2 = 0.626 mm' })
  expect(of({ ids: ['S1', 'S2'], pack: '25 thou' })).toMatchObject({
    fitted: { shims: ['S1', 'S2'], pack_m: 0.000635, tried: 'S1 + S2' },
  })
  expect(of({ pack: 'thick' })).toMatchObject({ is: 'unclear' })
  expect(of({ by: 'nut', turn: '-30' })).toMatchObject({ text: 'nut tightened by 30°' })
  expect(of({ by: 'nut', turn: '1/8 turn' })).toMatchObject({ text: 'nut slackened by 45°' })
})

test('a reading is a try with what is in; read again without a word, the same is in', () => {
  const writer = bench()
  const view = viewOf([])
  const fitted = fittedOf({ ...NO_DRAFT, ids: ['S1', 'S2'] }, sheet, 'metric')
  const [said] = tryOf(readingOf(0.00003, 'bad'), { sheet, view, fitted })
  const first = writer.write('setting-try', said!.body as never)
  const result = writer.write('check-result', readingOf(0.00003, 'bad').body)
  const after = viewOf([first, result])
  expect(after).toMatchObject({
    number: 2,
    rows: [{ fitted: 'S1 + S2 = 0.626 mm', read: '0.03 mm', judged: { is: 'out', by: '0.02 mm' } }],
  })
  expect(after.resultEntries.has(result.id)).toBe(true)
  const [again] = tryOf(readingOf(0.00004, 'bad'), { sheet, view: after, fitted: { is: 'nothing' } })
  expect(again!.body).toMatchObject({ tried: 'S1 + S2', shims: ['S1', 'S2'] })
  expect(tryProposal({ tries: after.standing, sheet, system: 'inch', uncertainties: {} })).toMatchObject({
    is: 'pack',
    choice: { pack: { shims: [{ id: 'S1' }, { id: 'S4' }] } },
  })
})

test('the engine says what comes off; once it is off, the reading before says nothing of what is in', () => {
  const step = worked.steps.find(({ step: id }) => id === 'input float')!
  const before = worked.steps.slice(0, step.number - 1).map(({ step: id }) => id)
  expect(takeOff(workings, 'keep plate', before)?.undo.map(({ step: id }) => id)).toEqual([
    'keep plate fixing',
    'keep plate',
  ])
  expect(takeOff(workings, 'keep plate', [])).toBeUndefined()
  const locked = takeOff(workings, 'keep plate', [...before, 'input float', 'lock keep plate fixing'])
  expect(locked?.undo.map(({ step: id }) => id)).toEqual([
    'lock keep plate fixing',
    'input float',
    'keep plate fixing',
    'keep plate',
  ])
  expect(locked?.noReturn[0]).toContain('lock wire is renewed')

  const writer = bench()
  const signed = before.map((id) => writer.write('step-signed', { step: id }))
  const made = writer.write('setting-try', {
    connection: 'input setting',
    check: 'input float',
    tried: 'S1',
    result: 'bad',
  })
  const result = writer.write('check-result', readingOf(0.00003, 'bad').body)
  const on = (...more: readonly ReturnType<Writer['write']>[]) =>
    jobOnSheet('J41', [...entries, ...signed, made, result, ...more])
  expect(resultNow(on().state, step)).toBe('bad')
  const off = offSayings(['keep plate fixing', 'keep plate']).map(({ kind, body }) => writer.write(kind, body as never))
  expect(resultNow(on(...off).state, step)).toBeUndefined()
  const view = triesView({ job: on(...off), sheet, system: 'metric', instruments: [] })
  expect(view.rows).toMatchObject([
    { is: 'try' },
    { is: 'off', steps: ['keep plate fixing', 'keep plate'], entries: off.map(({ id }) => id), person: 'Ada' },
  ])
  expect(view.stillIn).toBeUndefined()
  const back = off.map(({ id }) => writer.write('withdrawn', { of: id }))
  expect(resultNow(on(...off, ...back).state, step)).toBe('bad')
})
