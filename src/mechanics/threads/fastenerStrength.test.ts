import { expect, test } from 'vitest'
import { inch, megapascal, mm, psi } from '../../quantity/constructors.ts'
import { fastenerStrength } from './fastenerStrength.ts'

const at = (grade: string) => fastenerStrength({ grade, nominalDiameter: mm(12) })

test('stainless classes are found by their mark (ISO 3506-1, from memory)', () => {
  expect(at('A2-70')).toMatchObject({ isKnown: true, proof: megapascal(450), tensile: megapascal(700) })
  expect(at('A4-80').proof).toBe(megapascal(600))
})

test('a bolt of which nothing is known is no stronger than any that is held here', () => {
  const unknown = at('no marking')
  for (const grade of [
    'wrought iron',
    'old mild steel',
    '4.6',
    'SAE 1',
    'A2-50',
    'C1-50',
    'F1-45',
    'BS R',
    '150 HB',
    '12.9',
  ]) {
    expect(at(grade).isKnown, grade).toBe(true)
    expect(unknown.proof, grade).toBeLessThanOrEqual(at(grade).proof)
    expect(unknown.tensile, grade).toBeLessThanOrEqual(at(grade).tensile)
  }
})

// Tests of Metals at Watertown Arsenal, 1900 (a page of the report read): soft Norway iron took a set below 20,000 lb/in² and broke at
// 42,520; a data page gives wrought iron 23,000 to 32,000 lb/in² yield and 34,000 to 54,000 tensile.
test('what stands in for the unknown is below the softest wrought iron that was read of', () => {
  expect(at('').proof).toBeLessThan(psi(20_000))
  expect(at('').tensile).toBeLessThanOrEqual(psi(34_000))
})

test('nothing on the head, a mark that does not exist and one of another size are all taken at the worst, and told apart', () => {
  const why = (grade: string, size = mm(12)) => fastenerStrength({ grade, nominalDiameter: size })
  expect(why('').cautions[0]).toContain(
    'The grade is not known: reckoned as wrought iron, the weakest held here, proof 110 MPa.',
  )
  expect(why('9.3').cautions[0]).toContain("'9.3' is no grade held here: reckoned as wrought iron")
  expect(why('9.8', mm(20)).cautions[0]).toContain("'9.8' is not held here for a diameter of 20 mm")
  expect(why('SAE 5', inch(1.75)).source).toContain("'SAE 5' is not held here for a diameter of 44.45 mm")
  for (const strength of [why(''), why('9.3'), why('9.8', mm(20))]) {
    expect(strength).toMatchObject({ grade: 'wrought iron', isKnown: false })
    expect(strength.cautions[1]).toContain('read its mark')
  }
})

test('a mark is found however it is written', () => {
  for (const mark of ['SAE 5', 'sae5', 'Grade 5', 'gr. 5', 'GR5']) expect(at(mark).grade, mark).toBe('SAE 5')
  expect(at('a2 70').grade).toBe('A2-70')
  expect(at('Wrought Iron').isKnown).toBe(true)
  expect(at('5').isKnown).toBe(false)
})

// ISO 898-1, least Brinell hardness of a class and its least tensile and proof strength (from memory).
test.each([
  ['5.8', 152],
  ['6.8', 181],
  ['8.8', 245],
  ['10.9', 316],
])('the hardness that class %s has at least promises no more than the class', (grade, hardness) => {
  const byHardness = at(`${hardness} HB`)
  expect(byHardness.isKnown).toBe(true)
  expect(byHardness.tensile).toBeLessThanOrEqual(at(grade).tensile)
  expect(byHardness.tensile).toBeGreaterThan(0.85 * at(grade).tensile)
  expect(byHardness.proof).toBeLessThan(at(grade).proof)
  expect(at(`HB ${hardness}`).proof).toBe(byHardness.proof)
})

test('a hardness of wrought iron or of a hard skin tells nothing', () => {
  expect(at('110 HB')).toMatchObject({ isKnown: false, grade: 'wrought iron' })
  expect(at('110 HB').cautions[0]).toContain('it may be wrought iron, of whose strength hardness tells nothing')
  expect(at('600 HB').cautions[0]).toContain('hard at the skin alone')
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
