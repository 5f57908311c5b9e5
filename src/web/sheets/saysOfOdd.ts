// The question about a reading that can hardly be meant.
import type { Odd } from '../model/oddReading.ts'
import { words } from '../words/words.ts'

const DIGITS = 2
const MOST_WHOLE = 1000

/** `12 times`, `one 12th of`: two digits say it. */
function timesText(times: number): string {
  const text = (n: number) =>
    n < MOST_WHOLE ? String(Number(n.toPrecision(DIGITS))) : Math.round(n).toLocaleString('en')
  if (times <= 0) return words.odd.times(text(times))
  return times > 0.5 ? words.odd.times(text(times)) : words.odd.part(String(Math.round(1 / times)))
}

/** @param text the reading as it was understood */
export function saysOfOdd(text: string, { why, times, near, likely, point }: Odd): string {
  const texts = words.odd
  const what =
    why === 'below zero' || times === undefined || !near
      ? texts.below(text)
      : texts[near.is](text, timesText(times), near.text)
  const meant = likely ? texts.unit(likely.unit, likely.text) : point ? texts.point(point.text) : texts.slip
  return `${what} ${meant}`
}
