// Every connection of a unit, read by its kind: those written in full, and those that one word at a part stands for.
import type { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import { placeOf } from '../file/connections.ts'
import { nearest } from '../file/nearest.ts'
import type { At, Connection, Part, PartId, Unit } from '../model/unit.ts'
import type { Kind, Question } from './kind.ts'
import { KINDS } from './kinds.ts'
import { SHORTHAND, tiedTo } from './shorthand.ts'

/** A connection with the kind that knows it, and what the file gives, checked and in SI. */
export interface Connected {
  readonly connection: Connection
  readonly kind: Kind<unknown>
  readonly given: unknown
}

export interface Connections {
  readonly connections: readonly Connected[]
  /** What may touch or overlap by a word that is no connection: a key in its keyway. */
  readonly overlaps: readonly { readonly mover: PartId; readonly other: PartId }[]
  /** What a word at a part leaves open. */
  readonly questions: readonly Question[]
  /** Bad entries; a bad value counts as not given, an entry that cannot be read at all is left out. */
  readonly faults: readonly Problem[]
}

/**
 * Reads the connections of a unit. A word at a part yields to a connection in full between the same parts.
 *
 * @returns connections, what may overlap besides, questions, and the faults with their places
 * @example connectionsOf(unit).connections[0]?.kind.name   // 'cylindrical fit'
 */
export function connectionsOf(unit: Unit): Connections {
  const faults: Problem[] = []
  const written = [...unit.connections.values()].flatMap((connection) => read(connection, unit, faults))
  const short = shorthand(unit, faults)
  const fromWords = short.connections
    .flatMap(({ part, connection }) => read(connection, unit, faults).map((connected) => ({ part, connected })))
    .filter((word) => !written.some((full) => isSameJoint(full, word)))
    .map(({ connected }) => connected)
  return { connections: [...written, ...fromWords], overlaps: short.overlaps, questions: short.questions, faults }
}

function read(connection: Connection, unit: Unit, faults: Problem[]): Connected[] {
  const { id } = connection
  const fault = faultIn(unit, faults)
  const meaning = SHORTHAND.get(connection.kind)
  const kind = KINDS.get(connection.kind) ?? (meaning?.kind === undefined ? undefined : KINDS.get(meaning.kind))
  if (kind === undefined) {
    fault('CONNECTION_KIND_UNKNOWN', connection.at, {
      connection: id,
      received: connection.kind,
      nearest: nearest(connection.kind, [...KINDS.keys(), ...SHORTHAND.keys()]) ?? '',
      known: [...KINDS.keys()].join(', '),
    })
    return []
  }
  const raw: Record<string, unknown> = { ...meaning?.fixed, ...connection.given }
  const schema = kind.given(unit)
  let result = schema.safeParse(raw)
  if (result.error) {
    for (const issue of result.error.issues) {
      tell(issue, raw, connection, kind.name, fault)
      const [first] = issue.path
      const bad = first !== undefined ? [first] : issue.code === 'unrecognized_keys' ? issue.keys : []
      for (const key of bad) delete raw[String(key)]
    }
    result = schema.safeParse(raw)
  }
  if (!result.success) return []
  const unknown = kind.parts(result.data).filter((part) => !unit.parts.has(part))
  for (const part of unknown) {
    fault('CONNECTION_PART_UNKNOWN', connection.at, {
      connection: id,
      part,
      nearest: nearest(part, unit.parts.keys()) ?? '',
    })
  }
  return unknown.length > 0 ? [] : [{ connection, kind, given: result.data }]
}

type Tell = (code: Problem['code'], at: At, facts: Problem['facts']) => void

const faultIn =
  (unit: Unit, faults: Problem[]): Tell =>
  (code, { line, column }, facts) => {
    faults.push(new Problem(code, facts, { file: unit.file, line, column }))
  }

type Issue = z.core.$ZodIssue

function tell(issue: Issue, raw: Record<string, unknown>, connection: Connection, kind: string, fault: Tell): void {
  const { id } = connection
  if (issue.code === 'unrecognized_keys') {
    // The message of an unknown key lists the keys of its block (file/words.ts).
    const keys = issue.message.split(' · ')
    for (const key of issue.keys) {
      const facts = { connection: id, kind, key, nearest: nearest(key, keys) ?? '', known: keys.join(', ') }
      fault('CONNECTION_KEY_UNKNOWN', placeOf(connection, [...issue.path, key]), facts)
    }
    return
  }
  const at = placeOf(connection, issue.path)
  const key = issue.path.map(String).join(' › ')
  const received = issue.path.reduce<unknown>(
    (value, step) => (value as Record<PropertyKey, unknown> | undefined)?.[step],
    raw,
  )
  if (received === undefined) {
    fault('CONNECTION_KEY_MISSING', at, { connection: id, kind, key })
    return
  }
  const reason = issue.code === 'custom' ? issue.message : `expected ${issue.message}.`
  fault('CONNECTION_VALUE_WRONG', at, { connection: id, key, received: JSON.stringify(received), reason })
}

interface FromWord {
  readonly part: Part
  readonly connected: Connected
}

function shorthand(unit: Unit, faults: Problem[]) {
  const connections: { part: Part; connection: Connection }[] = []
  const overlaps: { mover: PartId; other: PartId }[] = []
  const questions: Question[] = []
  for (const part of unit.parts.values()) {
    if (part.kind === undefined) continue
    const meaning = SHORTHAND.get(part.kind)
    if (meaning === undefined) {
      const words = [...SHORTHAND.keys()]
      const facts = {
        part: part.id,
        received: part.kind,
        nearest: nearest(part.kind, words) ?? '',
        known: words.join(', '),
      }
      faultIn(unit, faults)('PART_KIND_UNKNOWN', part.at, facts)
      continue
    }
    const onto = tiedTo(part, meaning, unit)
    if (onto === undefined) {
      questions.push({
        about: part.id,
        asks: `With which part does ${part.id} go in? Give \`goes with\`.`,
        holdsUp: `whose step it goes in with: a ${part.kind} has none of its own`,
        rank: 1,
      })
      continue
    }
    if (meaning.overlaps) overlaps.push({ mover: part.id, other: onto })
    if (meaning.kind !== undefined && meaning.given) {
      const given = { ...meaning.fixed, ...meaning.given(part, onto) }
      const connection = {
        id: `${part.id}: ${part.kind}`,
        at: part.at,
        kind: meaning.kind,
        given,
        variants: part.variants,
      }
      connections.push({ part, connection })
    }
  }
  return { connections, overlaps, questions }
}

/** A part has one ring, seal or gasket of its own but may have several seats: these are the same where they join the same parts. */
function isSameJoint(full: Connected, { part, connected }: FromWord): boolean {
  if (full.kind !== connected.kind) return false
  const [a, b] = [full, connected].map(({ kind, given }) => kind.parts(given))
  const within = (some: readonly PartId[] = [], all: readonly PartId[] = []) => some.every((each) => all.includes(each))
  return SHORTHAND.get(part.kind ?? '')?.several ? within(a, b) || within(b, a) : within([part.id], a)
}
