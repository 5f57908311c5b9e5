import type { Value } from '../model/sequence.ts'
import type { Instance } from './instance.ts'

/** The triple that a search key stands for. */
export function tripleOf(instance: Instance, key: number): Value {
  const changes = key % instance.changesRange
  const rest = (key - changes) / instance.changesRange
  const elapsed = rest % instance.elapsedRange
  return [(rest - elapsed) / instance.elapsedRange, elapsed, changes]
}
