import { expect, test } from 'vitest'
import { type Against, liveLimit } from './liveLimit.ts'

const against: Against = { as: 'length', limit: { low: 0.00005, high: 0.0002 }, system: 'metric', uncertainty: 0 }

// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
test.each([
  ['0.11', 'metric', '0.11 mm', '4.3 thou', 'within'],
  ['4.33 thou', 'metric', '0.11 mm', '4.3 thou', 'within'],
  ['.0043', 'inch', '4.3 thou', '0.109 mm', 'within'],
  ['1/64', 'inch', '15.6 thou', '0.397 mm', 'out'],
  ['1/128 in', 'metric', '0.198 mm', '7.8 thou', 'within'],
  ['0,03 mm', 'inch', '1.2 thou', '0.03 mm', 'out'],
] as const)('%s is understood in the %s person’s own unit and judged', (text, system, shown, other, is) => {
  const typed = liveLimit(text, { ...against, system })
  expect(typed).toMatchObject({ kind: 'figure', text: shown, other, judged: { is } })
})

test('how far beyond the limit is said, on the side where it is', () => {
  expect(liveLimit('0.03', against)).toMatchObject({ judged: { because: 'under', by: '0.02 mm' } })
  expect(liveLimit('0.25', against)).toMatchObject({ judged: { because: 'over', by: '0.05 mm' } })
})

test('nearer to the limit than the instrument is uncertain, it is neither within nor out (ISO 14253-1)', () => {
  const near = { ...against, uncertainty: 0.00001 }
  expect(liveLimit('0.195', near)).toMatchObject({ judged: { is: 'not known', because: 'near' } })
  expect(liveLimit('0.185', near)).toMatchObject({ judged: { is: 'within' } })
  expect(liveLimit('0.215', near)).toMatchObject({ judged: { is: 'out' } })
})

test('without a limit nothing is judged', () => {
  expect(liveLimit('5', { ...against, limit: undefined })).toMatchObject({
    judged: { is: 'not known', because: 'noLimit' },
  })
})

test('what cannot be understood is told, with what to do', () => {
  const typed = liveLimit('0.1 furlongs', against)
  expect(typed).toMatchObject({ kind: 'unclear' })
  if (typed.kind === 'unclear') expect(`${typed.says} ${typed.next}`).toMatch(/furlongs/)
  expect(liveLimit('  ', against)).toEqual({ kind: 'nothing' })
})

test('a torque, a pressure and a temperature are read in the units of their trade', () => {
  const of = (as: Against['as'], text: string, system: Against['system'] = 'metric') =>
    liveLimit(text, { as, limit: undefined, system, uncertainty: 0 })
  expect(of('torque', '45')).toMatchObject({ value: 45, text: '45 N·m' })
  // 1 lbf·ft = 1.3558179483314004 N·m: 0.3048 m × 4.4482216152605 N, both exact.
  expect(of('torque', '45', 'inch')).toMatchObject({ value: expect.closeTo(61.011807674913015, 10) })
  expect(of('pressure', '0.15')).toMatchObject({ value: expect.closeTo(15_000, 6) })
  expect(of('temperature', '20')).toMatchObject({ value: 293.15 })
})
