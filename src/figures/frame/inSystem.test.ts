import { expect, test } from 'vitest'
import { Problem } from '../../problem/problem.ts'
import { inSystem, problemInSystem } from './inSystem.ts'

test.each([
  [
    'measured 0.58 mm below its 10 mm; M10×1.5 has 1.5 mm',
    'measured 22.8 thou below its 0.3937 in; M10×1.5 has 59.1 thou',
  ],
  ['0.1 to 0.3 mm (common practice), 5 to 10 kN', '3.9 thou to 11.8 thou (common practice), 1124 lbf to 2248 lbf'],
  ['stop at 12 kN, not at 50 N·m.', 'stop at 2698 lbf, not at 36.9 lbf·ft.'],
  [
    '0.11 mm (0.0043 in) and -78 °C, 84 mm² and 870 kg/m³ stay',
    '0.11 mm (0.0043 in) and -78 °C, 84 mm² and 870 kg/m³ stay',
  ],
])("'%s' in inches", (metric, inch) => {
  expect(inSystem(metric, 'inch')).toBe(inch)
  expect(inSystem(metric, 'metric')).toBe(metric)
})

test('a refusal speaks inches and Fahrenheit to who asked in them', () => {
  const facts = { what: 'the room', received: '−1.1 °C', expected: 'from 5 °C to 50.8 mm or 88.96 kN' }
  const problem = new Problem('VALUE_OUTSIDE', facts)
  expect(problemInSystem(problem, 'inch').message).toContain('has to be from 41 °F to 2 in or 20000 lbf, not 30 °F')
  expect(problemInSystem(problem, 'metric')).toBe(problem)
})
