import { expect, test } from 'vitest'
import { kilogram } from '../../quantity/constructors.ts'
import { massSum } from './massSum.ts'

const wheel = { name: 'wheel', mass: { low: kilogram(40), high: kilogram(44) } }

test('known in full it gives low and high', () => {
  expect(massSum([wheel, { name: 'shaft', mass: kilogram(10) }])).toMatchObject({
    atLeast: 50,
    whole: { low: 50, high: 54 },
    unknown: [],
  })
})

test('known in part it gives at least, names what is missing, and says to weigh it', () => {
  const sum = massSum([wheel, { name: 'shaft' }])
  expect(sum.atLeast).toBe(40)
  expect(sum.whole).toBeUndefined()
  expect(sum.unknown).toEqual(['shaft'])
  expect(sum.cautions[0]).toContain('weigh it before it hangs')
})

test('refuses a mass of nothing by the name of its part', () => {
  expect(() => massSum([{ name: 'shaft', mass: kilogram(0) }])).toThrow('the mass of shaft has to be above 0 kg')
})
