// Interference, press load and heat of one fit, from the sizes as they stand: the calculations are those of the mechanics room.
import { chillToDropIn } from '../../../mechanics/fits/chillToDropIn.ts'
import { dropOn } from '../../../mechanics/fits/dropOn.ts'
import { interference } from '../../../mechanics/fits/interference.ts'
import { pressFit } from '../../../mechanics/fits/pressFit.ts'
import { materialOf } from '../../../mechanics/materials.ts'
import type { Range } from '../../../mechanics/range.ts'
import { kelvin, metre } from '../../../quantity/constructors.ts'
import { printQuantity } from '../../../quantity/printQuantity.ts'
import type { Metre, Second } from '../../../quantity/quantity.ts'
import type { Known, PartId, Unit } from '../../model/unit.ts'
import { type FoundSize, placeSize, restsOn, sizeOf, weakest } from '../features.ts'
import { figure, printIn, tried } from '../figure.ts'
import type { Figure, Kind, Setting, ShopFacts } from '../kind.ts'
import type { FitGiven } from './given.ts'
import { pairOf } from './pair.ts'
import { words } from './words.ts'

/** What is being put together while one fit is worked out. */
interface Work {
  readonly given: FitGiven
  readonly unit: Unit
  readonly shop: ShopFacts
  readonly rests: Pick<Figure, 'standing' | 'basis'>
  readonly measured: Range<Metre>
  readonly diameter: Metre
  readonly figures: Figure[]
  readonly says: string[]
  readonly missing: string[]
  readonly cautions: string[]
}

export const settings: Kind<FitGiven>['settings'] = (connection, given, unit, shop) => {
  const [shaft, bore] = [placeSize(unit, given.shaft), placeSize(unit, given.bore)]
  if ((given.fit ?? 'loose') === 'loose' && !shaft.known && !bore.known) return []
  const { mover, other } = pairOf(given, unit)
  const setting = {
    connection: connection.id,
    kind: 'cylindrical fit',
    title: `${given.fit ?? 'Fit'}${given.fit ? ' fit' : ''}: ${mover ?? connection.id}${other ? ` and ${other}` : ''}`,
  }
  const cautions = words.cautions(connection, given)
  if (!shaft.known || !bore.known) {
    return [{ ...setting, figures: [], says: [], missing: unmeasured({ shaft, bore }), cautions }]
  }
  const [inner, outer, missing] = [shaft.known, bore.known, [] as string[]]
  const fit = tried(missing, () => interference({ shaft: inner, bore: outer }))
  if (!fit) return [{ ...setting, figures: [], says: [], missing, cautions }]
  const work: Work = {
    given,
    unit,
    shop,
    rests: restsOn([shaft, bore], shop),
    measured: fit.measured,
    diameter: metre((outer.low + outer.high) / 2),
    figures: [],
    says: [],
    missing,
    cautions: [],
  }
  addInterference(work, fit.source)
  if (given.fit !== undefined && given.fit !== 'loose') {
    if (fit.measured.high > 0) {
      addGrip(work)
      if (given.fit === 'hot') addWarming(work)
      if (given.fit === 'cold') addChilling(work)
    } else {
      work.says.push(
        `Loose by ${printIn(unit, turned(fit.measured), 'length')}: nothing grips. Measure again, or look who was here before.`,
      )
    }
  }
  const { figures, says } = work
  const once = { missing: [...new Set(missing)], cautions: work.cautions.length > 0 ? work.cautions : cautions }
  return [{ ...setting, figures, says, ...once } satisfies Setting]
}

const turned = ({ low, high }: Range<Metre>): Range<Metre> => ({ low: metre(-high), high: metre(-low) })

function unmeasured(sizes: { shaft: FoundSize; bore: FoundSize }): string[] {
  return Object.entries(sizes)
    .filter(([, { known }]) => !known)
    .map(([key, { name }]) => (name ? `Measure ${name}.` : `Give \`${key}\` as part.feature, and measure it.`))
}

function addInterference({ given, rests, measured, figures }: Work, source: string): void {
  const { wanted } = given
  figures.push(
    figure({
      label: measured.high <= 0 ? 'interference (below zero: clearance)' : 'interference',
      dimension: 'length',
      range: measured,
      ...rests,
      source,
      ...(wanted && { limit: { low: wanted.low, high: wanted.high, source: given.source ?? 'no source' } }),
    }),
  )
}

