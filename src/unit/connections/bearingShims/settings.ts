// The pack for a wanted float or preload, from the loop of sizes and the shims that lie in the shop.
import { type LoopSize, type SettingShim, settingShim } from '../../../mechanics/bearings/settingShim.ts'
import type { Range } from '../../../mechanics/range.ts'
import { chooseShims, type ShimPack } from '../../../mechanics/stackup/chooseShims.ts'
import { metre } from '../../../quantity/constructors.ts'
import type { Metre } from '../../../quantity/quantity.ts'
import type { Unit } from '../../model/unit.ts'
import { type FoundSize, placeSize, restsOn } from '../features.ts'
import { figure, printIn, tried } from '../figure.ts'
import type { Figure, Kind, ShopFacts } from '../kind.ts'
import type { BearingShimsGiven } from './given.ts'
import { words } from './words.ts'

export const settings: Kind<BearingShimsGiven>['settings'] = (connection, given, unit, shop) => {
  const missing: string[] = []
  const cautions = [...words.cautions(connection, given)]
  const problem = problemOf(given, unit, missing)
  const setting = problem && tried(missing, () => settingShim(problem))
  const rests = problem && restsOn(problem.sizes, shop)
  const pack = setting && packOf(connection.id, setting, given, shop, missing)
  if (setting) cautions.push(...setting.cautions)
  return [
    {
      connection: connection.id,
      kind: 'bearing shims',
      title: `${connection.id}: shims under ${given.under}`,
      figures:
        problem && setting && rests
          ? [...loopFigures(setting, rests), ...packFigures({ problem, pack: pack?.pack, given, rests, missing })]
          : [],
      says: pack ? [packSays(pack, unit)] : [],
      missing,
      cautions: [...new Set(cautions)],
    },
  ]
}

type Rests = Pick<Figure, 'standing' | 'basis'>

interface LoopProblem {
  readonly loop: readonly LoopSize[]
  readonly shimSign: 1 | -1
  readonly target: Range<Metre>
  readonly sizes: readonly FoundSize[]
}

/** What has to be solved, or nothing with the gaps told: neither sign nor wanted float is ever guessed. */
function problemOf(given: BearingShimsGiven, unit: Unit, missing: string[]): LoopProblem | undefined {
  const target = targetOf(given)
  if (!target) missing.push('Give `float` or `preload`, with its `source`.')
  if (!given.loop)
    missing.push('Give `loop`: the faces from one contact round to the other, or the measured gap alone.')
  if (given.loop && given.loop.shims === undefined) {
    missing.push(
      'Put `shims` into the loop: + where a thicker pack opens the float, - where it closes it. Take it from the drawing; it is not guessed.',
    )
  }
  const shimSign = given.loop?.shims
  const terms = (given.loop?.terms ?? []).map(({ sign, ...place }) => ({
    name: `${place.part}.${place.feature}`,
    sign,
    size: placeSize(unit, place),
  }))
  const unmeasured = terms.filter(({ size }) => !size.known)
  missing.push(...unmeasured.map(({ name }) => `Measure ${name}.`))
  if (!target || shimSign === undefined || terms.length === 0 || unmeasured.length > 0) return undefined
  const loop = terms.flatMap(({ name, sign, size }) => (size.known ? [{ name, sign, size: size.known }] : []))
  return { loop, shimSign, target, sizes: terms.map(({ size }) => size) }
}

/** The wanted float; preload is float below zero. */
function targetOf({ float, preload }: BearingShimsGiven): Range<Metre> | undefined {
  if (float) return { low: float.low, high: float.high }
  return preload && { low: metre(-preload.high), high: metre(-preload.low) }
}

function loopFigures(setting: SettingShim, rests: Rests): Figure[] {
  const { source } = setting
  return [
    figure({ label: 'float without shims', dimension: 'length', range: setting.loop, ...rests, source }),
    figure({
      label: setting.sure ? 'pack wanted' : 'pack that may do',
      dimension: 'length',
      range: setting.sure ?? setting.possible,
      ...rests,
      source,
      ...(!setting.sure && {
        note: 'The readings are coarser than what is wanted: measure closer, or set up with a trial pack.',
      }),
    }),
  ]
}

/** The best pack of the shims for this place and of those that are for no place. */
function packOf(id: string, setting: SettingShim, given: BearingShimsGiven, { shims }: ShopFacts, missing: string[]) {
  const here = [id, ...(given.shims ?? [])]
  const stock = shims
    .filter((shim) => shim.for === undefined || here.includes(shim.for))
    .map(({ id: name, thickness }) => ({ id: name, thickness: metre((thickness.low + thickness.high) / 2) }))
  if (stock.length === 0) {
    missing.push('Measure the shims in stock: for the pack.')
    return undefined
  }
  return tried(missing, () => chooseShims({ stock, target: setting.sure ?? setting.possible }))
}

function packFigures(of: {
  problem: LoopProblem
  pack: ShimPack | undefined
  given: BearingShimsGiven
  rests: Rests
  missing: string[]
}): Figure[] {
  const { problem, pack, given, rests, missing } = of
  if (!pack) return []
  const loop = [...problem.loop, { name: 'pack', sign: problem.shimSign, size: pack.total }]
  const closed = tried(missing, () => settingShim({ ...problem, loop }))
  if (!closed) return []
  return [
    figure({
      label: 'float with this pack (below zero: preload)',
      dimension: 'length',
      range: closed.loop,
      ...rests,
      source: `${closed.source}, the measured pack among them`,
      limit: { ...problem.target, source: given.source ?? 'no source' },
    }),
  ]
}

function packSays({ pack, nearest }: ReturnType<typeof chooseShims>, unit: Unit): string {
  const print = ({ shims, total }: ShimPack) =>
    `${shims.map(({ id }) => id).join(' + ') || 'no shim'} = ${printIn(unit, { low: total, high: total }, 'length')}`
  return pack
    ? `Fit pack ${print(pack)}.`
    : `No pack of the shims in stock reaches it; nearest: ${nearest.map(print).join('; ')}.`
}
