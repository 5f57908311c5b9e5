// Who hangs on whom while things move: the carrier tree, with parked parts standing in the housing by themselves.

import type { Contribution } from '../connections/kind.ts'
import type { DeclaredWay, Part, PartId, Unit } from '../model/unit.ts'

export interface Frame {
  readonly unit: Unit
  readonly joints: Contribution
  /** Parts with a step of their own, in the order of the file. */
  readonly movers: readonly Part[]
  /** The part with everything that goes in with its step. */
  readonly together: (id: PartId) => readonly Part[]
  /** From the part up to, but without, the housing. */
  readonly chain: (id: PartId) => readonly PartId[]
  /** Everything that may hang on it, without itself. */
  readonly hangsOn: (id: PartId) => readonly PartId[]
  /** The steps that have to be done for the two to be joined, however far apart they hang. */
  readonly link: (a: PartId, b: PartId) => readonly PartId[]
  readonly parking: (id: PartId) => DeclaredWay | undefined
  /** The body that lies on the bench when something is joined to this part there: what is joined in the housing is no part of it. */
  readonly benchBody: (id: PartId) => PartId
}

const parkingOf = (part: Part | undefined) => part?.ways.find((way) => way.homeWith !== undefined)

/** Whose step carries a part that has none of its own. */
export function carriedWith(part: Part, joints: Contribution): PartId | undefined {
  return part.goesWith ?? joints.carried.find((each) => each.part === part.id)?.withPart
}

export function frameOf(unit: Unit, joints: Contribution): Frame {
  const parts = [...unit.parts.values()].filter((part) => part.id !== unit.housing)
  const movers = parts.filter((part) => carriedWith(part, joints) === undefined && !unit.dropped.has(part.id))
  const isMover = new Set(movers.map((part) => part.id))

  const carrierOf = (id: PartId): PartId => {
    const part = unit.parts.get(id)
    if (parkingOf(part)) return unit.housing
    let carrier = part?.onto ?? unit.housing
    for (const seen = new Set<PartId>(); carrier !== unit.housing && !isMover.has(carrier) && !seen.has(carrier); ) {
      seen.add(carrier)
      const other = unit.parts.get(carrier)
      carrier = (other && (carriedWith(other, joints) ?? other.onto)) ?? unit.housing
    }
    return carrier
  }
  const carriers = new Map(movers.map((part) => [part.id, carrierOf(part.id)]))

  const chain = (id: PartId): readonly PartId[] => {
    const links: PartId[] = []
    for (let at: PartId | undefined = id; at && at !== unit.housing && !links.includes(at); at = carriers.get(at))
      links.push(at)
    return links
  }
  const chains = new Map([...isMover].map((id) => [id, chain(id)]))
  const chainFor = (id: PartId) => chains.get(id) ?? []

  const bodies = new Map([...unit.parts.values()].map((part) => [part.id, [part]]))
  for (const part of parts) bodies.get(carriedWith(part, joints) ?? '')?.push(part)
  const hanging = new Map<PartId, PartId[]>()
  for (const { id } of movers) {
    for (const carrier of chainFor(id).slice(1)) hanging.set(carrier, [...(hanging.get(carrier) ?? []), id])
  }

  return {
    unit,
    joints,
    movers,
    together: (id) => bodies.get(id) ?? [],
    chain: chainFor,
    hangsOn: (id) => hanging.get(id) ?? [],
    link: (a, b) => {
      const [up, down] = [chainFor(a), chainFor(b)]
      return [...up.filter((id) => !down.includes(id)), ...down.filter((id) => !up.includes(id))]
    },
    parking: (id) => parkingOf(unit.parts.get(id)),
    benchBody: (id) => {
      const links = chainFor(id)
      return links.find((each) => unit.parts.get(each)?.joined === 'in the housing') ?? links.at(-1) ?? unit.housing
    },
  }
}
