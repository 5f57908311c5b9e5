// How far the tightening of a step has come: every bolt of a stage in its order, then the next stage. Kept as one count of taps.
import type { HoleMap } from '../../unit/connections/kind.ts'

export interface NextBolt {
  readonly connection: string
  readonly hole: string
  /** Its number in the order. */
  readonly number: number
  readonly stage: number
  readonly stages: number
  /** As the map says it: `all to 45 N·m`. */
  readonly text: string
  /** Of this stage, this one included. */
  readonly left: number
}

export interface Tightening {
  /** Taps until all are tight; 0 where no order was told. */
  readonly total: number
  readonly next?: NextBolt
  /** Connection → hole → stages reached. */
  readonly reached: ReadonlyMap<string, ReadonlyMap<string, number>>
}

/** @param taps how many bolts were said to be tight, over all stages */
export function tightening(maps: readonly HoleMap[], taps: number): Tightening {
  const all = maps.flatMap(({ connection, order, stages }) =>
    stages.flatMap((text, stage) =>
      order.map((hole, place) => ({
        connection,
        hole,
        number: place + 1,
        stage: stage + 1,
        stages: stages.length,
        text,
        left: order.length - place,
      })),
    ),
  )
  const reached = new Map(maps.map(({ connection }) => [connection, new Map<string, number>()]))
  for (const { connection, hole, stage } of all.slice(0, taps)) reached.get(connection)?.set(hole, stage)
  const next = all[taps]
  return { total: all.length, reached, ...(next && { next }) }
}
