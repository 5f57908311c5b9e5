import { clip } from '../../quantity/clip.ts'
import { inch, megapascal, mm, newton, pascal, psi } from '../../quantity/constructors.ts'
import type { Metre, Newton, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, shown } from '../limits.ts'

export interface FastenerStrength {
  /** The grade that the numbers belong to. */
  readonly grade: string
  /** False when the grade on the head was missing or not held here and the weakest of all stands in. */
  readonly isKnown: boolean
  /** Symbol S_p: a bolt comes back from it unstretched. */
  readonly proof: Pascal
  /** Symbol R_m, least. */
  readonly tensile: Pascal
  /** What stands in for a grade that is not known, and how to get a better answer; empty where there is nothing to say. */
  readonly cautions: readonly string[]
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
const IRON =
  'wrought iron: proof four fifths of 20 ksi, where a bar of soft iron had begun to stretch (tests at Watertown Arsenal, 1900, a page read), tensile strength 34 ksi (a data page read); no standard'
const OLD = 'old iron without a mark: four fifths of the least yield that handbooks give, no standard; from memory'
const HARDNESS =
  'steel by its hardness: tensile 3.4 MPa for each Brinell (Shigley, 9th ed., eq. 2-21, from memory) less a tenth, proof 0.4 of that; our choice on the safe side'
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
  metric('wrought iron', 1.5, 80, 110, 234, IRON),
  metric('old mild steel', 1.5, 80, 160, 340, OLD),
]

const ALL = [...GRADES, ...NAMED]
const WEAKEST = ALL.reduce((a, b) => (b.proof < a.proof ? b : a))
/** What people write where there is nothing on the head. */
const NO_MARK = ['', '?', 'nomarking', 'nomark', 'none', 'unmarked', 'nottold', 'unknown']
/** Softer it may be wrought iron, of whose strength hardness tells nothing; harder it may be hard at the skin alone. */
const HARDNESS_TELLS = { from: 150, upTo: 350 }

/** The same mark however it is written: SAE 5, sae5, Grade 5. */
const same = (mark: string) =>
  mark
    .toLowerCase()
    .replace(/^gr(ade|\.)?\s*(?=\d)/, 'sae')
    .replace(/[\s_-]+/g, '')

/**
 * How strong a bolt is, by the marking on its head. A marking that is missing, or that has no row at this size, is taken
 * as the weakest iron held here, which is wrought iron: unmarked old bolts may be of it. The answer says so. Steel
 * without a mark may be told by its Brinell hardness, 150 to 350.
 *
 * @param grade property class as '8.8', inch grade as 'SAE 5', stainless as 'A2-70', British letter as 'BS R', hardness as '180 HB', or wrought iron, old mild steel
 * @param nominalDiameter symbol d
 * @returns proof and tensile strength
 * @throws VALUE_OUTSIDE
 * @source ISO 898-1 (classes 4.6 to 12.9, M1.6 to M39); SAE J429 (grades 1, 2, 5, 8, 1/4 to 1 1/2 in); ISO 3506-1 (A, C, F classes, from memory); BS 1083 letters R, S, T, V, X (from memory); the rest by its own source line
 * @example fastenerStrength({ grade: '8.8', nominalDiameter: mm(20) }).proof   // 600 MPa
 * @example fastenerStrength({ grade: 'no marking', nominalDiameter: mm(20) }).grade   // 'wrought iron'
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
  const named = ALL.filter((row) => same(row.grade) === same(grade))
  const row = named.find(isNear)
  if (row) {
    const { proof, tensile, source } = row
    return { grade: row.grade, isKnown: true, proof, tensile, cautions: [], source }
  }
  const hardness = brinell(grade)
  if (hardness !== undefined && hardness >= HARDNESS_TELLS.from && hardness <= HARDNESS_TELLS.upTo) {
    const tensile = megapascal(0.9 * 3.4 * hardness)
    return {
      grade: `${hardness} HB`,
      isKnown: true,
      proof: pascal(0.4 * tensile),
      tensile,
      cautions: [
        'Hardness counts where the skin was filed off: a case-hardened or chilled skin tells nothing of the core.',
      ],
      source: HARDNESS,
    }
  }
  const why = whyUnknown({ grade, isNamed: named.length > 0, nominalDiameter, hardness })
  return {
    grade: WEAKEST.grade,
    isKnown: false,
    proof: WEAKEST.proof,
    tensile: WEAKEST.tensile,
    cautions: [
      `${why}: reckoned as ${WEAKEST.grade}, the weakest held here, proof ${shown(WEAKEST.proof, 'Pa')}. Most screws are stronger, and one drawn up no harder than this may come loose.`,
      BETTER,
    ],
    source: `${why}: taken as the weakest, ${WEAKEST.grade}; ${WEAKEST.source}`,
  }
}

const BETTER =
  'For a better answer clean the head and read its mark, or tell what it is: grade=4.6 for mild steel bought today without a mark, "old mild steel", or steel of a measured hardness, as "180 HB".'

function brinell(grade: string): number | undefined {
  const [, before, after] = /^(?:hbw?(\d+)|(\d+)hbw?)$/.exec(same(grade)) ?? []
  const digits = before ?? after
  return digits === undefined ? undefined : Number(digits)
}

function whyUnknown({
  grade,
  isNamed,
  nominalDiameter,
  hardness,
}: {
  readonly grade: string
  readonly isNamed: boolean
  readonly nominalDiameter: Metre
  readonly hardness: number | undefined
}): string {
  if (NO_MARK.includes(same(grade))) return 'The grade is not known'
  const mark = `'${clip(grade.trim())}'`
  if (isNamed) return `${mark} is not held here for a diameter of ${shown(nominalDiameter, 'm')}`
  if (hardness === undefined) return `${mark} is no grade held here`
  return hardness < HARDNESS_TELLS.from
    ? `At ${mark} it may be wrought iron, of whose strength hardness tells nothing`
    : `At ${mark} it may be hard at the skin alone`
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
