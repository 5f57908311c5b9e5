import { expect, test } from 'vitest'
import { megapascal, mm } from '../../quantity/constructors.ts'
import { fastenerStrength } from './fastenerStrength.ts'

const at = (grade: string) => fastenerStrength({ grade, nominalDiameter: mm(12) })

test('stainless classes are found by their mark (ISO 3506-1, from memory)', () => {
  expect(at('A2-70')).toMatchObject({ isKnown: true, proof: megapascal(450), tensile: megapascal(700) })
  expect(at('A4-80').proof).toBe(megapascal(600))
})

test('old iron is found by name only and is weaker than anything with a mark', () => {
  expect(at('wrought iron').isKnown).toBe(true)
  expect(at('wrought iron').proof).toBeLessThan(at('4.6').proof)
  expect(at('no mark at all').grade).toBe('4.6')
})
