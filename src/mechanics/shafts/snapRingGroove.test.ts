import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { snapRingGroove } from './snapRingGroove.ts'

test('the groove is below the shaft and beyond the bore, and wider than its ring', () => {
  for (const size of [10, 20, 30, 45, 60, 80, 100, 120]) {
    const [shaft, bore] = (['shaft', 'bore'] as const).map((on) => snapRingGroove({ on, diameter: mm(size) }))
    expect(shaft?.grooveDiameter).toBeLessThan(mm(size))
    expect(bore?.grooveDiameter).toBeGreaterThan(mm(size))
    for (const groove of [shaft, bore]) expect(groove?.grooveWidth).toBeGreaterThan(groove?.ringThickness ?? 0)
  }
})

test('a size between the rings is refused', () => {
  expect(() => snapRingGroove({ on: 'shaft', diameter: mm(40.5) })).toThrow(
    'No snap ring is held here for a shaft of 40.5 mm.',
  )
})
