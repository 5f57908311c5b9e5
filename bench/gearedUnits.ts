// Geared units for the bench: invented, made from a seed, shaped like the trade's work rather than like chains.
//
// A unit is a housing with three attitudes and one body (a shaft with its gears) for every 16 operations or so. A body is built up
// at the bench and the press: keys, gears, a bearing warmed in the oven (a least heating time, and then it has to go home
// at once), a snap ring, a look at the run-out. Then it goes into the housing through one of two ways and its far bearing follows.
//
// Its float is set by a trial: a trial ring goes on, the float is read with the unit turned over, the trial ring comes off and
// the ring that the reading asks for goes on; then the cover at that end and the seal at the other. (The trial stands as its four
// operations, once through.)
//
// Not chains: some bodies have to be in before others, or else the others wait with their far bearing and wall ring; every second
// body's backlash is read once both gears run; covers and seals only have to be on before the oil; loose plugs fit in anywhere
// before it. Sealant has an open time and the lid a cure before the oil. Tools, press and oven are shared by all bodies.
//
// What a seed decides: which end each body is set from, its durations and heating time, which bodies have to pass each other, and
// the plugs. Every gear may go on with the mallet and every body in from the side, at a hazard.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Alternative, Lag, Mode, Need, Operation, PlanningProblem, Reason } from '../src/planning/model/problem.ts'

const reason = (code: string, says: string): Reason => ({ code, says, facts: {}, origin: 'author', standing: 'told' })

export interface UnitRecipe {
  readonly seed: number
  readonly operations: number
  /** Without them the unit has no lags. */
  readonly clocks?: boolean
}

