// How a part is drawn where its file does not say, and how its section is hatched.
import type { Part, Unit } from '../../../unit/model/unit.ts'

export type Look = NonNullable<Part['look']>

const BY_KIND: Readonly<Record<string, Look>> = {
  'snap ring': 'ring',
  'lip seal': 'seal',
  key: 'key',
  gasket: 'gasket',
  shims: 'gasket',
  fasteners: 'fastener',
  plug: 'fastener',
}

/** What the file says, else what the kind of its connection or its own rings say; never its name. */
export function lookOf(part: Part, unit: Unit): Look {
  if (part.look) return part.look
  if (part.id === unit.housing) return 'casting'
  const byKind = BY_KIND[part.kind ?? '']
  if (byKind) return byKind
  if (part.closes.length > 0) return 'casting'
  const rings = [...part.rings.values()].flat()
  if (rings.length > 0 && rings.every((ring) => ring.inside?.high === 0)) return 'shaft'
  return rings.some((ring) => ring.teeth) ? 'gear' : 'ring'
}

/** Drawn from the back to the front, as the parts lie over each other in a section. */
const BACK_TO_FRONT: readonly Look[] = [
  'gear',
  'shaft',
  'key',
  'ring',
  'bearing',
  'gasket',
  'seal',
  'casting',
  'sheet',
  'fastener',
]
export const depthOf = (look: Look): number => BACK_TO_FRONT.indexOf(look)

/** Drawn whole where they are solid, though the cut goes through them (ISO 128-3): shafts, pinions, screws. */
export const WHOLE: ReadonlySet<Look> = new Set(['shaft', 'gear', 'fastener'])
/** No ring of revolution: seen at one place of the circumference only. A fastener with rings on a line is a nut or a screw on that line. */
export const AT_ONE_PLACE: ReadonlySet<Look> = new Set(['key'])

/** px between hatch lines; 0: never hatched. Close where sections are small. Pitches by eye, to the look. */
export function pitchOf(part: Part, look: Look, unit: Unit): number {
  if (look === 'key' || look === 'fastener') return 0
  if (look === 'gear' || look === 'shaft' || part.id === unit.housing) return 7
  if (part.closes.length > 0) return 5.5
  return look === 'casting' ? 7 : 4
}
