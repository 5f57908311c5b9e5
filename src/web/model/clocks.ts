// Clocks of a job: what runs because one step was begun or ended and the other not yet.
import type { ClockSheet, StepSheetData } from './workedJob.ts'

/** When each step began and ended, as the journal has it. */
export interface StepTimes {
  readonly started_ms?: number
  readonly ended_ms?: number
}

export interface RunningClock {
  readonly clock: ClockSheet
  /** Seconds since it began to run. */
  readonly run_s: number
  /** Seconds until it may go on; 0 when it may. */
  readonly wait_s: number
  /** Seconds left until it is too late; below zero it is too late; missing: no such end. */
  readonly left_s?: number
}

const timeOf = (edge: 'start' | 'end', times: StepTimes | undefined): number | undefined =>
  // Who signs a step without having said that it began, began it no later than that.
  edge === 'start' ? (times?.started_ms ?? times?.ended_ms) : times?.ended_ms

/**
 * The clocks that run now, the most pressing first.
 *
 * @param timesOf when a step was begun and signed
 */
export function runningClocks(
  steps: readonly Pick<StepSheetData, 'clocks'>[],
  timesOf: (step: string) => StepTimes | undefined,
  now_ms: number,
): readonly RunningClock[] {
  const clocks = new Map(steps.flatMap((step) => step.clocks.map((clock) => [clock.id, clock] as const)))
  const running = [...clocks.values()].flatMap((clock): RunningClock[] => {
    const from = timeOf(clock.from.edge, timesOf(clock.from.op))
    const isOver = timeOf(clock.to.edge, timesOf(clock.to.op)) !== undefined
    if (from === undefined || isOver) return []
    return [clockAt(clock, from, now_ms)]
  })
  const urgency = ({ left_s, wait_s }: RunningClock) => left_s ?? 1e6 + wait_s
  const seen = new Set<string>()
  return running
    .sort((a, b) => urgency(a) - urgency(b))
    .filter(({ clock: { from, says, min_s, max_s } }) => {
      // Sealant that has to be squeezed by two sets of bolts is one clock for whoever watches it.
      const same = JSON.stringify([from, says, min_s, max_s])
      return !seen.has(same) && seen.add(same)
    })
}

export function clockAt(clock: ClockSheet, from_ms: number, now_ms: number): RunningClock {
  const run_s = Math.max(0, (now_ms - from_ms) / 1000)
  return {
    clock,
    run_s,
    wait_s: Math.max(0, (clock.min_s ?? 0) - run_s),
    ...(clock.max_s !== undefined && { left_s: clock.max_s - run_s }),
  }
}

const MINUTE_S = 60
const HOUR_S = 3600

/**
 * Seconds as a clock shows them: minutes and seconds, beyond an hour with the hours.
 *
 * @example clockText(440)   // '7:20'
 */
export function clockText(s: number): string {
  const whole = Math.round(Math.abs(s))
  const two = (n: number) => String(n).padStart(2, '0')
  const [hours, minutes, seconds] = [
    Math.floor(whole / HOUR_S),
    Math.floor((whole % HOUR_S) / MINUTE_S),
    whole % MINUTE_S,
  ]
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds)}` : `${minutes}:${two(seconds)}`
}

/**
 * A long time in hours and minutes, rounded up: what is promised is not shorter than the work.
 *
 * @example hoursText(31630)   // '8:48'
 */
export function hoursText(s: number): string {
  const minutes = Math.ceil(s / MINUTE_S)
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}