/** How hard it grips, what it does to hub and shaft, and what the press needs. */
function addGrip(work: Work): void {
  const { given, unit, shop, figures, missing, diameter } = work
  const pressed = given.fit === 'press'
  const [hubOutside, length, inside] = [given['hub outside'], given.length, given['shaft inside']].map((size) =>
    sizeOf(unit, size),
  )
  if (!hubOutside?.known) missing.push('Give `hub outside`: for the stress in the hub and the press load.')
  if (!length?.known) missing.push('Give `length` of the seat: for the press load.')
  if (!hubOutside?.known || !length?.known) return
  const { inner, outer, standing } = materials(work)
  const at = (seat: Metre) =>
    pressFit({
      jointDiameter: diameter,
      length: seat,
      hubOutside: hubOutside.known as Known<Metre>,
      ...(inside?.known && { shaftBore: inside.known }),
      interference: work.measured,
      hub: outer,
      shaft: inner,
      ...(given.surfaces && { friction: given.surfaces }),
    })
  const both = tried(missing, () => ({
    short: at((length.known as Known<Metre>).low),
    long: at((length.known as Known<Metre>).high),
  }))
  if (!both) return
  const { short, long } = both
  const { source } = long
  const sizes = restsOnAll(work, [hubOutside, length, ...(inside ? [inside] : [])])
  const rests = { ...sizes, standing: weakest([sizes.standing, standing]) }
  figures.push(
    figure({ label: 'pressure in the joint', dimension: 'pressure', range: long.pressure, ...rests, source }),
  )
  for (const [name, part] of [
    ['hub', long.hub],
    ['shaft', long.shaft],
  ] as const) {
    figures.push(
      figure({ label: `hoop stress of the ${name}`, dimension: 'pressure', range: part.hoop, ...rests, source }),
      figure({
        label: `share of its strength that the ${name} uses`,
        dimension: 'number',
        range: part.use,
        ...rests,
        source,
        limit: { high: 1, source: part.rule },
      }),
    )
  }
  if (!pressed) return
  const rating = shop.pressRating_N
  if (rating === undefined) missing.push('Give the rating of the press under `plant`: whether it reaches the load.')
  const stop = short.stop
  const press = rating === undefined ? undefined : { high: rating, source: 'rating of the press' }
  const stopping = { high: stop.load, source: 'the load at which to stop' }
  figures.push(
    figure({
      label: 'press load',
      dimension: 'force',
      range: { low: short.pressLoad.low, high: long.pressLoad.high },
      ...rests,
      source: `${source}; friction ${given.surfaces ?? 'not known: worst both ways'}`,
      limit: press && press.high < stop.load ? press : stopping,
    }),
    figure({
      label: 'stop at this load',
      dimension: 'force',
      range: { low: stop.load, high: stop.load },
      ...rests,
      source: 'our choice; see the note',
      note: `Stop: ${stop.because}.`,
      ...(press && { limit: press }),
    }),
  )
  work.cautions.push(...long.cautions)
}

/** Materials of the inner and the outer part; bearings are of bearing steel, what is not told is taken at its worst. */
function materials({ given, unit, missing }: Work) {
  const of = (part: PartId | undefined, role: string): string => {
    const found = part === undefined ? undefined : unit.parts.get(part)
    const name = found?.material ?? (found?.look === 'bearing' ? 'bearing steel' : undefined)
    if (name === undefined)
      missing.push(`Give \`material\` of ${part ?? `the ${role} part`}: it is taken at its worst.`)
    else if (materialOf(name).name === 'unknown' && name !== 'unknown') {
      missing.push(
        `'${name}' of ${part ?? `the ${role} part`} is no material that is held here: it is taken at its worst.`,
      )
    }
    return name ?? 'unknown'
  }
  const [inner, outer] = [of(given.shaft?.part, 'inner'), of(given.bore?.part, 'outer')]
  // A handbook range of a named material is what such a material usually has.
  const held = [inner, outer].every((name) => materialOf(name).name !== 'unknown')
  return { inner, outer, standing: held ? ('usual' as const) : ('supposed' as const) }
}

function restsOnAll({ given, unit, shop }: Work, more: readonly FoundSize[]): Pick<Figure, 'standing' | 'basis'> {
  return restsOn([placeSize(unit, given.shaft), placeSize(unit, given.bore), ...more], shop)
}

