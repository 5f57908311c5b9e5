import { expect, test } from 'vitest'
import { inSystem } from './inSystem.ts'

test.each([
  [
    'measured 0.58 mm below its 10 mm; M10×1.5 has 1.5 mm',
    'measured 22.8 thou below its 0.3937 in; M10×1.5 has 59.1 thou',
  ],
  ['stop at 12 kN, not at 50 N·m.', 'stop at 2698 lbf, not at 36.9 lbf·ft.'],
  [
    '0.11 mm (0.0043 in) and -78 °C, 84 mm² and 870 kg/m³ stay',
    '0.11 mm (0.0043 in) and -78 °C, 84 mm² and 870 kg/m³ stay',
  ],
])("'%s' in inches", (metric, inch) => {
  expect(inSystem(metric, 'inch')).toBe(inch)
  expect(inSystem(metric, 'metric')).toBe(metric)
})
