// What the record wants of a step beside one name: told by the unit file, and the photo that is usual before a case is closed.
import type { Contribution } from '../connections/kind.ts'
import type { OpeningId, SignOff, Unit } from '../model/unit.ts'

/** What is wanted, and which openings the step shuts for the eye. */
export interface Wanted extends Omit<SignOff, 'at'> {
  readonly shuts: readonly OpeningId[]
}

/**
 * What each step wants, by its name. Before an opening for hand and eye is shut, the inside is photographed: the photo is wanted of the step that
 * shuts it first, which the sequence decides (sealant spread comes before the cover is on). Common practice, no source.
 *
 * @param order the steps in the order in which they are done
 * @example signOffsOf(unit, joints, ['shaft', 'lid']).get('lid')?.photo   // 'the inside, before top is shut'
 */
export function signOffsOf(
  unit: Unit,
  joints: Pick<Contribution, 'closing'>,
  order: readonly string[],
): ReadonlyMap<string, Wanted> {
  const place = new Map(order.map((step, index) => [step, index]))
  const all = new Map<string, Wanted>()
  for (const [step, { at: _, ...told }] of unit.signOffs) if (place.has(step)) all.set(step, { ...told, shuts: [] })
  for (const opening of eyeOpenings(unit)) {
    for (const { id } of [...unit.parts.values()].filter(({ closes }) => closes.includes(opening))) {
      const closing = [id, ...joints.closing.filter(({ part }) => part === id).flatMap(({ steps }) => steps)]
      const first = closing
        .filter((step) => place.has(step))
        .reduce<string | undefined>((a, b) => (a !== undefined && place.get(a)! <= place.get(b)! ? a : b), undefined)
      if (first === undefined) continue
      const told = all.get(first)
      const shuts = [...(told?.shuts ?? []), opening]
      all.set(first, {
        step: first,
        secondPerson: false,
        standing: 'usual',
        ...told,
        photo: told?.photo ?? `the inside, before ${opening} is shut`,
        shuts,
      })
    }
  }
  return all
}

/** Hand and eye come in there: the plane of a split housing, and a hole with a size that lies across no line. */
const eyeOpenings = (unit: Unit): readonly OpeningId[] =>
  [...unit.openings.values()]
    .filter(({ split, size, lines }) => split === true || (size !== undefined && lines.length === 0))
    .map(({ id }) => id)
