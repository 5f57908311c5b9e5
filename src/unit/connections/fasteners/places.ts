// Where the holes of a set lie, and which length belongs in each.
import type { HolePlace } from '../kind.ts'
import type { FastenersGiven } from './given.ts'

/** The holes that the file places; letters from `lengths`, `A` where there is one length for all. */
export function placesOf({ circle, holes, lengths }: FastenersGiven): readonly HolePlace[] {
  const letters = new Map(
    Object.entries(lengths ?? {}).flatMap(([letter, { holes: named }]) => (named ?? []).map((hole) => [hole, letter])),
  )
  const only = Object.keys(lengths ?? {}).length === 1 ? Object.keys(lengths ?? {})[0] : undefined
  const letterOf = (id: string, told?: string): string => told ?? letters.get(id) ?? only ?? (lengths ? '?' : 'A')
  const listed = Object.entries(holes ?? {}).flatMap(([id, { at, length }]) => {
    const [y, z] = at
    return y && z ? [{ id, y: middle(y), z: middle(z), letter: letterOf(id, length) }] : []
  })
  if (listed.length > 0 || !circle?.diameter) return listed
  const radius = middle(circle.diameter) / 2
  return Array.from({ length: circle.holes }, (_, index) => {
    const angle = ((circle.first ?? 0) / 180 + (2 * index) / circle.holes) * Math.PI
    const id = String(index + 1)
    return { id, y: radius * Math.cos(angle), z: radius * Math.sin(angle), letter: letterOf(id) }
  })
}

const middle = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2
