import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { KNOWN_THREADS } from './knownThreads.ts'
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

// Straight drills for taper pipe without a reamer, from memory of the trade's lists (NPT: 7/16, 23/32, 59/64, 1 5/32 in; Rc:
// 8.4, 11.2, 14.75, 18.25, 23.75, 30.0 mm): half way down the hand-tight thread lies within a quarter of a millimetre of each.
test.each([
  ['1/4 NPT', (7 / 16) * 25.4],
  ['1/2 NPT', (23 / 32) * 25.4],
  ['3/4 NPT', (59 / 64) * 25.4],
  ['1 NPT', (1 + 5 / 32) * 25.4],
  ['R 1/8', 8.4],
  ['R 1/4', 11.2],
  ['R 3/8', 14.75],
  ['R 1/2', 18.25],
  ['R 3/4', 23.75],
  ['R 1', 30],
])('the straight drill for %s is close to that of the trade lists', (designation, table) => {
  const { drill, share } = tappingDrill({ designation })
  expect(Math.abs(drill - mm(table))).toBeLessThanOrEqual(mm(0.25))
  expect(share).toBeLessThan(1)
  expect(share).toBeGreaterThan(0.7)
})

// Taper pipe drilled straight, mm: a page lists the drills 8.6, 11.5, 15, 18.75, 24.25, 30.4; a tap maker's catalogue of 2021 gives the
// largest straight hole, for full thread to the mouth and less, as 8.1 or 8.2, 10.7 or 10.9, 14.2 or 14.4, 17.6 or 17.9, 23.0 or 23.3, 29.0 or 29.3.
test.each([
  ['R 1/8', 8.1, 8.6],
  ['R 1/4', 10.7, 11.5],
  ['R 3/8', 14.2, 15],
  ['R 1/2', 17.6, 18.75],
  ['R 3/4', 23, 24.25],
  ['R 1', 29, 30.4],
])('the straight drill for %s lies between the two lists that were read, which differ', (designation, least, most) => {
  const { drill } = tappingDrill({ designation })
  expect(drill).toBeGreaterThan(mm(least))
  expect(drill).toBeLessThan(mm(most))
})

// Drills of the American trade in sixty-fourths: 1/4-20 13/64, 5/16-18 17/64 (257 thou is a letter F), 3/8-16 5/16, 1/2-13 27/64, 5/8-11 17/32,
// 3/4-10 21/32 (from memory).
test.each([
  ['1/4-20 UNC', 13],
  ['5/16-18 UNC', 17],
  ['3/8-16 UNC', 20],
  ['1/2-13 UNC', 27],
  ['5/8-11 UNC', 34],
  ['3/4-10 UNC', 42],
])('the inch drill for %s is that of the trade', (designation, sixtyFourths) => {
  const { inchDrill, inchShare } = tappingDrill({ designation })
  expect(Math.round((inchDrill / inch(1)) * 64)).toBe(sixtyFourths)
  expect(inchShare).toBeGreaterThan(0.6)
  expect(inchShare).toBeLessThan(0.85)
})

test('every thread held has a drill inside its minor and major diameter', () => {
  for (const { designation, nominalDiameter, pitch } of KNOWN_THREADS) {
    const { exact, share } = tappingDrill({ designation })
    expect(exact, designation).toBeLessThan(nominalDiameter)
    expect(exact, designation).toBeGreaterThan(nominalDiameter - 2.6 * pitch)
    expect(share, designation).toBeGreaterThan(0.5)
  }
})
