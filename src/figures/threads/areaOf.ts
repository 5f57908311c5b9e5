import type { ThreadGeometry } from '../../mechanics/index.ts'
import { Problem } from '../../problem/problem.ts'
import type { SquareMetre } from '../../quantity/quantity.ts'

/** The area that carries the pull of a screw; a taper pipe thread has none. */
export function areaOf(thread: ThreadGeometry): SquareMetre {
  return screwOf(thread).stressArea
}

/** A thread that pulls: refuses a taper one. */
export function screwOf(thread: ThreadGeometry): ThreadGeometry & { readonly stressArea: SquareMetre } {
  const { stressArea, designation } = thread
  if (stressArea !== undefined) return { ...thread, stressArea }
  throw new Problem('FIGURE_INPUT', {
    key: 'thread',
    says: `${designation} is a taper thread, which seals and carries no bolt load.`,
    next: 'Name the thread of a screw, as M10 or 3/8-16 UNC.',
  })
}
