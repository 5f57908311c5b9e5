import { describe, expect, it } from 'vitest'
import type { Need, Origin } from './model/problem.ts'
import { reach } from './reach.ts'
import { need, operation, problemOf } from './testing/examples.ts'

const from = (origin: Origin, given: Need): Need => ({ ...given, reason: { ...given.reason, origin } })
const span = (usual: number) => ({ low: usual, usual, high: usual })

const axle = problemOf([
  operation('ring'),
  operation('bearing', [from('geometry', need('behind the ring', { done: ['ring'] }))], {
    undo: { duration_s: span(30), needs: [], renews: ['bearing'], voids: [] },
    noReturn: 'A bearing that was pulled is renewed.',
  }),
  operation('cover', [from('geometry', need('over the bearing', { done: ['bearing'] }))], {
    undo: { duration_s: span(20), needs: [], renews: ['gasket'], voids: [] },
  }),
  operation('float', [from('process', need('read with the cover', { done: ['cover'], notDone: ['seal'] }))]),
  operation('seal', [from('process', need('after the float', { done: ['float'] }))], {
    undo: { duration_s: span(5), needs: [], renews: ['seal'], voids: [] },
  }),
  operation('plug'),
])

describe('the way back', () => {
  it('undoes what stands on the part, renews what that costs, and does again what becomes void', () => {
    const way = reach(axle, 'bearing')!
    expect(way.undo).toEqual(['seal', 'cover', 'bearing'])
    expect(way.voids).toEqual(['float'])
    expect([...way.renews].sort()).toEqual(['bearing', 'gasket', 'seal'])
    expect(way.noReturn).toEqual([{ op: 'bearing', says: 'A bearing that was pulled is renewed.' }])
    // Undoing 30 + 20 + 5, doing again three of them and the float, 10 s each.
    expect([way.cost_s, way.bound_s]).toEqual([95, 95])
    expect(way.rebuild.steps.map(({ op }) => op)).toEqual(['bearing', 'cover', 'float', 'seal'])
  })

  it('leaves alone what does not stand in the way', () => {
    expect(reach(axle, 'plug')!.undo).toEqual(['plug'])
    expect(reach(axle, 'cover', { done: ['ring', 'bearing', 'cover'] })!.undo).toEqual(['cover'])
  })

  it('takes the cheaper of two ways when a part may leave by either', () => {
    const door = (id: string, s: number) =>
      operation(id, [], { undo: { duration_s: span(s), needs: [], renews: [], voids: [] } })
    const way = reach(
      problemOf([
        operation('wheel', [from('geometry', need('a way in', { notDone: ['top'] }, { notDone: ['end'] }))]),
        door('top', 50),
        door('end', 20),
      ]),
      'wheel',
    )!
    expect(way.undo).toEqual(['end', 'wheel'])
    expect([way.cost_s, way.bound_s]).toEqual([20 + 10 + 10 + 10, 50])
  })

  it('follows what the undoing itself asks for', () => {
    const way = reach(
      problemOf([
        operation('nut'),
        operation('hub', [], {
          undo: { duration_s: span(9), needs: [need('puller', { notDone: ['nut'] })], renews: [], voids: ['set'] },
        }),
        operation('set'),
      ]),
      'hub',
    )!
    expect([way.undo, way.voids]).toEqual([['nut', 'hub'], ['set']])
  })

  it('has no way back where something cannot be taken off again', () => {
    const stuck = operation('disc', [], {
      undo: { duration_s: span(1), needs: [need('never')], renews: [], voids: [] },
    })
    expect(reach(problemOf([stuck, operation('shaft')]), 'disc')).toBeNull()
    expect(reach(problemOf([stuck, operation('shaft')]), 'shaft')!.undo).toEqual(['shaft'])
  })

  it('refuses what is not done', () => {
    expect(() => reach(axle, 'seal', { done: ['ring'] })).toThrow(
      "The operation 'seal' cannot be undone: it is not done.",
    )
  })

  it('says what the bound is when it was in haste', () => {
    const way = reach(axle, 'ring', { effort: 5 })!
    expect(way.bound_s).toBeLessThanOrEqual(way.cost_s)
    expect(way.undo.at(-1)).toBe('ring')
  })
})
