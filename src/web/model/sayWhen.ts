// Times of day and dates as they stand on a sheet: short, and without a year that everybody knows.
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' })

export const timeOfDay = (ms: number): string => clock.format(ms)
export const dayOf = (ms: number): string => day.format(ms)

/** The time today, the day and the time before. */
export const sayWhen = (ms: number, now_ms: number): string =>
  dayOf(ms) === dayOf(now_ms) && now_ms - ms < 86_400_000 ? timeOfDay(ms) : `${dayOf(ms)}, ${timeOfDay(ms)}`
