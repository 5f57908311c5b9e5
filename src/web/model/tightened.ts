// Bolts as the record keeps them: for each stage how many were ticked one by one, and what was said of the others.
import type { Body } from '../../journal/entry.ts'
import type { HoleMap } from '../../unit/connections/kind.ts'

export type TightenedStage = NonNullable<Body<'step-signed'>['tightened']>[number]

export interface Counted {
  /** Bolts that were said to be tight, over all stages. */
  readonly taps: number
  /** Where the ticking one by one ended and it was said of all at once. */
  readonly toldFrom: number | undefined
  readonly wrench: string | undefined
}

/** Every stage of every map in its order; nothing where no order or no torque was told. */
export function tightenedOf(maps: readonly HoleMap[], { taps, toldFrom, wrench }: Counted): TightenedStage[] {
  let before = 0
  return maps.flatMap(({ connection, order, stages, torques }) =>
    order.length === 0
      ? []
      : stages.map((says, index): TightenedStage => {
          const within = (number: number) => Math.max(0, Math.min(order.length, number - before))
          const [said, ticked] = [within(taps), within(Math.min(taps, toldFrom ?? taps))]
          before += order.length
          const torque = torques[index]
          return {
            connection,
            stage: index + 1,
            says,
            ...(torque && { torque: { low: torque.low, high: torque.high, standing: torque.standing } }),
            count: ticked,
            of: order.length,
            ...(said > ticked && { rest: true }),
            ...(wrench !== undefined && { with: wrench }),
          }
        }),
  )
}

/** How far a map is drawn by what the record has of it. */
export const tapsIn = (tightened: readonly TightenedStage[]): number =>
  tightened.reduce((sum, { count, of, rest }) => sum + (rest ? of : count), 0)
