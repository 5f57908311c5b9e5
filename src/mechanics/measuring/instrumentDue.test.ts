import { expect, test } from 'vitest'
import { instrumentDue } from './instrumentDue.ts'

test('in date, due soon, overdue', () => {
  const at = (today: string) => instrumentDue({ checked: '2025-03-31', months: 12, today })
  expect(at('2025-06-01')).toMatchObject({ state: 'in date', due: '2026-03-31', daysLeft: 303 })
  expect(at('2026-03-01')).toMatchObject({ state: 'due soon', daysLeft: 30 })
  expect(at('2026-03-31')).toMatchObject({ state: 'due soon', daysLeft: 0 })
  expect(at('2026-04-01')).toMatchObject({ state: 'overdue', daysLeft: -1 })
  expect(at('2026-04-01').cautions[0]).toContain('stand in doubt')
})

test('a month without that day ends on its last', () => {
  expect(instrumentDue({ checked: '2024-01-31', months: 1, today: '2024-02-01' }).due).toBe('2024-02-29')
  expect(instrumentDue({ checked: '2024-08-31', months: 6, today: '2024-09-01' }).due).toBe('2025-02-28')
})

test('no check on record is not known, a check of tomorrow is doubted', () => {
  expect(instrumentDue({ months: 12, today: '2026-01-01' }).state).toBe('not known')
  expect(instrumentDue({ checked: '2026-01-02', months: 12, today: '2026-01-01' }).cautions[0]).toContain('after today')
})

test('refuses days that are none', () => {
  for (const received of ['2026-02-30', '31.3.2026', '2026-3-31', '']) {
    expect(() => instrumentDue({ months: 12, today: received })).toThrow(`'${received}' is no day of the calendar.`)
  }
})
