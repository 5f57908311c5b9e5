// Where the holes of a set lie, which length belongs in each, and in which order they are tightened.
import { tighteningOrder } from '../../../mechanics/threads/tighteningOrder.ts'
import { metre } from '../../../quantity/constructors.ts'
import type { HolePlace } from '../kind.ts'
import type { FastenersGiven } from './given.ts'

/** The holes that the file places; letters from `lengths`, `A` where nothing is said of lengths, `?` where it is not told which. */
export function placesOf(given: FastenersGiven): readonly HolePlace[] {
  const lengths = lengthsOf(given)
  const letters = new Map(lengths.flatMap(({ letter, holes }) => holes.map((hole) => [hole, letter])))
  const only = lengths.length === 0 ? 'A' : lengths.length === 1 ? lengths[0]?.letter : undefined
  return placed(given).map((hole) => ({ ...hole, letter: letters.get(hole.id) ?? only ?? '?' }))
}

/** One length of a set, with the holes that it is for. */
export function lengthsOf({ lengths }: FastenersGiven) {
  return Object.entries(lengths ?? {}).flatMap(([letter, told]) =>
    told ? [{ ...told, letter, holes: told.holes ?? [] }] : [],
  )
}

/** The tightening order as told, else crosswise from the centre outward; empty where the places are not known. */
export function orderOf(given: FastenersGiven): readonly string[] {
  return given.order ?? tighteningOrder(placed(given).map(({ id, y, z }) => ({ id, x: metre(y), y: metre(z) })))
}

function placed({ circle, angles, 'first angle': first = 0, pieces, holes }: FastenersGiven) {
  const listed = Object.entries(holes ?? {}).flatMap(([id, hole]) => {
    const [y, z] = hole?.at ?? []
    return y && z ? [{ id, y: middle(y), z: middle(z) }] : []
  })
  if (listed.length > 0 || !circle) return listed
  const even = Array.from({ length: pieces ?? 0 }, (_, index) => first + (360 * index) / (pieces ?? 1))
  return (angles ?? even).map((angle, index) => ({
    id: String(index + 1),
    y: (middle(circle) / 2) * Math.cos((angle * Math.PI) / 180),
    z: (middle(circle) / 2) * Math.sin((angle * Math.PI) / 180),
  }))
}

const middle = ({ low, high }: { readonly low: number; readonly high: number }): number => (low + high) / 2
