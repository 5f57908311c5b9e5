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

test('British letters are found with BS before them, grow in order, and a bare letter is no grade', () => {
  const tensile = ['R', 'S', 'T', 'V', 'X'].map((letter) => at(`BS ${letter}`).tensile / 1e6)
  // BS 970 condition letters: R 45 to 55 tonf/in², 700 to 850 MPa; S 775; T 850; V 1000; X 1150 (from memory).
  for (const [place, printed] of [700, 775, 850, 1000, 1150].entries()) {
    expect(Math.abs((tensile[place] as number) / printed - 1)).toBeLessThan(0.012)
  }
  expect(at('BS R').proof).toBeGreaterThan(at('4.6').proof)
  expect(at('R').isKnown).toBe(false)
})
