import { expect, test } from 'vitest'
import { xmlFault } from '../testing/xmlFault.ts'
import { gauge } from './gauge.ts'

const float = { title: 'End float', dimension: 'length', limit: { low: 5e-5, high: 2e-4 }, system: 'metric' } as const

/** Where the pointer's tip, and the face of the jaw, stand. */
const pointer = (svg: string) => Number(/<path class="(?:good|look|stop|dot)" d="M([\d.]+)/.exec(svg)?.[1]) + 7
const jaws = (svg: string) => [...svg.matchAll(/class="edge" d="M[\d.]+ 26H([\d.]+)/g)].map((match) => Number(match[1]))

test('the reading stands between the jaws, in proportion', () => {
  const { svg, says } = gauge({ ...float, readings: [{ low: 1.1e-4, high: 1.1e-4, is: 'within' }] })
  const [low = 0, high = 0] = jaws(svg)
  expect((pointer(svg) - low) / (high - low)).toBeCloseTo((1.1e-4 - 5e-5) / (2e-4 - 5e-5), 2)
  expect(svg).toContain('<path class="good"')
  expect(says).toBe('Limit 0.05..0.20 mm. Read: 0.11 mm, within.')
  expect(xmlFault(svg)).toBeUndefined()
})

test('a reading that is out stands inside a jaw', () => {
  const { svg } = gauge({ ...float, readings: [{ low: 2.6e-4, high: 2.6e-4, is: 'out' }] })
  expect(pointer(svg)).toBeGreaterThan(jaws(svg)[1] ?? Infinity)
  expect(svg).toContain('<path class="stop"')
})

test('several readings are numbered discs, with a bar for the uncertainty', () => {
  const { svg } = gauge({
    ...float,
    readings: [1e-4, 1.2e-4].map((at) => ({ low: at, high: at, is: 'within' as const, uncertainty: 1e-5 })),
  })
  expect([...svg.matchAll(/<circle class="good"/g)]).toHaveLength(2)
  expect([...svg.matchAll(/class="range"/g)]).toHaveLength(2)
})

test('between new and worn lies a zone of its own; one-sided limits have one jaw', () => {
  const { svg, says } = gauge({ ...float, limit: { low: 0.05, high: 0.0502 }, worn: { low: 0.0499 }, readings: [] })
  expect(svg).toContain('class="worn-zone"')
  expect(says).toBe('Limit 50.0..50.2 mm; worn 49.9..50.2 mm. Not read yet.')
  expect(jaws(gauge({ ...float, limit: { high: 1e-4 }, readings: [] }).svg)).toHaveLength(1)
})

test('a force is read in pounds where the job is in inches', () => {
  const { says } = gauge({
    title: 'Press',
    dimension: 'force',
    limit: { high: 61_000 },
    readings: [{ low: 44_482.216152605, high: 44_482.216152605, is: 'within' }],
    system: 'inch',
  })
  expect(says).toContain('10000 lbf')
})
