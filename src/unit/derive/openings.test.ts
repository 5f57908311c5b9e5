import { expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

const COVERED = `
openings: {top: {}, drain: {}, hole: {in: cover}}
parts:
  box: {}
  oil pump: {reach: top}
  cover: {closes: top}
  cap: {onto: cover, closes: hole}
  plug: {closes: drain}
`

test('what has to be reached through an opening comes before what shuts it', () => {
  const { refuses } = small(COVERED)
  expect(refuses('oil pump', 'cover', 'cap', 'plug')).toEqual([])
  expect(refuses('cover', 'oil pump', 'cap', 'plug')).toEqual([
    'oil pump: oil pump goes through the top, which cover shuts.',
  ])
})

test('a hole in a part is reached only where that part is', () => {
  const { refuses } = small(`
openings: {top: {}, hole: {in: cover}}
parts:
  box: {}
  cover: {closes: top}
  dipstick: {reach: hole}
`)
  expect(refuses('cover', 'dipstick')).toEqual([])
  expect(refuses('dipstick', 'cover')).toEqual(['dipstick: dipstick goes through the hole, a hole in cover.'])
})

test('an opening is shut from the first step of its closing: sealant spread, before the cover is on', () => {
  const { refuses } = small(`
openings: {top: {}}
parts:
  box: {}
  oil pump: {reach: top}
  cover: {closes: top}
connections:
  joint: {kind: gasket, squeezed by: cover, sealant: {what: liquid gasket}}
`)
  expect(refuses('oil pump', 'sealant joint', 'cover')).toEqual([])
  expect(refuses('sealant joint', 'oil pump', 'cover')).toEqual([
    'oil pump: oil pump goes through the top, which is shut from sealant joint on.',
  ])
})

test('a cover that closes an opening while it stands on another part shuts it once both are home', () => {
  const { refuses } = small(`
openings: {top: {}, hole: {in: carrier}}
parts:
  box: {}
  carrier: {closes: top}
  lid: {onto: carrier, closes: hole}
  strainer: {reach: hole}
`)
  expect(refuses('carrier', 'strainer', 'lid')).toEqual([])
  expect(refuses('carrier', 'lid', 'strainer')).toEqual(['strainer: strainer goes through the hole, which lid shuts.'])
})

test('a fill wants every opening below its level tight, with the holes in what closes them', () => {
  const { refuses } = small(`${COVERED}fills:
  oil: {litres: 2, stands above: [top, drain]}
`)
  expect(refuses('oil pump', 'cover', 'cap', 'plug', 'oil')).toEqual([])
  expect(refuses('oil pump', 'cover', 'plug', 'oil', 'cap')).toEqual([
    'oil: oil stands above the top: that has to be tight first.',
  ])
  expect(refuses('oil pump', 'cover', 'cap', 'oil', 'plug')).toEqual([
    'oil: oil stands above the drain: that has to be tight first.',
  ])
})

test('tight means the last step of the closing: home and tightened', () => {
  const { refuses } = small(`
openings: {drain: {}}
parts:
  box: {}
  cover: {closes: drain}
connections:
  bolts: {kind: fasteners, holds: cover, own step: true}
fills:
  oil: {stands above: drain}
`)
  expect(refuses('cover', 'bolts', 'oil')).toEqual([])
  expect(refuses('cover', 'oil', 'bolts')).toEqual(['oil: oil stands above the drain: that has to be tight first.'])
})

test('what comes from an end comes through the opening there, also where nobody took the sizes of what shuts it', () => {
  const { refuses, derivation } = small(`
lines: {1: {at: [0, 0], ends: [front, rear]}}
openings: {bore: {line: 1, end: front}}
parts:
  box: {}
  shaft: {line 1: "0..50: 20", comes from: front}
  cover: {closes: bore}
`)
  expect(refuses('shaft', 'cover')).toEqual([])
  expect(refuses('cover', 'shaft')).toEqual(['shaft: shaft comes through the bore, which cover shuts.'])
  const [need] = derivation.problem.operations.find(({ id }) => id === 'shaft')!.needs
  expect(need?.reason.standing).toBe('usual')
})
