import { expect, test } from 'vitest'
import type { HoleMap } from '../../unit/connections/kind.ts'
import { xmlFault } from '../testing/xmlFault.ts'
import { holeMap } from './holeMap.ts'

const circle: HoleMap = {
  connection: 'cover screws',
  holes: Array.from({ length: 6 }, (_, index) => ({
    id: String(index + 1),
    y: 0.05 * Math.cos((index * Math.PI) / 3),
    z: 0.05 * Math.sin((index * Math.PI) / 3),
    letter: index < 4 ? 'A' : 'B',
  })),
  order: ['1', '4', '2', '5', '3', '6'],
  stages: ['all to 10 N·m', 'all to 22 N·m'],
  torques: [],
  lengths: [
    { letter: 'A', text: '30 mm', pieces: 4 },
    { letter: 'B', text: '45 mm', pieces: 2 },
  ],
}

const bolts = (svg: string) =>
  [...svg.matchAll(/<g data-hole="([^"]*)">.*?class="number"[^>]*>([^<]*)<.*?<\/g>/g)].map(([text, id, number]) => ({
    text: text ?? '',
    id,
    number,
  }))

test('each hole carries its place in the order, its letter, and a punch place for each stage', () => {
  const { svg } = holeMap(circle)
  expect(xmlFault(svg)).toBeUndefined()
  expect(bolts(svg).map(({ id, number }) => [id, number])).toEqual([
    ['1', '1'],
    ['2', '3'],
    ['3', '5'],
    ['4', '2'],
    ['5', '4'],
    ['6', '6'],
  ])
  for (const { text, id } of bolts(svg)) {
    expect(text.match(/<circle class="thin"/g)).toHaveLength(2)
    expect(text).toContain(`>${Number(id) < 5 ? 'A' : 'B'}<`)
  }
})

test('to the right is to the right, and up is up', () => {
  const { svg } = holeMap({
    ...circle,
    holes: [
      { id: 'far up right', y: 0.1, z: 0.1, letter: 'A' },
      { id: 'home', y: 0, z: 0, letter: 'A' },
    ],
  })
  const [upRight, home] = bolts(svg).map(({ text }) =>
    (/class="number" x="([\d.]+)" y="([\d.]+)"/.exec(text) ?? []).slice(1).map(Number),
  )
  expect(upRight?.[0]).toBeGreaterThan(home?.[0] ?? Infinity)
  expect(upRight?.[1]).toBeLessThan(home?.[1] ?? -Infinity)
})

test('holes on a circle show their circle, others the way round them', () => {
  expect(holeMap(circle).svg).toContain('<circle class="chain"')
  const square = {
    ...circle,
    holes: [
      [0, 0],
      [0.1, 0],
      [0.1, 0.03],
      [0, 0.05],
    ].map(([y = 0, z = 0], index) => ({ id: `h${index}`, y, z, letter: 'A' })),
  }
  expect(holeMap(square).svg).not.toContain('<circle class="chain"')
})

test('a hole without a place in the order is marked and said', () => {
  const { svg, says, notes } = holeMap({ ...circle, order: ['1', '4'] })
  expect(bolts(svg).filter(({ number }) => number === '?')).toHaveLength(4)
  expect(says).toContain('No place in the order: 2, 3, 5, 6.')
  expect(notes).toEqual(['? no place in the order was told.'])
})

test('the text equivalent tells the order with the lengths, and the stages', () => {
  expect(holeMap(circle).says).toBe(
    '6 places. Order: 1 (A), 4 (A), 2 (A), 5 (B), 3 (A), 6 (B). Lengths: A 4 of 30 mm; B 2 of 45 mm. all to 10 N·m all to 22 N·m',
  )
})

test('a hostile name stays a name', () => {
  const { svg } = holeMap({ ...circle, connection: '"><script>', stages: ['</text><script>'] })
  expect(xmlFault(svg)).toBeUndefined()
  expect(svg).not.toContain('<script')
})

test('two holes side by side stand apart', () => {
  const two = [0.05, -0.05].map((y, index) => ({ id: String(index + 1), y, z: y * 1e-16, letter: 'A' }))
  const xs = bolts(holeMap({ ...circle, holes: two }, 300).svg).map(({ text }) =>
    Number(/class="number" x="([\d.]+)"/.exec(text)?.[1]),
  )
  expect(Math.abs((xs[0] ?? 0) - (xs[1] ?? 0))).toBeGreaterThan(150)
})

test('on a screen the bolts that are tight, the stages reached and the next one are shown', () => {
  const reached = new Map([
    ['1', circle.stages.length],
    ['4', 1],
  ])
  const { svg } = holeMap({ ...circle, stages: ['all to 10 N·m', 'all to 20 N·m'] }, 420, {
    reached: new Map([...reached, ['1', 2]]),
    next: '2',
  })
  expect(svg).toMatch(/<g data-hole="1" class="tight">/)
  expect(svg).toMatch(/<g data-hole="2" class="next"><circle/)
  expect(svg.match(/<circle class="dot"/g)).toHaveLength(3)
})