/** A geared unit with exactly the number of operations asked for (at least 20). */
export function gearedUnit({ seed, operations: wanted, clocks = true }: UnitRecipe): PlanningProblem {
  const generator = xoroshiro128plus(seed)
  for (let skip = 0; skip < 8; skip++) generator.next()
  const roll = (from: number, to: number): number => uniformInt(generator, from, to)
  const pick = <T>(list: readonly T[]): T => list[roll(0, list.length - 1)]!
  const operations: Operation[] = []
  const lags: Lag[] = []
  let relations = 0

  const need = (anyOf: readonly Alternative[], says: string): Need => ({
    id: `n${++relations}`,
    anyOf,
    reason: reason('BENCH', says),
    giveUp: 'never',
  })
  const after = (...done: string[]): Need => need([{ done, notDone: [] }], `After ${done.join(' and ')}.`)
  const before = (...notDone: string[]): Need => need([{ done: [], notDone }], `Before ${notDone.join(' and ')}.`)
  const way = (
    workpiece: string,
    attitude: string,
    station: string,
    tools: string | 'any',
    more: Partial<Mode> = {},
  ): Mode => ({
    id: `way ${attitude} ${station}`,
    people: 1,
    needs: [],
    setup: { workpiece, attitude, station, tools: tools === 'any' ? 'any' : [tools] },
    ...more,
  })
  const add = (id: string, minutes: number, modes: readonly Mode[], needs: readonly Need[] = []): string => {
    const usual = minutes * 60
    operations.push({
      id,
      does: id,
      duration_s: { low: Math.round(usual / 2), usual, high: usual * 2 },
      modes: modes.map((mode, place) => ({ ...mode, id: `${place + 1} ${mode.id}` })),
      needs,
    })
    return id
  }
  const lag = (
    from: [string, 'start' | 'end'],
    to: [string, 'start' | 'end'],
    bounds: { min_s?: number; max_s?: number },
  ) => {
    if (!clocks) return
    lags.push({
      id: `l${++relations}`,
      from: { op: from[0], edge: from[1] },
      to: { op: to[0], edge: to[1] },
      ...bounds,
      reason: reason('BENCH', 'A clock.'),
      giveUp: 'never',
    })
  }

  const bodies = Math.max(1, Math.floor((wanted - 8) / 16))
  const box = 'housing'
  const drain = add('drain plug', 2, [way(box, 'any', 'bench', 'sockets')])
  let previousIn: string | null = null
  const closers: string[] = []
  const checks: string[] = []
  for (let body = 1; body <= bodies; body++) {
    const name = (what: string) => `${what} ${body}`
    const shaft = `shaft ${body}`
    const end = pick(['end A up', 'end B up'])
    const other = end === 'end A up' ? 'end B up' : 'end A up'
    const key = add(name('key'), roll(2, 4), [way(shaft, 'any', 'bench', 'mallet')])
    const gear = add(
      name('gear'),
      roll(4, 9),
      [way(shaft, 'any', 'press', 'press plates'), way(shaft, 'any', 'bench', 'mallet', { hazard: 1 })],
      [after(key)],
    )
    const warm = add(name('bearing into the oven'), 1, [way('any', 'any', 'any', 'any')])
    const fit = add(name('bearing on'), roll(2, 4), [way(shaft, 'any', 'bench', 'gloves')], [after(gear, warm)])
    lag([warm, 'end'], [fit, 'start'], { min_s: roll(15, 30) * 60, max_s: 90 * 60 })
    const ring = add(name('snap ring'), 2, [way(shaft, 'any', 'bench', 'ring pliers')], [after(fit)])
    const runOut = add(name('run-out'), roll(3, 6), [way(shaft, 'any', 'bench', 'dial')], [after(fit)])
    const wall = add(name('wall ring'), 3, [way(box, 'any', 'bench', 'ring pliers')])
    const goesIn = add(
      name('body in'),
      roll(5, 12),
      [way(box, 'top up', 'bench', 'sling', { people: 2 }), way(box, end, 'bench', 'sling', { people: 1, hazard: 1 })],
      [after(ring, runOut)],
    )
    if (previousIn !== null && roll(0, 2) > 0) {
      // Either the earlier body is in, or this one's far bearing waits so that it can still be tilted past.
      operations[operations.length - 1] = {
        ...operations.at(-1)!,
        needs: [
          ...operations.at(-1)!.needs,
          need(
            [
              { done: [previousIn], notDone: [] },
              { done: [], notDone: [name('far bearing'), name('wall ring')] },
            ],
            'Past the other body.',
          ),
        ],
      }
    }
    const far = add(name('far bearing'), roll(5, 9), [way(box, other, 'bench', 'mallet')], [after(goesIn, wall)])
    const trialOn = add(name('trial ring on'), 2, [way(box, other, 'bench', 'ring pliers')], [after(far)])
    const float = add(name('float'), roll(5, 9), [way(box, end, 'bench', 'dial')], [after(trialOn)])
    const trialOff = add(name('trial ring off'), 2, [way(box, other, 'bench', 'ring pliers')], [after(float)])
    const endRing = add(name('end ring'), 2, [way(box, other, 'bench', 'ring pliers')], [after(trialOff)])
    const cover = add(name('cover'), roll(6, 10), [way(box, other, 'bench', 'sockets')], [after(endRing)])
    const seal = add(name('seal'), roll(3, 6), [way(box, end, 'bench', 'mallet')], [after(endRing)])
    checks.push(endRing)
    closers.push(cover, seal)
    previousIn = goesIn
    if (body % 2 === 0) {
      const backlash = add(
        `backlash ${body}`,
        roll(6, 9),
        [way(box, 'top up', 'bench', 'dial')],
        [after(name('far bearing'), `far bearing ${body - 1}`), before('sealant')],
      )
      checks.push(backlash)
    }
  }
  for (let extra = 1; operations.length < wanted - 5; extra++) {
    add(
      `plug ${extra}`,
      roll(1, 3),
      [way(box, pick(['top up', 'end A up', 'any']), 'bench', pick(['sockets', 'ring pliers']))],
      [before('oil')],
    )
  }
  const sealant = add('sealant', 3, [way(box, 'top up', 'bench', 'brush')], [after(...checks)])
  const lid = add('lid', 8, [way(box, 'top up', 'bench', 'sockets')], [after(sealant)])
  lag([sealant, 'end'], [lid, 'start'], { max_s: 10 * 60 })
  const oil = add('oil', 5, [way(box, 'top up', 'bench', 'any')], [after(lid, drain, ...closers)])
  lag([lid, 'end'], [oil, 'start'], { min_s: 2 * 3600 })
  const run = add('run-in', 15, [way(box, 'top up', 'bench', 'any')], [after(oil)])
  add('level', 2, [way(box, 'top up', 'bench', 'sockets')], [after(run)])
  while (operations.length < wanted)
    add(`label ${operations.length}`, 1, [way('any', 'any', 'any', 'any')], [after(run)])
  return {
    schema: 'matchmark-planning/1',
    operations,
    lags,
    changes: { turn: { housing: { s: 120, hazard: 1 } }, station_s: 60, workpiece_s: 45, tools_s: 20 },
    start: { attitudes: { housing: 'top up' }, station: 'bench' },
    people: 2,
  }
}
