import { expect, test } from 'vitest'
import { metre, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import type { Known } from '../../unit/model/unit.ts'
import { xmlFault } from '../testing/xmlFault.ts'
import { stackBar } from './stackBar.ts'

const size = (low: number, high = low): Known<Metre> => ({ low: mm(low), high: mm(high), standing: 'seen' })

test('the worst cases add up: what adds and what takes away pull the gap apart', () => {
  const { says, svg } = stackBar({
    title: 'Float of line 1',
    pieces: [
      { name: 'walls', length: size(150, 150.1), way: 'adds' },
      { name: 'bearings', length: size(36, 36.02), way: 'takes away' },
      { name: 'shaft', length: size(113.8), way: 'takes away' },
    ],
    leaves: 'end float',
    limit: { low: metre(1e-4), high: metre(3e-4) },
    system: 'metric',
  })
  expect(says).toBe(
    'plus walls 150.0..150.1 mm, less bearings 36.00..36.02 mm, less shaft 113.8 mm leaves end float 0.18..0.30 mm, limit 0.1..0.3 mm.',
  )
  expect(xmlFault(svg)).toBeUndefined()
})

test('a piece that nobody measured leaves the sum open', () => {
  const { says, notes } = stackBar({
    title: 'Pack',
    pieces: [
      { name: 'S1', length: size(0.1), way: 'adds' },
      { name: 'S2', way: 'adds' },
    ],
    leaves: 'pack',
    system: 'metric',
  })
  expect(says).toContain('leaves pack ?')
  expect(notes).toContain('Not measured: S2.')
})

test('each bar begins where the one before ended', () => {
  const { svg } = stackBar({
    title: 'x',
    pieces: [
      { name: 'a', length: size(40), way: 'adds' },
      { name: 'b', length: size(30), way: 'takes away' },
    ],
    leaves: 'gap',
    system: 'metric',
  })
  const bars = [...svg.matchAll(/class="edge" x="([\d.]+)" y="\d+" width="([\d.]+)"/g)].map((match) => ({
    x: Number(match[1]),
    w: Number(match[2]),
  }))
  const [a, b, gap] = bars
  expect((b?.x ?? 0) + (b?.w ?? 0)).toBeCloseTo((a?.x ?? 0) + (a?.w ?? 0), 0)
  expect(gap?.w).toBeCloseTo((a?.w ?? 0) - (b?.w ?? 0), 0)
})
