// How long a warmed part stays wide enough once it is out of the oven, as a clock of the step that puts it on.
import { type SecondsInHand, secondsInHand } from '../../mechanics/fits/secondsInHand.ts'
import type { JobBookInput } from '../../paper/documents/jobBookInput.ts'
import type { StepFacts } from '../../paper/documents/stepFacts.ts'
import { Problem } from '../../problem/problem.ts'
import { celsius, metre } from '../../quantity/constructors.ts'
import { quantity } from '../../quantity/quantity.ts'
import type { FitGiven } from '../../unit/connections/cylindricalFit/given.ts'
import { placeSize, sizeOf } from '../../unit/connections/features.ts'
import type { ClockSheet } from './workedJob.ts'

/** Common practice, no source: a shop that nobody measured. */
const ROOM_C = 20

/**
 * The clock that begins when the part leaves the oven and ends when the step is signed. Only the ring that grips is reckoned, and the low
 * end of its time: what else hangs on it keeps it warm longer. Nothing where the ring's sizes are not known.
 */
export function hotGrip({ operation, part, settings }: StepFacts, { work }: JobBookInput): ClockSheet | undefined {
  if (part?.id !== operation.id) return undefined
  for (const { connection, figures } of settings) {
    const warm = figures.find(({ label }) => label === 'warm it to')
    const tight = figures.find(({ label }) => label === 'interference')
    const given = work.connections.connections.find((one) => one.connection.id === connection)?.given as
      | FitGiven
      | undefined
    const [diameter, hub, length] = [
      placeSize(work.unit, given?.shaft),
      sizeOf(work.unit, given?.['hub outside']),
      sizeOf(work.unit, given?.length),
    ].map(({ known }) => known)
    if (!warm || !tight || !length || !hub || !diameter) continue
    const room = work.job?.plant.room?.high ?? celsius(ROOM_C)
    const reckoned = tried(() =>
      secondsInHand({
        outside: metre(hub.low),
        inside: metre(diameter.high),
        width: metre(length.low),
        fitDiameter: metre(diameter.high),
        material: part.material ?? (part.look === 'bearing' ? 'bearing steel' : 'unknown'),
        takenAt: quantity(warm.low, 'K'),
        room,
        interference: { low: metre(tight.low), high: metre(tight.high) },
      }),
    )
    if (!reckoned) continue
    return {
      id: `${operation.id}: warm in hand`,
      from: { op: operation.id, edge: 'start' },
      to: { op: operation.id, edge: 'end' },
      max_s: Math.floor(reckoned.seconds.low),
      says: `Out of the oven until ${part.id} may grip, in still air. ${reckoned.cautions.join(' ')}`,
      standing: 'supposed',
    }
  }
  return undefined
}

/** Sizes that no ring can have are told where they are read; here there is then no clock. */
function tried(reckon: () => SecondsInHand): SecondsInHand | undefined {
  try {
    return reckon()
  } catch (error) {
    if (error instanceof Problem) return undefined
    throw error
  }
}
