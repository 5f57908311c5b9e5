import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { tappingDrill } from './tappingDrill.ts'

// Drills of the trade's tables (M6 5.0, M8 6.8, M10 8.5, M12 10.2, M16 14; 1/2-13 27/64 in, 1/2-12 BSW 10.5 mm): from memory
// and, BSW, read in a Whitworth table. They leave 70 to 85 % of the thread, so half of the difference is a tenth or two.
test.each([
  ['M6', 5],
  ['M8', 6.8],
  ['M10', 8.5],
  ['M12', 10.2],
  ['M16', 14],
  ['1/2-13 UNC', 10.72],
  ['1/2-12 BSW', 10.5],
])('the drill for %s is close to that of the trade tables', (designation, table) => {
  expect(Math.abs(tappingDrill({ designation }).drill - mm(table))).toBeLessThanOrEqual(mm(0.2001))
})

test('a lower share wants a larger drill, and the share is that of the drill, not the one asked for', () => {
  const shallow = tappingDrill({ designation: '1/2-13 UNC', share: 0.6 })
  expect(shallow.drill).toBeGreaterThan(tappingDrill({ designation: '1/2-13 UNC' }).drill)
  expect(shallow.share).toBeCloseTo((inch(0.5) - shallow.drill) / (1.299038 * inch(1 / 13)), 9)
})

test('taper pipe is refused', () => {
  expect(() => tappingDrill({ designation: 'R 1/2' })).toThrow('R 1/2 is a taper thread')
})
