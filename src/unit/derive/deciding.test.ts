import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { connectionsOf } from '../connections/connectionsOf.ts'
import { contributionOf } from '../connections/contributionOf.ts'
import { readUnit } from '../file/readUnit.ts'
import { deciding, mayOverlap } from './deciding.ts'
import { small } from './testing/smallUnit.ts'

const LINE = `lines: {1: {at: [0, 0], ends: [front, rear]}}
parts:
  box: {wall on 1: "0..16: 62"}
  shaft: {line 1: "-40..0: 25, 0..16: 30, 16..70: 40", comes from: rear}
  bearing: {line 1: "0..16: 62/30", comes from: front}
  washer: {line 1: "-2..0: 50/31", comes from: front}
  cap: {line 1: "-12..-2: 90/52", comes from: front}
`
const joints = (unit: Parameters<typeof contributionOf>[1]) => contributionOf(connectionsOf(unit), unit)

test('a part decides whose diameters make an order certain, and says which order', () => {
  const { unit } = small(LINE)
  expect(deciding(unit, joints(unit))).toEqual([
    {
      part: 'bearing',
      line: '1',
      decides: [
        { earlier: 'bearing', later: 'washer' },
        { earlier: 'bearing', later: 'cap' },
      ],
      loosens: [],
    },
    { part: 'washer', line: '1', decides: [{ earlier: 'bearing', later: 'washer' }], loosens: [] },
    { part: 'cap', line: '1', decides: [{ earlier: 'bearing', later: 'cap' }], loosens: [] },
  ])
})

test('ring by ring: only the ring that bars is named', () => {
  const { unit } = small(`lines: {1: {at: [0, 0], ends: [front, rear]}}
parts:
  box: {}
  shaft: {line 1: "0..10: 20, 10..20: 40, 20..30: 20", comes from: front}
  plate: {line 1: "-10..-5: 90/30", comes from: front}
`)
  const found = deciding(unit, joints(unit), { each: 'ring' })
  expect(found.map(({ part, ring }) => [part, ring])).toEqual([
    ['shaft', undefined],
    ['shaft', 1],
    ['plate', undefined],
  ])
})

test('what only hangs together with something else is told by its step', () => {
  const { unit } = small(`lines: {1: {at: [0, 0], ends: [front, rear]}}
parts:
  box: {wall on 1: "0..16: 62"}
  shaft: {line 1: "-10..50: 30", comes from: front}
  wheel: {onto: shaft, line 1: "20..40: 50/30"}
  nut: {onto: shaft, line 1: "40..48: 45/30"}
`)
  const found = deciding(unit, joints(unit))
  // Whether nut or wheel is first depends on the end that each comes from: no order is certain, an either-or is.
  expect(found.every(({ decides }) => decides.length === 0)).toBe(true)
  expect(found.flatMap(({ loosens }) => loosens)).not.toEqual([])
})

describe('what may overlap', () => {
  test('is listed with what lets it: a word, a connection, a tight fit', () => {
    const { unit } = small(`lines: {1: {at: [0, 0]}, 2: {at: [50, 0]}}
parts:
  box: {wall on 1: "0..16: 62"}
  shaft: {line 1: "0..60: 30.01"}
  bearing: {onto: shaft, kind: press fit, joined: on the bench, line 1: "0..16: 62.01/30"}
  wheel: {onto: shaft, slides on: shaft, line 1: "20..40: 60/30.05 teeth"}
  pinion: {meshes: wheel, line 2: "20..40: 46 teeth"}
  sleeve: {line 1: "16..18: 50/30"}
`)
    expect(mayOverlap(unit, joints(unit))).toEqual([
      { parts: ['box', 'bearing'], why: 'a tight fit by their sizes' },
      { parts: ['shaft', 'bearing'], why: 'bearing goes home on shaft by its connection; a tight fit by their sizes' },
      { parts: ['shaft', 'wheel'], why: 'wheel slides on shaft' },
      { parts: ['shaft', 'sleeve'], why: 'a tight fit by their sizes' },
      { parts: ['wheel', 'pinion'], why: 'pinion meshes with wheel' },
    ])
  })
})

describe.each([
  ['tail-box', 14, 13],
  ['yard-shunter', 19, 11],
] as const)('%s', (name, measured, decide) => {
  const file = fileURLToPath(new URL(`../housings/${name}.unit.yaml`, import.meta.url))
  const { unit, faults } = readUnit(readFileSync(file, 'utf8'), name)
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  const found = deciding(unit, joints(unit))

  test(`${decide} of its ${measured} measured parts decide the sequence`, () => {
    expect([...unit.parts.values()].filter(({ rings }) => rings.size > 0)).toHaveLength(measured)
    expect(new Set(found.map(({ part }) => part)).size).toBe(decide)
  })

  test('an order hangs on both of the parts that meet', () => {
    const pair = { 'tail-box': ['wall ring', 'bearing A'], 'yard-shunter': ['lock plate', 'output shaft'] }[name] as [
      string,
      string,
    ]
    const hangs = found.filter(({ decides }) =>
      decides.some(({ earlier, later }) => earlier === pair[0] && later === pair[1]),
    )
    expect(hangs.map(({ part }) => part)).toEqual(name === 'tail-box' ? pair : ['output shaft'])
  })
})
