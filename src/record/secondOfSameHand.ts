// The second signature of a step has to be another person's: asked before it is given, and again before it is taken.
import type { Entry } from '../journal/entry.ts'
import { fold } from './fold.ts'

/**
 * The first of the fresh second signatures that does not count, because the same person did the step. One that is taken back among them is in
 * nobody's way.
 *
 * @param before what stands in the stream already
 * @param fresh entries of the same stream that are to be added
 */
export function secondOfSameHand(
  stream: string,
  before: readonly Entry[],
  fresh: readonly Entry[],
): { readonly person: string; readonly step: string } | null {
  const seconds = fresh.filter((entry) => entry.kind === 'step-signed' && entry.body.as === 'second')
  if (seconds.length === 0) return null
  const { looks } = fold(stream, [...before, ...fresh]).state
  const same = new Set(looks.filter(({ what }) => what === 'same hand').flatMap(({ entries }) => entries))
  const found = seconds.find(({ id }) => same.has(id)) as Entry<'step-signed'> | undefined
  return found ? { person: found.person, step: found.body.step } : null
}
