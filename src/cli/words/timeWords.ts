// Times of a sequence as a person at a bench reads them.
import { second } from '../../quantity/constructors.ts'
import { printQuantity } from '../../quantity/printQuantity.ts'

/**
 * Hours and minutes since the work began.
 *
 * @example clockWords(5430)   // '1:30'
 */
export const clockWords = (time_s: number): string => {
  const minutes = Math.floor(time_s / 60)
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}

/** @example spanOfTime(5400)   // '1 h 30 min' */
export const spanOfTime = (time_s: number): string => printQuantity(second(time_s), 'time', { system: 'metric' })

/** @example counted(2, 'turn-over')   // '2 turn-overs' */
export const counted = (count: number, thing: string, several = `${thing}s`): string =>
  `${count} ${count === 1 ? thing : several}`
