// A clock is the same gap gauge as a limit: time runs towards a jaw.
import { gauge } from '../../paper/drawings/gauge.ts'
import { clockText, type RunningClock } from '../model/clocks.ts'
import { words } from '../words/words.ts'
import css from './ClockGauge.module.css'
import { Drawing } from './Drawing.tsx'
import { Hero } from './Hero.tsx'
import { Mark } from './Mark.tsx'

const WIDTH = 320
const HURRY_S = 120

export function ClockGauge({ running, label }: { running: RunningClock; label?: string }) {
  const { clock, run_s, wait_s, left_s } = running
  const { min_s, max_s } = clock
  const isLate = left_s !== undefined && left_s < 0
  const isWaiting = wait_s > 0
  const shown = isWaiting ? wait_s : (left_s ?? 0)
  const word = isWaiting
    ? words.clocks.toWait
    : isLate
      ? words.clocks.over
      : left_s === undefined
        ? words.clocks.ready
        : words.clocks.left
  const is = isLate ? 'out' : isWaiting || (left_s !== undefined && left_s < HURRY_S) ? 'worn, usable' : 'within'
  // Beyond the scale the pointer stands at its end.
  const most = (max_s ?? min_s ?? 0) * 1.2
  const at = Math.min(run_s, most)
  return (
    <section className={css.clock} aria-label={label ?? clock.says}>
      <div className={css.head}>
        {(isWaiting || left_s !== undefined) && <Hero text={clockText(shown)} />}
        <span className={`${css.word} ${isLate ? 'stop' : isWaiting ? 'look' : 'good'}`}>
          <Mark name={isLate ? 'stop' : isWaiting ? 'look' : 'done'} size={18} />
          {word}
        </span>
        <span className={css.says}>{label ?? clock.says}</span>
      </div>
      <div className={css.gauge}>
        <Drawing
          drawn={gauge({
            title: clock.says,
            dimension: 'time',
            limit: { ...(min_s !== undefined && { low: min_s }), ...(max_s !== undefined && { high: max_s }) },
            readings: [{ low: Math.round(at), high: Math.round(at), is }],
            system: 'metric',
            scale: { from: 0, to: most },
            width: WIDTH,
          })}
        />
      </div>
      {isLate && <p className={css.says}>{words.clocks.expired}</p>}
    </section>
  )
}
