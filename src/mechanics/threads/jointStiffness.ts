import { newtonPerMetre, pascal } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonPerMetre, Pascal, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

/**
 * How stiff a bolt is between head and nut: plain shank and thread one after the other.
 *
 * @param shankArea symbol A_d
 * @param stressArea symbol A_t
 * @param shankLength symbol l_d, plain shank within the grip, from 0
 * @param threadLength symbol l_t, thread within the grip
 * @param modulus symbol E
 * @returns symbol k_b
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eq. 8-17
 * @example boltStiffness({ shankArea: squareMetre(113.1e-6), stressArea: squareMetre(84.3e-6), shankLength: mm(20), threadLength: mm(20), modulus: megapascal(207000) }) / 1e6   // 499.9
 */
export function boltStiffness({
  shankArea,
  stressArea,
  shankLength,
  threadLength,
  modulus,
}: {
  readonly shankArea: SquareMetre
  readonly stressArea: SquareMetre
  readonly shankLength: Metre
  readonly threadLength: Metre
  readonly modulus: Pascal
}): NewtonPerMetre {
  requireAboveZero('the shank area', shankArea, 'm²')
  requireAboveZero('the stress area', stressArea, 'm²')
  requireAboveZero('the modulus', modulus, 'Pa')
  requireWithin('the plain shank in the grip', shankLength, { low: 0, high: 5, unit: 'm' })
  requireWithin('the thread in the grip', threadLength, { low: 0, high: 5, unit: 'm' })
  requireAboveZero('the grip', shankLength + threadLength, 'm')
  return newtonPerMetre((shankArea * stressArea * modulus) / (shankArea * threadLength + stressArea * shankLength))
}

/**
 * How stiff the clamped parts of one material are round a bolt: a pair of 30° frustums under a head 1.5 d wide. A wide
 * gasket is put in afterwards with stiffnessWith; a boss narrower than the frustum is softer than this.
 *
 * @param nominalDiameter symbol d
 * @param grip symbol l
 * @param modulus symbol E
 * @returns symbol k_m
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eq. 8-22
 * @example memberStiffness({ nominalDiameter: inch(0.625), grip: inch(1.5), modulus: psi(14e6) }) / 1e9   // 1.568
 */
export function memberStiffness({
  nominalDiameter,
  grip,
  modulus,
}: {
  readonly nominalDiameter: Metre
  readonly grip: Metre
  readonly modulus: Pascal
}): NewtonPerMetre {
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  requireAboveZero('the grip', grip, 'm')
  requireAboveZero('the modulus', modulus, 'Pa')
  const cone = 0.5774 * grip
  const opening = (cone + 0.5 * nominalDiameter) / (cone + 2.5 * nominalDiameter)
  return newtonPerMetre((0.5774 * Math.PI * modulus * nominalDiameter) / (2 * Math.log(5 * opening)))
}

/** Constants A and B of the finite-element fit by Wileman, Choudhury and Green. */
const FITTED = {
  steel: [0.78715, 0.62873],
  aluminium: [0.7967, 0.63816],
  copper: [0.79568, 0.63553],
  'grey iron': [0.77871, 0.61616],
  other: [0.78952, 0.62914],
} as const

/**
 * The same by a fit to finite elements: a second opinion on memberStiffness. Parts of one material, no gasket.
 *
 * @param nominalDiameter symbol d
 * @param grip symbol l
 * @param modulus symbol E
 * @param material steel, aluminium, copper or grey iron; anything else takes the general constants
 * @returns symbol k_m
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eq. 8-23 and Table 8-8 (grey iron read, the rest from memory)
 * @example memberStiffnessFitted({ nominalDiameter: inch(0.625), grip: inch(1.5), modulus: psi(14e6), material: 'grey iron' }) / 1e9   // 1.543
 */
export function memberStiffnessFitted({
  nominalDiameter,
  grip,
  modulus,
  material,
}: {
  readonly nominalDiameter: Metre
  readonly grip: Metre
  readonly modulus: Pascal
  readonly material: keyof typeof FITTED | (string & {})
}): NewtonPerMetre {
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  requireAboveZero('the grip', grip, 'm')
  requireAboveZero('the modulus', modulus, 'Pa')
  const [a, b] = Object.hasOwn(FITTED, material) ? FITTED[material as keyof typeof FITTED] : FITTED.other
  return newtonPerMetre(modulus * nominalDiameter * a * Math.exp((b * nominalDiameter) / grip))
}

