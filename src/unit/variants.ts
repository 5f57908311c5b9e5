// Which variant a serial number stands for, and the unit as that variant has it.
import type { Check, DeclaredWay, Fill, OpeningId, Part, PartId, Unit, Variant } from './model/unit.ts'

/**
 * The one variant whose serial numbers hold this one; nothing when none does, when several do, or when it is no whole number.
 *
 * @example variantOf(unit, 1187)?.id   // 'early' where early is ..1204
 */
export function variantOf(unit: Unit, serial: number | string): Variant | undefined {
  const text = String(serial).trim()
  if (!/^\d{1,15}$/.test(text)) return undefined
  const number = Number(text)
  const found = unit.variants.filter(
    ({ serials }) => serials && number >= (serials.low ?? 0) && number <= (serials.high ?? Number.POSITIVE_INFINITY),
  )
  return found.length === 1 ? found[0] : undefined
}

/**
 * The unit with only what this variant has. Names of what falls away fall out of every list; an opening in a part that is not there, a way
 * through such an opening, an order or a clock with a step that is not there, and a connection that names a part that is not there fall away.
 */
export function forVariant(unit: Unit, variant: string): Unit {
  const has = ({ variants }: { readonly variants: readonly string[] }) =>
    variants.length === 0 || variants.includes(variant)
  const parts = filterMap(unit.parts, has)
  const openings = filterMap(unit.openings, ({ in: part }) => part === undefined || parts.has(part))
  const connections = filterMap(
    unit.connections,
    (connection) => has(connection) && namesOnly(connection.given, unit, parts),
  )
  const checks = filterMap(unit.checks, has)
  const fills = filterMap(unit.fills, has)
  const addedSteps = filterMap(unit.addedSteps, has)

  const keepParts = (names: readonly PartId[]) => names.filter((name) => parts.has(name))
  const keepOpenings = (names: readonly OpeningId[]) => names.filter((name) => openings.has(name))
  const stays = stepsThatStay(unit, { parts, connections, checks, fills, addedSteps })
  const keepSteps = (names: readonly string[]) => names.filter(stays)

  const part = (each: Part): Part => ({
    ...each,
    ways: each.ways.filter(({ through }) => through === undefined || openings.has(through)).map(way),
    seats: keepParts(each.seats),
    slidesOn: keepParts(each.slidesOn),
    meshes: keepParts(each.meshes),
    keys: keepParts(each.keys),
    runsOn: keepParts(each.runsOn),
    engages: keepParts(each.engages),
    watched: each.watched.filter(({ meets, through }) => parts.has(meets) && openings.has(through)),
    closes: keepOpenings(each.closes),
    reach: keepOpenings(each.reach),
    looseUntil: keepSteps(each.looseUntil),
    follows: each.follows.map((follow) => ({ ...follow, reach: keepOpenings(follow.reach) })),
  })
  const way = (each: DeclaredWay): DeclaredWay => ({ ...each, clear: keepParts(each.clear) })
  const check = ({ onBench, ...each }: Check): Check => ({
    ...each,
    ...(onBench !== undefined && parts.has(onBench) && { onBench }),
    wants: keepSteps(each.wants),
    without: keepSteps(each.without),
    trial: keepParts(each.trial),
    reach: keepOpenings(each.reach),
  })
  const fill = ({ through, ...each }: Fill): Fill => ({
    ...each,
    ...(through !== undefined && openings.has(through) && { through }),
    above: keepOpenings(each.above),
    after: keepSteps(each.after),
  })

  return {
    ...unit,
    lines: mapMap(unit.lines, (line) => ({ ...line, stack: keepParts(line.stack) })),
    passings: unit.passings.filter(({ mover, past }) => parts.has(mover) && parts.has(past)),
    openings,
    parts: mapMap(parts, part),
    connections,
    checks: mapMap(checks, check),
    fills: mapMap(fills, fill),
    lies: new Map([...unit.lies].filter(([step]) => stays(step))),
    hands: new Map([...unit.hands].filter(([step]) => stays(step))),
    addedSteps: mapMap(addedSteps, (step) => ({
      ...step,
      after: keepSteps(step.after),
      before: keepSteps(step.before),
      reach: keepOpenings(step.reach),
    })),
    addedOrders: unit.addedOrders.filter(({ first, then }) => stays(first) && stays(then)),
    dropped: new Map([...unit.dropped].filter(([step]) => stays(step))),
    signOffs: new Map([...unit.signOffs].filter(([step]) => stays(step))),
    clocks: unit.clocks.filter(({ from, to }) => stays(from.step) && stays(to.step)),
    sets: mapMap(unit.sets, (set) => ({ ...set, parts: keepParts(set.parts) })),
  }
}

type StepGivers = Pick<Unit, 'parts' | 'connections' | 'checks' | 'fills' | 'addedSteps'>

/** A step stays when what gives it stays: the thing with its name or, for `warm bearing A`, the longest name that it holds. */
function stepsThatStay(unit: Unit, kept: StepGivers): (step: string) => boolean {
  const [before, now] = [stepNames(unit), stepNames(kept)]
  return (step) => {
    if (before.has(step)) return now.has(step)
    const held = [...before].filter((name) => ` ${step} `.includes(` ${name} `))
    const longest = held.reduce((most, name) => (name.length > most.length ? name : most), '')
    return longest === '' || now.has(longest)
  }
}

function stepNames({ parts, connections, checks, fills, addedSteps }: StepGivers): ReadonlySet<string> {
  const follows = [...parts.values()].flatMap((part) => part.follows.map(({ id }) => id))
  const maps = [parts, connections, checks, fills, addedSteps]
  return new Set([...maps.flatMap((map) => [...map.keys()]), ...follows])
}

/** Whether a connection names no part that has fallen away, by itself (`shaft`) or by a feature (`shaft.seat A`). */
function namesOnly(value: unknown, unit: Unit, parts: ReadonlyMap<PartId, Part>): boolean {
  if (typeof value === 'string') {
    return [...unit.parts.keys()].every((id) => parts.has(id) || (value !== id && !value.startsWith(`${id}.`)))
  }
  if (value === null || typeof value !== 'object') return true
  return Object.values(value).every((inner) => namesOnly(inner, unit, parts))
}

const filterMap = <V>(map: ReadonlyMap<string, V>, keep: (value: V) => boolean): ReadonlyMap<string, V> =>
  new Map([...map].filter(([, value]) => keep(value)))
const mapMap = <V>(map: ReadonlyMap<string, V>, change: (value: V) => V): ReadonlyMap<string, V> =>
  new Map([...map].map(([id, value]) => [id, change(value)]))
