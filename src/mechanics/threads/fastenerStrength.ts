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
  readonly grade: string
  readonly from: Metre
  readonly upTo: Metre
  readonly proof: Pascal
  readonly tensile: Pascal
}

const METRIC = 'ISO 898-1, property classes'
const INCH = 'SAE J429, grades; grade 2, 5 and 8 read in bolt reference tables, grade 1 and the size steps from memory'

const metric = (grade: string, from: number, upTo: number, proof: number, tensile: number): GradeRow => ({
  grade,
  from: mm(from),
  upTo: mm(upTo),
  proof: megapascal(proof),
  tensile: megapascal(tensile),
})
const sae = (grade: string, from: number, upTo: number, proof: number, tensile: number): GradeRow => ({
  grade,
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

/**
 * How strong a bolt is, by the marking on its head. A marking that is missing, or that has no row at this size, is
 * taken as the weakest grade; then the answer says so.
 *
 * @param grade property class as '8.8', or inch grade as 'SAE 5'
 * @param nominalDiameter symbol d
 * @returns proof and tensile strength
 * @throws VALUE_OUTSIDE
 * @source ISO 898-1 (classes 4.6 to 12.9, M1.6 to M39); SAE J429 (grades 1, 2, 5, 8, 1/4 to 1 1/2 in)
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
  const row = GRADES.find((candidate) => candidate.grade === wanted && isNear(candidate))
  if (row) {
    const { proof, tensile } = row
    return { grade: wanted, isKnown: true, proof, tensile, source: wanted.startsWith('SAE') ? INCH : METRIC }
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
