import { expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

const LOOSE = `
parts:
  box: {}
  washer: {loose until: shaft}
  shaft: {}
  cover: {}
lies:
  upright: [washer, shaft]
  end up: cover
`

test('the housing is not turned while something in it is loose', () => {
  const { refuses } = small(LOOSE)
  expect(refuses('washer', 'shaft', 'cover')).toEqual([])
  expect(refuses('cover', 'washer', 'shaft')).toEqual([])
  expect(refuses('washer', 'cover', 'shaft')).toEqual([
    'cover: The box is not turned to end up while washer is loose in it: first shaft.',
  ])
})

test('a step that does not care how the housing lies is not held up', () => {
  expect(small(LOOSE.replace('  end up: cover\n', '')).refuses('washer', 'cover', 'shaft')).toEqual([])
})

test('what is parked is usually loose until it is brought home', () => {
  const parked = LOOSE.replace('{loose until: shaft}', '{way: {path: by hand, park through: top, home with: shaft}}')
  const { refuses, derivation } = small(`openings: {top: {}}${parked}`)
  expect(refuses('washer', 'cover', 'shaft')).toEqual([
    'cover: The box is not turned to end up while washer is loose in it: first shaft.',
  ])
  const need = derivation.problem.operations.find(({ id }) => id === 'cover')!.needs[0]
  expect(need?.reason.standing).toBe('usual')
})

test('away with its carrier it cannot fall out', () => {
  const { refuses } = small(`
parts:
  box: {}
  shaft: {}
  washer: {onto: shaft, joined: on the bench, loose until: nut}
  nut: {onto: shaft, joined: in the housing}
  cover: {}
lies: {upright: [washer, shaft, nut], end up: cover}
`)
  expect(refuses('washer', 'cover', 'shaft', 'nut')).toEqual([])
  expect(refuses('washer', 'shaft', 'cover', 'nut')).toHaveLength(1)
})

test('a step that nobody laid usually lies as its part does', () => {
  const { derivation } = small(`
parts: {box: {}, washer: {loose until: shaft}, shaft: {}, cover: {}}
connections: {bolts: {kind: fasteners, holds: cover, own step: true}}
lies: {upright: [washer, shaft], end up: cover}
`)
  const loose = ['cover', 'bolts'].map(
    (step) =>
      derivation.problem.operations.find(({ id }) => id === step)?.needs.find(({ reason }) => reason.code === 'LOOSE')
        ?.reason.standing,
  )
  expect(loose).toEqual(['told', 'usual'])
})
