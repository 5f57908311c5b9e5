import { expect, test } from 'vitest'
import { hatch } from './hatch.ts'

const square = [
  { x: 10, y: 10 },
  { x: 50, y: 10 },
  { x: 50, y: 40 },
  { x: 10, y: 40 },
]
const hole = [
  { x: 20, y: 20 },
  { x: 30, y: 20 },
  { x: 30, y: 30 },
  { x: 20, y: 30 },
]
const segments = (path: string) =>
  [...path.matchAll(/M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)/g)].map(
    (match) => match.slice(1).map(Number) as [number, number, number, number],
  )

test('lines stand at 45 or 135 degrees and stay inside the outline', () => {
  for (const slope of [45, 135] as const) {
    const lines = segments(hatch([square], { pitch: 5, slope }))
    expect(lines.length).toBeGreaterThan(8)
    for (const [x1, y1, x2, y2] of lines) {
      const rise = (y2 - y1) / (x2 - x1)
      expect(Math.abs(rise - (slope === 45 ? -1 : 1))).toBeLessThan(0.2)
      for (const x of [x1, x2]) expect(x >= 9.9 && x <= 50.1).toBe(true)
      for (const y of [y1, y2]) expect(y >= 9.9 && y <= 40.1).toBe(true)
    }
  }
})

test('neighbouring lines are one pitch apart', () => {
  const across = segments(hatch([square], { pitch: 7, slope: 45 })).map(([x, y]) => (x + y) / Math.SQRT2)
  for (const [index, at] of across.slice(1).entries()) expect(at - (across[index] ?? 0)).toBeCloseTo(7, 0)
})

test('a hole stays white', () => {
  for (const [x1, y1, x2, y2] of segments(hatch([square, hole], { pitch: 3, slope: 45 }))) {
    const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2]
    expect(x > 20.5 && x < 29.5 && y > 20.5 && y < 29.5).toBe(false)
  }
})

test('separate areas of one part stay in step', () => {
  const moved = square.map(({ x, y }) => ({ x: x + 100, y }))
  const phase = (path: string) => segments(path).map(([x, y]) => ((((x + y) / Math.SQRT2) % 7) + 7) % 7)
  for (const at of [
    ...phase(hatch([square], { pitch: 7, slope: 45 })),
    ...phase(hatch([moved], { pitch: 7, slope: 45 })),
  ])
    expect(Math.min(at, 7 - at)).toBeLessThan(0.15)
})