/**
 * Stiffness of the clamped parts with a gasket between them: springs one behind the other; a soft gasket decides it.
 *
 * @param members symbol k_m without the gasket
 * @param gasketArea area of gasket that one bolt squeezes
 * @param gasketThickness squeezed
 * @param gasketModulus symbol E_g
 * @returns symbol k of all
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., section 8-5 (members in series)
 * @example stiffnessWith({ members: boltStiffness({ shankArea: squareMetre(1e-4), stressArea: squareMetre(1e-4), shankLength: mm(0), threadLength: mm(20), modulus: megapascal(200000) }), gasketArea: squareMetre(1e-3), gasketThickness: mm(1), gasketModulus: megapascal(1000) }) / 1e9   // 0.5
 */
export function stiffnessWith({
  members,
  gasketArea,
  gasketThickness,
  gasketModulus,
}: {
  readonly members: NewtonPerMetre
  readonly gasketArea: SquareMetre
  readonly gasketThickness: Metre
  readonly gasketModulus: Pascal
}): NewtonPerMetre {
  requireAboveZero('the stiffness of the parts', members, '')
  requireAboveZero('the gasket area', gasketArea, 'm²')
  requireAboveZero('the gasket thickness', gasketThickness, 'm')
  requireAboveZero('the modulus of the gasket', gasketModulus, 'Pa')
  return newtonPerMetre(1 / (1 / members + gasketThickness / (gasketArea * gasketModulus)))
}

/**
 * Share of a working load that the bolt takes on top of its preload; the rest comes off the clamped parts.
 *
 * @param bolt symbol k_b
 * @param members symbol k_m
 * @returns symbol C = k_b / (k_b + k_m)
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., section 8-7
 * @example boltShare({ bolt: 1e8, members: 3e8 })   // 0.25
 */
export function boltShare({
  bolt,
  members,
}: {
  readonly bolt: NewtonPerMetre
  readonly members: NewtonPerMetre
}): number {
  requireAboveZero('the stiffness of the bolt', bolt, '')
  requireAboveZero('the stiffness of the parts', members, '')
  return bolt / (bolt + members)
}

/**
 * Pressure on a gasket and whether the bolts stand close enough for it to be even: not closer than 3 nor farther than 6
 * diameters apart round the circle.
 *
 * @param clamp load of one bolt that is left on the gasket
 * @param bolts symbol N
 * @param gasketArea symbol A_g, the whole gasket
 * @param boltCircle symbol D_b
 * @param nominalDiameter symbol d
 * @returns symbol p, and the spacing in bolt diameters
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eqs. 8-33 and 8-34
 * @example gasketPressure({ clamp: newton(10000), bolts: 8, gasketArea: squareMetre(0.01), boltCircle: mm(200), nominalDiameter: mm(12) }).pressure   // 8 MPa
 */
export function gasketPressure({
  clamp,
  bolts,
  gasketArea,
  boltCircle,
  nominalDiameter,
}: {
  readonly clamp: Newton
  readonly bolts: number
  readonly gasketArea: SquareMetre
  readonly boltCircle: Metre
  readonly nominalDiameter: Metre
}): { readonly pressure: Pascal; readonly spacing: number; readonly isEven: boolean } {
  requireWithin('the clamp load', clamp, { low: 0, high: 1e8, unit: 'N' })
  requireWithin('the number of bolts', bolts, { low: 2, high: 500, unit: '' })
  requireAboveZero('the gasket area', gasketArea, 'm²')
  requireAboveZero('the bolt circle', boltCircle, 'm')
  requireAboveZero('the nominal diameter', nominalDiameter, 'm')
  const spacing = (Math.PI * boltCircle) / (bolts * nominalDiameter)
  return { pressure: pascal((clamp * bolts) / gasketArea), spacing, isEven: spacing >= 3 && spacing <= 6 }
}
