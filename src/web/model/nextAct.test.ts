import { expect, test } from 'vitest'
import type { StepState } from '../../record/state.ts'
import { liveLimit } from './liveLimit.ts'
import { isAnswered, nextAct, resultOf, type Standing } from './nextAct.ts'
import type { ClockSheet, StepSheetData } from './workedJob.ts'

const plain = { step: 'cap', number: 1, mode: 'as told', clocks: [] as readonly ClockSheet[] } as StepSheetData
const check: StepSheetData = {
  ...plain,
  step: 'float',
  check: { id: 'float', measures: 'length', limit: { low: 5e-5, high: 2e-4, text: '', standing: 'told' } },
}
const typed = (text: string) =>
  liveLimit(text, { as: 'length', limit: check.check?.limit, system: 'metric', uncertainty: 0 })
const act = (over: Partial<Standing>) =>
  nextAct({ step: plain, record: undefined, result: undefined, typed: typed(''), running: [], ...over })
const stands = (how: StepState['stands']): StepState => ({
  step: 'cap',
  stands: how,
  starts: [{} as StepState['starts'][number]],
  done: [],
  signatures: [],
})

test('a plain step is signed; one that is done is done', () => {
  expect(act({})).toEqual({ act: 'sign', why: undefined })
  expect(act({ record: stands('done') })).toEqual({ act: 'done' })
  expect(act({ record: stands('undone') })).toEqual({ act: 'sign', why: undefined })
})

test('past a point of no return a second, different action is asked for', () => {
  expect(act({ step: { ...plain, noReturn: 'The tab breaks.' } })).toEqual({ act: 'sign', why: { is: 'no return' } })
})

test('a check wants its reading; one that is within signs with it, one that is out does not', () => {
  expect(act({ step: check })).toEqual({ act: 'type' })
  expect(act({ step: check, typed: typed('0.1') })).toEqual({ act: 'take', text: '0.1 mm', signs: true })
  expect(act({ step: check, typed: typed('0.3') })).toEqual({ act: 'take', text: '0.3 mm', signs: false })
  expect(act({ step: check, typed: typed('fish') })).toEqual({ act: 'type' })
  expect(act({ step: check, result: 'bad' })).toEqual({ act: 'sign', why: { is: 'bad', says: 'bad' } })
  expect(act({ step: check, result: 'good' })).toEqual({ act: 'sign', why: undefined })
})

test('a step whose clock starts with it is begun first', () => {
  const clock: ClockSheet = {
    id: 'open',
    from: { op: 'cap', edge: 'start' },
    to: { op: 'bolts', edge: 'end' },
    max_s: 60,
    says: 'Open 1 min.',
    standing: 'told',
  }
  const step = { ...plain, clocks: [clock] }
  expect(act({ step })).toEqual({ act: 'begin', clock: 'Open 1 min.' })
  expect(act({ step, record: stands('started') })).toEqual({ act: 'sign', why: undefined })
  const cure: ClockSheet = {
    ...clock,
    id: 'cure',
    from: { op: 'x', edge: 'end' },
    to: { op: 'cap', edge: 'start' },
    min_s: 90,
  }
  expect(act({ running: [{ clock: cure, run_s: 30, wait_s: 60 }] })).toEqual({
    act: 'sign',
    why: { is: 'early', wait_s: 60 },
  })
})

test('what is entered of a reading says what it is of, its worth and the instrument', () => {
  expect(resultOf(check, { typed: typed('0.3'), instrument: 'dial gauge' })?.body).toEqual({
    check: 'float',
    result: 'bad',
    values: [{ what: 'float', of: 'length', low: 0.0003, high: 0.0003, standing: 'seen' }],
    with: 'dial gauge',
  })
  expect(resultOf(check, { typed: typed(''), instrument: undefined })).toBeUndefined()
})

test('a ring that has not soaked through is not begun without being asked about', () => {
  const soak: ClockSheet = {
    id: 'soak',
    from: { op: 'warm', edge: 'end' },
    to: { op: 'cap', edge: 'start' },
    min_s: 1800,
    says: 'Soaks.',
    standing: 'told',
  }
  const grip: ClockSheet = {
    id: 'grip',
    from: { op: 'cap', edge: 'start' },
    to: { op: 'cap', edge: 'end' },
    max_s: 200,
    says: 'Out of the oven until it may grip, at 0.5 m. Line it up before.',
    standing: 'supposed',
  }
  const step = { ...plain, clocks: [soak, grip] }
  const begin = { act: 'begin', clock: 'Out of the oven until it may grip, at 0.5 m.' }
  expect(act({ step, running: [{ clock: soak, run_s: 18, wait_s: 1782 }] })).toEqual({ ...begin, wait_s: 1782 })
  expect(act({ step, running: [{ clock: soak, run_s: 1900, wait_s: 0 }] })).toEqual(begin)
})

test('a check without a figure that was not good is answered again, until it is good', () => {
  const looked: StepSheetData = { ...plain, check: { id: 'dogs', measures: 'length' } }
  expect([undefined, 'bad', 'not known', 'good'].map((one) => isAnswered(looked, one as Standing['result']))).toEqual([
    true,
    true,
    true,
    false,
  ])
  expect(isAnswered(check, 'bad')).toBe(false)
  expect(isAnswered(plain, undefined)).toBe(false)
})
