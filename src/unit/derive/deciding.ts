// Which sizes decide the sequence: those of a part are taken away, and what is certain then is compared with what was.
import { hasBit } from '../../planning/bitSet.ts'
import { closing } from '../../planning/closing.ts'
import type { OpId } from '../../planning/model/problem.ts'
import type { Contribution } from '../connections/kind.ts'
import { depth, homesMeet, sameAxis } from '../lines/meet.ts'
import { atHome, mayMeet } from '../lines/shape.ts'
import { TIGHT } from '../lines/span.ts'
import type { LineId, Part, PartId, Ring, Unit } from '../model/unit.ts'
import { derive } from './compile.ts'

/** Two steps of which the first certainly comes before the second. */
export interface StepPair {
  readonly earlier: OpId
  readonly later: OpId
}

export interface Deciding {
  readonly part: PartId
  readonly line: LineId
  /** Its place among the rings of the part on this line; missing: all of them together. */
  readonly ring?: number
  /** Orders that are certain only because of these sizes. */
  readonly decides: readonly StepPair[]
  /** Steps whose either-or hangs on them: "before this one, or with that one away". */
  readonly loosens: readonly OpId[]
}

type Asked = ReadonlyMap<OpId, string>

interface Certain {
  readonly pairs: ReadonlyMap<string, StepPair>
  readonly asked: Asked
}

/**
 * The diameters on which the sequence rests, part by part and line by line: had nobody measured them, some order would not be certain. Whatever
 * is not listed may be left unmeasured as far as the sequence goes; a fit or a float may want it all the same.
 *
 * @param each `ring` asks for every ring by itself as well: about as many derivations as there are rings
 * @example deciding(unit, joints)[0]   // { part: 'shaft', line: '1', decides: [{ earlier: 'wheel', later: 'shaft' }], loosens: [] }
 */
export function deciding(
  unit: Unit,
  joints: Contribution,
  { each = 'part' }: { each?: 'part' | 'ring' } = {},
): readonly Deciding[] {
  const full = certainIn(unit, joints)
  const without = (part: Part, line: LineId, ring?: number) =>
    hangsOn(full, certainIn(unmeasured(unit, part, line, ring), joints))
  const isAnything = ({ decides, loosens }: Pick<Deciding, 'decides' | 'loosens'>) =>
    decides.length + loosens.length > 0
  return [...unit.parts.values()].flatMap((part) =>
    [...part.rings].flatMap(([line, rings]): readonly Deciding[] => {
      const all = without(part, line)
      if (!isAnything(all)) return []
      const whole: Deciding = { part: part.id, line, ...all }
      if (each === 'part' || rings.length === 1) return [whole]
      const single = rings.map((_, ring): Deciding => ({ part: part.id, line, ring, ...without(part, line, ring) }))
      return [whole, ...single.filter(isAnything)]
    }),
  )
}

/** The unit as it would be had nobody taken the diameters of a part on a line, or of one ring of it. */
function unmeasured(unit: Unit, part: Part, line: LineId, ring?: number): Unit {
  const bare = (lines: Part['rings'], at?: number) =>
    new Map(
      [...lines].map(([each, rings]) => [
        each,
        each === line ? rings.map((own, index) => (at === undefined || index === at ? noDiameters(own) : own)) : rings,
      ]),
    )
  const changed: Part = { ...part, rings: bare(part.rings, ring), passing: bare(part.passing, ring) }
  return { ...unit, parts: new Map(unit.parts).set(part.id, changed) }
}

const noDiameters = ({ outside, inside: _, ...ring }: Ring): Ring =>
  outside === 'endless' ? { ...ring, outside } : ring

function certainIn(unit: Unit, joints: Contribution): Certain {
  const { problem } = derive(unit, joints)
  const closed = closing(problem, { useLags: false })
  const ids = problem.operations.map(({ id }) => id)
  const pairs = ids.flatMap((earlier, a) =>
    ids.flatMap((later, b) => (hasBit(closed.before[b]!, a) ? [{ earlier, later }] : [])),
  )
  const asked = ids.map((id, op) => {
    const left = [...closed.needs[op]!, ...closed.modes[op]!.flatMap((mode) => mode.needs)]
    const texts = left.map(({ anyOf }) =>
      anyOf.map(({ done, notDone }) => [done.map((at) => ids[at]), notDone.map((at) => ids[at])]),
    )
    return [id, JSON.stringify(texts.map((text) => JSON.stringify(text)).sort())] as const
  })
  return { pairs: new Map(pairs.map((pair) => [`${pair.earlier} < ${pair.later}`, pair])), asked: new Map(asked) }
}

/** What is certain with these sizes and not without, less what follows from the rest of it. */
function hangsOn(full: Certain, less: Certain): Pick<Deciding, 'decides' | 'loosens'> {
  const lost = [...full.pairs].filter(([key]) => !less.pairs.has(key)).map(([, pair]) => pair)
  const isLost = (earlier: OpId, later: OpId) => lost.some((pair) => pair.earlier === earlier && pair.later === later)
  const follows = ({ earlier, later }: StepPair) =>
    [...full.asked.keys()].some(
      (between) =>
        full.pairs.has(`${earlier} < ${between}`) &&
        full.pairs.has(`${between} < ${later}`) &&
        (isLost(earlier, between) || isLost(between, later)),
    )
  const decides = lost.filter((pair) => !follows(pair))
  const told = new Set(decides.map(({ later }) => later))
  const loosens = [...full.asked].filter(
    ([id, text]) => !told.has(id) && less.asked.has(id) && less.asked.get(id) !== text,
  )
  return { decides, loosens: loosens.map(([id]) => id) }
}

export interface Overlap {
  readonly parts: readonly [PartId, PartId]
  readonly why: string
}

/** Every pair of parts that may touch or lie in each other at home, with what lets them: each hides a block, so each is worth a look. */
export function mayOverlap(unit: Unit, joints: Contribution): readonly Overlap[] {
  const parts = [...unit.parts.values()]
  return parts.flatMap((a, index) =>
    parts.slice(index + 1).flatMap((b): readonly Overlap[] => {
      const why = [
        ...saidOf(a, b),
        ...saidOf(b, a),
        ...joined(a, b, joints),
        ...joined(b, a, joints),
        ...tight(a, b, unit),
      ]
      return why.length ? [{ parts: [a.id, b.id], why: why.join('; ') }] : []
    }),
  )
}

const WORDS = [
  ['slidesOn', 'slides on'],
  ['meshes', 'meshes with'],
  ['keys', 'keys'],
  ['runsOn', 'runs on'],
  ['engages', 'engages'],
] as const

const saidOf = (a: Part, b: Part): readonly string[] =>
  WORDS.filter(([key]) => a[key].includes(b.id)).map(([, words]) => `${a.id} ${words} ${b.id}`)

const joined = (a: Part, b: Part, { mayOverlap: pairs }: Contribution): readonly string[] =>
  pairs.some(({ mover, other }) => mover === a.id && other === b.id)
    ? [`${a.id} goes home on ${b.id} by its connection`]
    : []

function tight(a: Part, b: Part, unit: Unit): readonly string[] {
  if (mayMeet(a, b)) return []
  const isTight = atHome(a, unit).some((p) =>
    atHome(b, unit).some((q) => sameAxis(p, q) && homesMeet(p, q).is === 'yes' && depth(p, q).high <= TIGHT),
  )
  return isTight ? ['a tight fit by their sizes'] : []
}
