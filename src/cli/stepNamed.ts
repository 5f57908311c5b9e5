// The step that a person means by the name of a step or of a part.
import type { WorkUp } from '../job/workUp.ts'
import type { Operation } from '../planning/model/problem.ts'
import { carriedWith } from '../unit/derive/frame.ts'
import { nameOf } from './nameOf.ts'

/**
 * A part without a step of its own stands for the step that it goes in with: the gasket for its cover.
 *
 * @param operations those that may be meant
 * @throws NO_SUCH_NAME, NAME_NOT_CLEAR
 */
export function stepNamed(
  name: string,
  operations: readonly Operation[],
  { work: { unit, joints }, file }: { readonly work: WorkUp; readonly file: string },
): string {
  const steps = new Set(operations.map(({ id }) => id))
  const stepOf = new Map(
    [...unit.parts.values()].flatMap((part) => {
      let carrier = steps.has(part.id) ? undefined : carriedWith(part, joints)
      for (const seen = new Set<string>(); carrier && !steps.has(carrier) && !seen.has(carrier); ) {
        seen.add(carrier)
        const other = unit.parts.get(carrier)
        carrier = other && carriedWith(other, joints)
      }
      return carrier && steps.has(carrier) ? [[part.id, carrier] as const] : []
    }),
  )
  const known = [...operations.map(({ id, does }) => ({ id, also: does })), ...[...stepOf.keys()].map((id) => ({ id }))]
  const meant = nameOf(name, known, { what: 'step or part with a step', file })
  return stepOf.get(meant) ?? meant
}
