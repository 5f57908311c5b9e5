// What the one word `kind:` of a part means: a connection in full with little given, what may touch, or nothing.
import type { Part, Unit } from '../model/unit.ts'

/** What a word stands for. */
export interface Meaning {
  /** A connection of this kind; `given` is what the part itself tells, in the words of the file. */
  readonly kind?: string
  /** What the word itself says. */
  readonly fixed?: Readonly<Record<string, unknown>>
  readonly given?: (part: Part, onto: string) => Readonly<Record<string, unknown>>
  /** It has no step of its own: the part that it goes with has to be known. */
  readonly carried?: boolean
  /** A part may have several such joints, with different parts. */
  readonly several?: boolean
  /** It may touch or overlap what it goes onto. */
  readonly overlaps?: boolean
}

const seat = (fit: string): Meaning => ({
  kind: 'cylindrical fit',
  fixed: { fit },
  several: true,
  given: ({ id }, onto) => ({ moves: id, onto }),
})

const WORDS = {
  'press fit': seat('press'),
  'hot fit': seat('hot'),
  'cold fit': seat('cold'),
  slide: seat('loose'),
  key: { overlaps: true },
  plug: {},
  'snap ring': { kind: 'snap ring', given: ({ id }, onto) => ({ ring: id, in: onto }) },
  'lip seal': {
    kind: 'lip seal',
    given: ({ id, runsOn: [shaft] }, onto) => ({
      seal: id,
      in: onto,
      ...(shaft !== undefined && { 'runs on': shaft }),
    }),
  },
  gasket: { kind: 'gasket', carried: true, given: ({ id }, onto) => ({ gasket: id, 'squeezed by': onto }) },
  shims: { kind: 'bearing shims', carried: true, given: ({ id }, onto) => ({ shims: id, under: onto }) },
  fasteners: { kind: 'fasteners', carried: true, given: ({ id }, onto) => ({ screws: id, holds: onto }) },
} satisfies Record<string, Meaning>

/** Word → meaning. */
export const SHORTHAND: ReadonlyMap<string, Meaning> = new Map(Object.entries(WORDS))

/** The part that a word ties its part to: what carries it where it has no step of its own, else what it goes onto. */
export function tiedTo(part: Part, meaning: Meaning, unit: Unit): string | undefined {
  if (meaning.carried !== true) return part.onto ?? unit.housing
  const carrier = part.goesWith ?? part.onto
  return carrier === unit.housing ? undefined : carrier
}
