import { Problem } from '../../problem/problem.ts'
import { newtonMetre } from '../../quantity/constructors.ts'
import { type NewtonMetre, quantity, type RadianPerSecond } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { requireTeeth } from './involuteGear.ts'

/** One pair of the train, in the order of the drive. */
export interface Mesh {
  /** Of a worm: its starts. */
  readonly driver: number
  readonly driven: number
  /** Left out: external, on parallel shafts. */
  readonly kind?: MeshKind
}

export type MeshKind = 'external' | 'internal' | 'bevel' | 'worm' | 'chain'

/** Turns the direction round (-1), keeps it (1), or has no common axis to compare (0); and what it passes on. */
const KINDS: Readonly<Record<MeshKind, { readonly turn: 1 | -1 | 0; readonly passes: Range<number> }>> = {
  external: { turn: -1, passes: { low: 0.94, high: 0.99 } },
  internal: { turn: 1, passes: { low: 0.94, high: 0.99 } },
  bevel: { turn: 0, passes: { low: 0.92, high: 0.98 } },
  worm: { turn: 0, passes: { low: 0.3, high: 0.9 } },
  chain: { turn: 1, passes: { low: 0.92, high: 0.98 } },
}

export interface TrainResult {
  /** Turns of the first shaft for one of the last. */
  readonly ratio: number
  readonly direction: 'same' | 'opposite' | 'not known'
  /** Of the last shaft; below zero: the other way round than the first, where both are parallel. */
  readonly speed: RadianPerSecond
  /** In the last shaft. */
  readonly torque?: Range<NewtonMetre>
  /** Whether idlers, losses or shafts that cross leave something to look at. */
  readonly cautions: readonly string[]
}

/**
 * A train of gears from the first shaft to the last: ratio, direction, speed, and torque with its losses. An idler is a
 * gear that is driven and drives with the same teeth: name it twice.
 *
 * @param meshes in the order of the drive; teeth, of a worm its starts
 * @param speed symbol ω, of the first shaft
 * @param torque symbol T, in the first shaft, either way round; left out: no torque is worked
 * @param efficiency of the whole train; left out 0.94 to 0.99 for each spur or helical mesh with its bearings, 0.92 to
 *   0.98 bevel or chain, 0.3 to 0.9 worm (common practice, no source)
 * @returns ratio, speed and torque of the last shaft
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE, RANGE_TURNED
 * @source kinematics
 * @example gearTrain({ meshes: [{ driver: 20, driven: 50 }, { driver: 25, driven: 75 }, { driver: 26, driven: 65 }], speed: rpm(975) }).ratio   // 18.75
 */
export function gearTrain({
  meshes,
  speed,
  torque,
  efficiency,
}: {
  readonly meshes: readonly Mesh[]
  readonly speed: RadianPerSecond
  readonly torque?: Known<NewtonMetre>
  readonly efficiency?: Known<number>
}): TrainResult {
  const basic = trainRatio(meshes)
  const ratio = Math.abs(basic)
  const kinds = meshes.map(({ kind = 'external' }) => KINDS[kind])
  const crosses = kinds.some(({ turn }) => turn === 0)
  const passed =
    efficiency === undefined
      ? kinds.reduce((all, { passes }) => ({ low: all.low * passes.low, high: all.high * passes.high }), {
          low: 1,
          high: 1,
        })
      : rangeOf(efficiency)
  requireWithin('the efficiency', passed, { low: 0, high: 1, unit: '' })
  const cautions: string[] = []
  if (crosses)
    cautions.push('Bevel and worm: the direction depends on the hand and the side; turn it by hand and look.')
  if (torque !== undefined && efficiency === undefined) {
    cautions.push('Losses by common practice, cold oil and preload not counted.')
  }
  return {
    ratio,
    direction: crosses ? 'not known' : basic > 0 ? 'same' : 'opposite',
    speed: quantity(speed / (crosses ? ratio : basic), 'rad/s'),
    ...(torque === undefined
      ? {}
      : { torque: spread({ torque, passed }, (exact) => newtonMetre(exact.torque * ratio * exact.passed)) }),
    cautions,
  }
}

/**
 * Ratio of a train with its sign: turns of the first shaft for one of the last, below zero where they turn against each
 * other. Of a planetary set with the carrier held: the basic ratio that willis takes. Bevel and worm count as external:
 * between two coaxial bevel wheels a planet turns the direction round once, so name one mesh from wheel to wheel.
 *
 * @param meshes in the order of the drive
 * @returns signed ratio
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source kinematics
 * @example trainRatio([{ driver: 20, driven: 30 }, { driver: 30, driven: 80, kind: 'internal' }])   // -4
 */
export function trainRatio(meshes: readonly Mesh[]): number {
  requireWithin('the number of meshes', meshes.length, { low: 1, high: 50, unit: '' })
  return meshes.reduce((ratio, { driver, driven, kind = 'external' }, index) => {
    if (!Object.hasOwn(KINDS, kind)) {
      const expected = `one of ${Object.keys(KINDS).join(', ')}`
      throw new Problem('VALUE_OUTSIDE', { what: `mesh ${index + 1}`, received: `'${kind}'`, expected })
    }
    requireTeeth(`The driver of mesh ${index + 1}`, driver, kind === 'worm' ? 1 : 4)
    requireTeeth(`The driven gear of mesh ${index + 1}`, driven)
    return (ratio * (KINDS[kind].turn || -1) * driven) / driver
  }, 1)
}
