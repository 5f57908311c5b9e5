import { inch, megapascal, mm, newton, psi } from '../../quantity/constructors.ts'
import type { Metre, Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'

export interface FastenerStrength {
  /** The grade that the numbers belong to. */
  readonly grade: string
  /** False when the grade on the head was missing or not held here and the weakest stands in. */
  readonly isKnown: boolean
  /** Symbol S_p: a bolt comes back from it unstretched. */
  readonly proof: Pascal
  /** Symbol R_m, least. */
  readonly tensile: Pascal
  readonly source: string
}

interface GradeRow {
  readonly source: string
  readonly grade: string
  readonly from: Metre
  readonly upTo: Metre
  readonly proof: Pascal
  readonly tensile: Pascal
}

const METRIC = 'ISO 898-1, property classes'
const STAINLESS = 'ISO 3506-1, stainless classes; the 0.2 % limit stands in for proof; from memory'
const OLD = 'old iron without a mark: four fifths of the least yield that handbooks give, no standard; from memory'
const INCH = 'SAE J429, grades; grade 2, 5 and 8 read in bolt reference tables, grade 1 and the size steps from memory'

const metric = (
  grade: string,
  from: number,
  upTo: number,
  proof: number,
  tensile: number,
  source = METRIC,
): GradeRow => ({
  grade,
  source,
  from: mm(from),
  upTo: mm(upTo),
  proof: megapascal(proof),
  tensile: megapascal(tensile),
})
const sae = (grade: string, from: number, upTo: number, proof: number, tensile: number): GradeRow => ({
  grade,
  source: INCH,
  from: inch(from),
  upTo: inch(upTo),
  proof: psi(proof * 1000),
  tensile: psi(tensile * 1000),
})

/** ISO 898-1 in MPa, M1.6 to M39; SAE J429 in thousand psi, 1/4 to 1 1/2 in. Sizes: above the first, up to the second. */
const GRADES: readonly GradeRow[] = [
  metric('4.6', 1.5, 39, 225, 400),
  metric('4.8', 1.5, 39, 310, 420),
  metric('5.6', 1.5, 39, 280, 500),
  metric('5.8', 1.5, 39, 380, 520),
  metric('6.8', 1.5, 39, 440, 600),
  metric('8.8', 1.5, 16, 580, 800),
  metric('8.8', 16, 39, 600, 830),
  metric('9.8', 1.5, 16, 650, 900),
  metric('10.9', 1.5, 39, 830, 1040),
  metric('12.9', 1.5, 39, 970, 1220),
  sae('SAE 1', 0.2, 1.5, 33, 60),
  sae('SAE 2', 0.2, 0.75, 55, 74),
  sae('SAE 2', 0.75, 1.5, 33, 60),
  sae('SAE 5', 0.2, 1, 85, 120),
  sae('SAE 5', 1, 1.5, 74, 105),
  sae('SAE 8', 0.2, 1.5, 120, 150),
]

const BRITISH =
  'BS 1083 and BS 1768 grade letters, least tensile strength in tons to the square inch; from memory, no page read that agrees; proof taken as 0.6 of it, our choice on the safe side'
/** 2240 lb to the square inch. */
const british = (letter: string, tons: number): GradeRow => ({
  grade: `BS ${letter}`,
  source: BRITISH,
  from: inch(0.15),
  upTo: inch(2),
  proof: psi(0.6 * tons * 2240),
  tensile: psi(tons * 2240),
})

const stainless = (grades: readonly string[], proof: number, tensile: number) =>
  grades.map((grade) => metric(grade, 1.5, 39, proof, tensile, STAINLESS))

/** Found by name only: nothing without a mark is taken for one of these. */
const NAMED: readonly GradeRow[] = [
  ...stainless(['A1-50', 'A2-50', 'A3-50', 'A4-50', 'A5-50'], 210, 500),
  ...stainless(['A1-70', 'A2-70', 'A3-70', 'A4-70', 'A5-70'], 450, 700),
  ...stainless(['A2-80', 'A3-80', 'A4-80', 'A5-80'], 600, 800),
  ...stainless(['C1-50', 'C4-50'], 250, 500),
  ...stainless(['C1-70', 'C4-70'], 410, 700),
  ...stainless(['C3-80'], 640, 800),
  ...stainless(['F1-45'], 250, 450),
  ...stainless(['F1-60'], 410, 600),
  ...[british('R', 45), british('S', 50), british('T', 55), british('V', 65), british('X', 75)],
  metric('wrought iron', 1.5, 80, 125, 290, OLD),
  metric('old mild steel', 1.5, 80, 160, 340, OLD),
]

/**
 * How strong a bolt is, by the marking on its head. A marking that is missing, or that has no row at this size, is
 * taken as the weakest steel grade; then the answer says so. Bolts made before about 1900 may be of wrought iron, which is
 * weaker still: say 'wrought iron' (or 'old mild steel') where that may be.
 *
 * @param grade property class as '8.8', inch grade as 'SAE 5', stainless as 'A2-70', British letter as 'BS R', or wrought iron, old mild steel
 * @param nominalDiameter symbol d
 * @returns proof and tensile strength
 * @throws VALUE_OUTSIDE
 * @source ISO 898-1 (classes 4.6 to 12.9, M1.6 to M39); SAE J429 (grades 1, 2, 5, 8, 1/4 to 1 1/2 in); ISO 3506-1 (A, C, F classes, from memory); BS 1083 letters R, S, T, V, X (from memory)
 * @example fastenerStrength({ grade: '8.8', nominalDiameter: mm(20) }).proof   // 600 MPa
 * @example fastenerStrength({ grade: 'no marking', nominalDiameter: mm(20) }).grade   // '4.6'
 */
export function fastenerStrength({
  grade,
  nominalDiameter,
}: {
  readonly grade: string
  readonly nominalDiameter: Metre
}): FastenerStrength {
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  const isNear = ({ from, upTo }: GradeRow) => nominalDiameter > from && nominalDiameter <= upTo + 1e-9
  const wanted = grade.trim()
  const row = [...GRADES, ...NAMED].find((candidate) => candidate.grade === wanted && isNear(candidate))
  if (row) {
    const { proof, tensile, source } = row
    return { grade: wanted, isKnown: true, proof, tensile, source }
  }
  const weakest = GRADES.reduce((a, b) => (b.proof < a.proof ? b : a))
  return {
    grade: weakest.grade,
    isKnown: false,
    proof: weakest.proof,
    tensile: weakest.tensile,
    source: `'${wanted}' is not held here at this size: taken as the weakest, ${weakest.grade}; ${METRIC}`,
  }
}

/**
 * Load that a bolt takes at a stress over its stress area: proof load with proof strength, breaking load with tensile.
 *
 * @param stressArea symbol A_s
 * @param strength symbol S_p or R_m
 * @returns symbol F_p or F_m
 * @throws VALUE_OUTSIDE
 * @source ISO 898-1, proof loads
 * @example boltLoad({ stressArea: squareMetre(84.3e-6), strength: megapascal(580) })   // 48.9 kN
 */
export function boltLoad({
  stressArea,
  strength,
}: {
  readonly stressArea: SquareMetre
  readonly strength: Pascal
}): Newton {
  requireAboveZero('the stress area', stressArea, 'm²')
  requireAboveZero('the strength', strength, 'Pa')
  return newton(stressArea * strength)
}