/** The outer part is warmed; where that is not enough within its limit, the inner one is chilled as well. */
function addWarming(work: Work): void {
  const { given, unit, shop, figures, missing, says } = work
  const { inner, outer, standing } = materials(work)
  const rests = { ...work.rests, standing: weakest([work.rests.standing, standing]) }
  if (given['heated part'] === undefined) missing.push('Give `heated part`: its limit is taken at the narrowest.')
  const maker = given['not above']
  const drop = tried(missing, () =>
    dropOn({
      diameter: work.diameter,
      interference: work.measured,
      outer: {
        material: outer,
        kind: given['heated part'] ?? 'unknown',
        ...(maker && { notAbove: maker.low }),
      },
      inner: { material: inner, kind: 'unknown' },
      room: kelvin(shop.roomTemperature_K),
      ...(given.slip && { slip: given.slip.high }),
    }),
  )
  if (!drop) return
  const { source, hottest } = drop
  const own =
    maker && hottest.temperature === maker.low ? (given.source ?? 'told in the unit file, no source') : undefined
  const limit = { high: hottest.temperature, source: own ?? hottest.source }
  const { outerAt, outerLongest, slip } = drop.warm
  const needs = drop.warmingAloneNeeds
  const note = [
    ...(needs > outerAt + 1e-9
      ? [`Warming alone would need ${printIn(unit, { low: needs, high: needs }, 'temperature')}.`]
      : []),
    ...(outerLongest === undefined ? [] : [`At most ${hoursOf(outerLongest)} at that heat.`]),
  ].join(' ')
  figures.push(
    figure({
      label: 'warm it to',
      dimension: 'temperature',
      range: { low: outerAt, high: outerAt },
      ...rests,
      source,
      limit,
      ...(note && { note }),
    }),
    figure({
      label: 'slip left at that heat',
      dimension: 'length',
      range: slip,
      ...rests,
      source,
      limit: { low: 0, source: 'it has to drop on by hand' },
      ...(!drop.warm.hasWantedSlip && {
        note: `Less than the ${printIn(unit, { low: drop.wantedSlip, high: drop.wantedSlip }, 'length')} that was aimed for.`,
      }),
    }),
  )
  if (drop.warmAndChill) {
    const { innerAt, slip: both } = drop.warmAndChill
    figures.push(
      figure({
        label: 'and chill the inner part to',
        dimension: 'temperature',
        range: { low: innerAt, high: innerAt },
        ...rests,
        source,
      }),
      figure({
        label: 'slip left with both',
        dimension: 'length',
        range: both,
        ...rests,
        source,
        limit: { low: 0, source: 'it has to drop on by hand' },
      }),
    )
  }
  if (shop.ovenUpTo_K !== undefined && outerAt > shop.ovenUpTo_K) {
    const reached = kelvin(shop.ovenUpTo_K)
    says.push(
      `The oven reaches only ${printIn(unit, { low: reached, high: reached }, 'temperature')}: chill the inner part too, or find another oven.`,
    )
  }
  work.cautions.push(...drop.cautions)
}

/** The inner part is chilled and put in; nothing is warmed. */
function addChilling(work: Work): void {
  const { given, unit, shop, figures, missing, cautions } = work
  const { inner, standing } = materials(work)
  const rests = { ...work.rests, standing: weakest([work.rests.standing, standing]) }
  if (given['heated part'] === undefined) missing.push('Give `heated part`: its limit is taken at the narrowest.')
  const maker = given['not below']
  const drop = tried(missing, () =>
    chillToDropIn({
      diameter: work.diameter,
      interference: work.measured,
      inner: {
        material: inner,
        kind: given['heated part'] ?? 'unknown',
        ...(maker && { notBelow: maker.high }),
      },
      room: kelvin(shop.roomTemperature_K),
      ...(given.slip && { slip: given.slip.high }),
    }),
  )
  if (!drop) return
  const { innerAt, innerLongest, wouldNeed, coldest, slip, source } = drop
  const own = maker && coldest.temperature === maker.high ? given.source : undefined
  const limit = { low: coldest.temperature, source: own ?? coldest.source }
  const note = [
    ...(wouldNeed < innerAt - 1e-9
      ? [
          `Chilling alone would need ${printIn(unit, { low: wouldNeed, high: wouldNeed }, 'temperature')}: that must not be used.`,
        ]
      : []),
    ...(innerLongest === undefined ? [] : [`At most ${hoursOf(innerLongest)} at that cold.`]),
  ].join(' ')
  figures.push(
    figure({
      label: 'chill it to',
      dimension: 'temperature',
      range: { low: innerAt, high: innerAt },
      ...rests,
      source,
      limit,
      ...(note && { note }),
    }),
    figure({
      label: 'slip left at that cold',
      dimension: 'length',
      range: slip,
      ...rests,
      source,
      limit: { low: 0, source: 'it has to drop in by hand' },
      ...(!drop.hasWantedSlip && {
        note: `Less than the ${printIn(unit, { low: drop.wantedSlip, high: drop.wantedSlip }, 'length')} that was aimed for.`,
      }),
    }),
  )
  cautions.push(...drop.cautions)
}

const hoursOf = (time: Second): string => printQuantity(time, 'time', { system: 'metric' })
