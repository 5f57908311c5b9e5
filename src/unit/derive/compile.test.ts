import { describe, expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

test('a blind engagement wants what it engages home first', () => {
  const { refuses } = small('parts: {box: {}, gear: {}, cover: {engages: gear}}\n')
  expect(refuses('gear', 'cover')).toEqual([])
  expect(refuses('cover', 'gear')).toEqual(['cover: cover engages gear blind: that has to be home first.'])
})

test('a step that follows its part comes after it', () => {
  const { refuses, derivation } = small('parts: {box: {}, nut: {then: {bend the tab: {takes: 2 min}}}}\n')
  expect(refuses('nut', 'bend the tab')).toEqual([])
  expect(refuses('bend the tab', 'nut')).toEqual(['bend the tab: bend the tab follows nut.'])
  expect(derivation.problem.operations.find(({ id }) => id === 'bend the tab')).toMatchObject({
    does: 'Bend the tab',
    duration_s: { low: 120, usual: 120, high: 120 },
  })
})

test('a part that goes in with another has no step of its own', () => {
  const { derivation, refuses } = small(`
openings: {hole: {}}
parts:
  box: {}
  cover: {}
  plug: {goes with: cover, closes: hole}
  strainer: {reach: hole}
`)
  expect(derivation.problem.operations.map(({ id }) => id)).toEqual(['cover', 'strainer'])
  expect(refuses('cover', 'strainer')).toEqual(['strainer: strainer goes through the hole, which cover shuts.'])
})

describe('what a person adds', () => {
  const ADDED = `
parts: {box: {}, dowels: {}, lid: {}}
steps:
  wash out: {does: Wash the box out, after: dowels, before: lid, why: chips from the tapping, takes: 10 min}
orders:
  - {first: dowels, then: lid, why: they locate it, standing: usual}
`

  test('a step of its own stands between those that it names', () => {
    const { refuses } = small(ADDED)
    expect(refuses('dowels', 'wash out', 'lid')).toEqual([])
    expect(refuses('wash out', 'dowels', 'lid')).toEqual(['wash out: wash out after dowels: chips from the tapping.'])
    expect(refuses('dowels', 'lid', 'wash out')).toEqual(['lid: wash out before lid: chips from the tapping.'])
  })

  test('an order has the reason and the standing that it was given, and counts as made by hand', () => {
    const { refuses, derivation } = small(ADDED)
    expect(refuses('lid', 'dowels', 'wash out')).toContain('lid: dowels before lid: they locate it.')
    const need = derivation.problem.operations
      .find(({ id }) => id === 'lid')
      ?.needs.find(({ id }) => id === 'lid: after dowels')
    expect(need?.reason).toMatchObject({ origin: 'author', standing: 'usual' })
    expect(derivation.needs.byHand).toBe(3)
  })
})

describe('a step that is dropped', () => {
  const DROPPED = `
parts: {box: {}, shaft: {}, cover: {}, seal: {}}
checks:
  float: {wants: [shaft, cover], without: seal}
  spin: {wants: [float, cover]}
`

  test('is gone, and holds nothing up; what else a step wants it still wants', () => {
    expect(small(DROPPED).refuses('shaft', 'cover', 'spin', 'float', 'seal')).toEqual(['spin: spin wants float home.'])
    const dropped = small(`${DROPPED}drop: {float: measured on the bench}\n`)
    expect(dropped.refuses('shaft', 'cover', 'spin', 'seal')).toEqual([])
    expect(dropped.refuses('shaft', 'spin', 'cover', 'seal')).toEqual(['spin: spin wants cover home.'])
  })

  test('out of a longer list only that one falls', () => {
    const { refuses } = small(`
parts: {box: {}, cover: {}, fan: {}}
connections: {bolts: {kind: fasteners, holds: cover, own step: true}}
checks: {float: {wants: cover}}
drop: {bolts: tightened with the cover}
`)
    expect(refuses('cover', 'float', 'fan')).toEqual([])
    expect(refuses('float', 'cover', 'fan')).toEqual(['float: float wants cover home.'])
  })
})

test('a clock becomes a lag with its reason', () => {
  const { derivation } = small(`
parts: {box: {}, bearing: {}}
steps: {warm: {does: Warm the bearing}}
clocks:
  grip: {from: end of warm, to: start of bearing, most: 2 min, why: it grips when cold, standing: usual}
`)
  expect(derivation.problem.lags).toEqual([
    expect.objectContaining({
      id: 'grip',
      from: { op: 'warm', edge: 'end' },
      to: { op: 'bearing', edge: 'start' },
      max_s: 120,
      reason: expect.objectContaining({ says: 'it grips when cold', standing: 'usual', origin: 'author' }),
    }),
  ])
})

test('the steps that a connection brings stand in its order, with its sentences', () => {
  const { refuses } = small(
    'parts: {box: {}, shaft: {}, bearing: {onto: shaft, kind: hot fit, joined: on the bench}}\n',
  )
  expect(refuses('warm bearing', 'bearing', 'feel bearing seated', 'shaft')).toEqual([])
  expect(refuses('bearing', 'warm bearing', 'feel bearing seated', 'shaft')).toEqual([
    'bearing: bearing goes on while it is hot.',
  ])
})

test('a need that every way of a part asks is asked once, of the step, and is no better known than in the worst of them', () => {
  const { derivation } = small(
    'parts: {box: {}, shaft: {}, wheel: {onto: shaft, line 1: "0..4: 30"}, pin: {engages: shaft}}\nlines: {1: {at: [0, 0]}}\n',
  )
  const wheel = derivation.problem.operations.find(({ id }) => id === 'wheel')
  expect(wheel?.modes).toHaveLength(4)
  const ids = derivation.problem.operations.flatMap(({ needs, modes }) =>
    [...needs, ...modes.flatMap((mode) => mode.needs)].map(({ id }) => id),
  )
  expect(new Set(ids).size).toBe(ids.length)
})

test('of two needs that ask the same the better known stays', () => {
  const { derivation } = small(`
parts: {box: {}, dowels: {}, lid: {engages: dowels}}
orders: [{first: dowels, then: lid, standing: supposed}]
`)
  const needs = derivation.problem.operations.find(({ id }) => id === 'lid')?.needs
  expect(needs?.map(({ reason }) => [reason.code, reason.standing])).toEqual([['ENGAGES', 'told']])
})
