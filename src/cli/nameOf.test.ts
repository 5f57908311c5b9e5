import { expect, test } from 'vitest'
import { meant, nameOf } from './nameOf.ts'

const known = [{ id: 'bearing A', also: 'Warm bearing A' }, { id: 'bearing B' }, { id: 'lid' }, { id: 'Lid seal' }]
const here = { what: 'part', file: 'box.unit.yaml' }

test.each([
  ['bearing A', ['bearing A']],
  ['BEARING-a', ['bearing A']],
  ['  bearing_b ', ['bearing B']],
  ['warm bearing a', ['bearing A']],
  ['lid', ['lid']],
  ['LID', ['lid']],
  ['bearing', ['bearing A', 'bearing B']],
  ['seal', ['Lid seal']],
  ['eal', []],
  ['', []],
])('%j is %j', (name, ids) => {
  expect(meant(name, known)).toEqual(ids)
})

test('what is not there names the nearest, or what there is', () => {
  expect(() => nameOf('bering A', known, here)).toThrow(expect.objectContaining({ next: "Did you mean 'bearing A'?" }))
  expect(() => nameOf('sump', known, here)).toThrow(
    expect.objectContaining({ next: 'Known are: bearing A, bearing B, lid, Lid seal.' }),
  )
})
