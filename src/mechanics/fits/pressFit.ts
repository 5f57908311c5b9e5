import { Problem } from '../../problem/problem.ts'
import { megapascal, metre, newton, newtonMetre, pascal } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { isUnknown, type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'
import { type FrictionState, frictionOf } from './friction.ts'
import { interferencePressure } from './interferencePressure.ts'
import { thickCylinderStress } from './thickCylinderStress.ts'

export interface PressFitInput {
  /** Symbol d. */
  readonly jointDiameter: Metre
  /** Symbol L: the length that grips, without chamfers and grooves. */
  readonly length: Metre
  /** Symbol D_o: outside of the hub where its wall is thinnest. */
  readonly hubOutside: Known<Metre>
  /** Symbol d_i; left out for a solid shaft. */
  readonly shaftBore?: Known<Metre>
  /** Symbol δ, on the diameter, after roughness: `interference(...).effective`. */
  readonly interference: Known<Metre>
  readonly hub: Material | MaterialName | (string & {})
  readonly shaft: Material | MaterialName | (string & {})
  /** Symbol μ, or the state of the surfaces; left out it is not known. */
  readonly friction?: Known<number> | FrictionState
}

type Rule =
  | 'von Mises stress against yield'
  | 'greatest tension against tensile strength'
  | 'von Mises stress against tensile strength'

/** How hard one part is worked. */
export interface PartStress {
  /** Hoop stress where it is greatest; tension above zero. */
  readonly hoop: Range<Pascal>
  /** What is held against the strength: von Mises stress, or the greatest tension of a brittle part. */
  readonly judged: Range<Pascal>
  readonly strength: Range<Pascal>
  readonly rule: Rule
  /** Share of the strength that is used. */
  readonly use: Range<number>
  readonly staysSound: Answer
  /** It may be worked harder than the stop load would let it be. */
  readonly isNearLimit: boolean
}

export interface PressFit {
  readonly pressure: Range<Pascal>
  readonly hub: PartStress
  readonly shaft: PartStress
  /** Load at full depth while pressing on. */
  readonly pressLoad: Range<Newton>
  /** Load that starts it off again when clean; rust and fretting hold harder. */
  readonly pushOffLoad: Range<Newton>
  readonly slipTorque: Range<NewtonMetre>
  /** The press load at which to stop, whatever the part says. */
  readonly stop: {
    readonly load: Newton
    readonly because: string
    readonly isInsideExpected: boolean
    readonly isBelowLeast: boolean
  }
  readonly cautions: readonly string[]
  readonly source: string
}

// What is kept in hand before the stop load, and how far past the expected load one may go. Our choice, no source.
const HELD_BACK_DUCTILE = 1.25
const HELD_BACK_BRITTLE = 2
const PAST_EXPECTED = 1.25

// Hoop tension of a hardened bearing ring past which it tires early; NASA work on interference fits and life (Zaretsky), from memory.
const HARDENED_RING_TENSION = megapascal(172)

const CAUTIONS = [
  'Shield the work; stand aside, never with the face level with the joint; nobody else near. 29 CFR 1910.212.',
  'The press gauge must work. No makeshift props. Support the casting close to the bore; load only the ring being fitted.',
  'All loads are at full depth: half way in, expect half of them and stop at half.',
  'A load that jumps before the shoulder, or a part that goes in crooked: stop, take it out, look.',
  "The maker's figures for this machine come first.",
]

/**
 * A press fit from measured sizes: how hard it grips, whether hub and shaft stand it, how much the press will need, and
 * at which load to stop. Elastic; long cylinders of two materials; shaft solid or hollow. Brittle iron is judged by its
 * greatest tension against tensile strength (with the hoop tension greater than the pressure, modified Mohr gives the
 * same), everything else by von Mises stress against yield, an unknown material by both and the worse counts. What is
 * not known is taken at its worst.
 *
 * @param jointDiameter symbol d
 * @param length symbol L
 * @param hubOutside symbol D_o
 * @param shaftBore symbol d_i
 * @param interference symbol δ
 * @param hub, shaft materials by name or in full
 * @param friction symbol μ
 * @returns pressure, stresses, loads, each low and high, the load at which to stop, and cautions
 * @throws FIT_WITHOUT_INTERFERENCE, HUB_INSIDE_SHAFT, VALUE_OUTSIDE
 * @source Norton, Machine Design, 4th ed., section 10.12 (pressure, force, torque); Shigley, 9th ed., eq. 5-32a (modified Mohr)
 * @example pressFit({ jointDiameter: mm(50), length: mm(40), hubOutside: mm(80), interference: micrometre(40), hub: 'mild steel', shaft: 'steel', friction: 0.15 }).stop.load   // 51.8 kN
 */
export function pressFit(input: PressFitInput): PressFit {
  const { jointDiameter, length, hubOutside } = input
  const shaftBore = input.shaftBore ?? metre(0)
  const friction = frictionRange(input.friction)
  requireAboveZero('the joint diameter', jointDiameter, 'm')
  requireAboveZero('the gripping length', length, 'm')
  requireWithin('the friction', friction, { low: 0.01, high: 1, unit: '' })
  const measured = rangeOf(input.interference)
  if (!(measured.high > 0)) {
    throw new Problem('FIT_WITHOUT_INTERFERENCE', { interference: shown(measured.high, 'm') })
  }
  const [hub, shaft] = [materialOf(input.hub), materialOf(input.shaft)]
  const interference = { low: metre(Math.max(0, measured.low)), high: measured.high }

  const pressure = spread(
    {
      hubOutside,
      shaftBore,
      interference,
      hubModulus: hub.youngsModulus,
      hubPoisson: hub.poissonRatio,
      shaftModulus: shaft.youngsModulus,
      shaftPoisson: shaft.poissonRatio,
    },
    (exact) =>
      interferencePressure({
        jointDiameter,
        hubOutside: exact.hubOutside,
        shaftBore: exact.shaftBore,
        interference: exact.interference,
        hub: { youngsModulus: exact.hubModulus, poissonRatio: exact.hubPoisson },
        shaft: { youngsModulus: exact.shaftModulus, poissonRatio: exact.shaftPoisson },
      }),
  )
  const hubJudged = judgements({ material: hub, at: hubOutside }, (exact) => hubStress(jointDiameter, exact))
  const shaftJudged = judgements({ material: shaft, at: shaftBore }, (exact) => shaftStress(jointDiameter, exact))
  const area = Math.PI * jointDiameter * length
  const pressLoad = spread({ pressure, friction }, (exact) => newton(area * exact.pressure * exact.friction))
  const hubPart = partStress(pressure, hubJudged)
  const shaftPart = partStress(pressure, shaftJudged)
  const stop = stopLoad({
    pressLoad,
    soundLoad: Math.min(...[...hubJudged, ...shaftJudged].map(soundPressure)) * area * friction.low,
  })

  return {
    pressure,
    hub: hubPart,
    shaft: shaftPart,
    pressLoad,
    pushOffLoad: pressLoad,
    slipTorque: spread({ pressLoad }, (exact) => newtonMetre((exact.pressLoad * jointDiameter) / 2)),
    stop,
    cautions: [...warnings({ measured, hub, hubPart, shaftPart, stop }), ...CAUTIONS],
    source: `thick cylinders after Lamé; hub: ${hub.source}; shaft: ${shaft.source}`,
  }
}

function frictionRange(friction: PressFitInput['friction']): Range<number> {
  if (friction === undefined || typeof friction === 'string') return frictionOf(friction ?? 'unknown').coefficient
  return rangeOf(friction)
}

/** One way to hold a part against its strength. */
interface Judgement {
  readonly rule: Rule
  readonly strength: Range<Pascal>
  /** How many times the strength is kept above the stress at the stop load. */
  readonly inHand: number
  /** For each unit of pressure: hoop stress where greatest, and what is held against the strength. */
  readonly hoop: Range<number>
  readonly judged: Range<number>
}

interface Stress {
  readonly hoop: number
  readonly radial: number
}

const vonMises = ({ hoop, radial }: Stress): number => Math.sqrt(hoop ** 2 - hoop * radial + radial ** 2)

/** A brittle part and a tough one are judged by their own rule, an unknown one by both. */
function judgements(
  { material, at }: { readonly material: Material; readonly at: Known<Metre> },
  stress: (exact: Metre) => Stress,
): readonly Judgement[] {
  const hoop = spread({ at }, (exact) => stress(exact.at).hoop)
  const mises = spread({ at }, (exact) => vonMises(stress(exact.at)))
  const tough: Judgement = {
    rule: 'von Mises stress against yield',
    strength: material.yieldStrength,
    inHand: HELD_BACK_DUCTILE,
    hoop,
    judged: mises,
  }
  // A brittle part that is only squeezed is held against its tensile strength too: iron stands more, and that is the safe side.
  const brittle: Judgement = {
    rule: hoop.high > 0 ? 'greatest tension against tensile strength' : 'von Mises stress against tensile strength',
    strength: material.tensileStrength,
    inHand: HELD_BACK_BRITTLE,
    hoop,
    judged: hoop.high > 0 ? hoop : mises,
  }
  if (isUnknown(material)) return [brittle, tough]
  return [material.brittle ? brittle : tough]
}

function hubStress(jointDiameter: Metre, hubOutside: Metre) {
  return thickCylinderStress({
    innerDiameter: jointDiameter,
    outerDiameter: hubOutside,
    innerPressure: pascal(1),
    outerPressure: pascal(0),
    at: jointDiameter,
  })
}

/** A hollow shaft is worked hardest at its bore, a solid one everywhere alike. */
function shaftStress(jointDiameter: Metre, shaftBore: Metre) {
  if (shaftBore === 0) return { hoop: -1, radial: -1 }
  return thickCylinderStress({
    innerDiameter: shaftBore,
    outerDiameter: jointDiameter,
    innerPressure: pascal(0),
    outerPressure: pascal(1),
    at: shaftBore,
  })
}

function soundPressure({ strength, inHand, judged }: Judgement): number {
  return strength.low / inHand / judged.high
}

/** By the rule that asks most of the part; between the least and the most that any rule makes of it. */
function partStress(pressure: Range<Pascal>, all: readonly Judgement[]): PartStress {
  const each = all.map(({ rule, strength, inHand, ...factors }) => {
    const times = (factor: Range<number>) =>
      spread({ pressure, factor }, (exact) => pascal(exact.pressure * exact.factor))
    const judged = times(factors.judged)
    const use = { low: judged.low / strength.high, high: judged.high / strength.low }
    return { hoop: times(factors.hoop), judged, strength, rule, use, inHand }
  })
  const { inHand, ...worst } = each.reduce((a, b) => (b.use.high > a.use.high ? b : a))
  const use = { low: Math.min(...each.map((one) => one.use.low)), high: worst.use.high }
  return { ...worst, use, staysSound: isAtMost(use, 1), isNearLimit: each.some((one) => one.use.high * one.inHand > 1) }
}

function stopLoad({ pressLoad, soundLoad }: { readonly pressLoad: Range<Newton>; readonly soundLoad: number }) {
  const past = PAST_EXPECTED * pressLoad.high
  const load = newton(Math.min(soundLoad, past))
  return {
    load,
    because:
      soundLoad < past
        ? 'above it, with the least friction, hub or shaft may be past what it stands (yield with 1.25 in hand, brittle iron with 2; our choice)'
        : 'it is 1.25 times the greatest load that these sizes can need (our choice): something is not as measured',
    isInsideExpected: load < pressLoad.high,
    isBelowLeast: load < pressLoad.low,
  }
}

function warnings({
  measured,
  hub,
  hubPart,
  shaftPart,
  stop,
}: {
  readonly measured: Range<Metre>
  readonly hub: Material
  readonly hubPart: PartStress
  readonly shaftPart: PartStress
  readonly stop: PressFit['stop']
}): string[] {
  const said: string[] = []
  for (const [name, { staysSound, isNearLimit, rule, use }] of [
    ['hub', hubPart],
    ['shaft', shaftPart],
  ] as const) {
    if (staysSound === 'no') said.push(`The ${name} does not stand this fit (${rule}). Do not press it.`)
    if (staysSound === 'not known') said.push(`The ${name} may not stand this fit (${rule}): find out its material.`)
    if (staysSound === 'yes' && isNearLimit) {
      said.push(
        `The ${name} stands it, but up to ${Math.round(use.high * 100)} % of its strength is used, more than the stop load allows: find out how strong it is, or take less interference.`,
      )
    }
  }
  if (hub.brittle) said.push('A brittle hub cracks without warning: warm it and drop it on rather than press it.')
  if (hub.name === 'bearing steel' && hubPart.hoop.high > HARDENED_RING_TENSION) {
    said.push(
      'A hardened ring stretched beyond about 170 MPa (25 ksi) tires early and may crack from a nick, long before it yields: take the fit that its maker gives.',
    )
  }
  if (!(measured.low > 0)) said.push('At the loosest sizes nothing grips: measure closer.')
  if (stop.isBelowLeast) {
    said.push(
      'The stop load comes before the part is home, even at the loosest sizes: do not press it. Fit it warm, or take less interference.',
    )
  } else if (stop.isInsideExpected) {
    said.push('The stop load may come before the part is home. Then take it off, find the friction, or fit it warm.')
  }
  return said
}
