// The figures that count while the hand is at the step, large, above the action: torque by rounds, the load to stop at, heat, shims.
import type { Glance } from '../model/atAGlance.ts'
import { words } from '../words/words.ts'
import css from './Glances.module.css'
import { Mark } from './Mark.tsx'
import { Region } from './Region.tsx'

const texts = words.glance

export function Glances({ of }: { of: readonly Glance[] }) {
  if (of.length === 0) return null
  const titles = new Set(of.map((one) => one.of))
  return (
    <Region place={9} isBare label={texts.title}>
      <dl className={css.cells}>
        {of.map(({ of: title, what, figures, rests, limit }) => (
          <div key={`${title} ${what} ${figures.join()}`} className={`${css.cell} ${css[what] ?? ''}`}>
            <dt>
              {(what === 'stop' || what === 'wrong') && <Mark name="stop" size={18} />}
              {what === 'torque' && figures.length > 1 ? texts.rounds(figures.length) : texts[what]}
              {rests !== 'seen' && <span className={css.rests}>{words.standings[rests]}</span>}
            </dt>
            <dd>{inOneUnit(figures).join(texts.between)}</dd>
            {(limit !== undefined || titles.size > 1) && (
              <dd className={css.also}>{[limit, titles.size > 1 && title].filter(Boolean).join('; ')}</dd>
            )}
          </div>
        ))}
      </dl>
    </Region>
  )
}

/** `25 · 45 · 65 N·m`: the unit once, where all have the same. */
function inOneUnit(figures: readonly string[]): readonly string[] {
  const unitOf = (text: string) => text.replace(/^[−\d.,/ ]+/, '')
  const unit = unitOf(figures.at(-1) ?? '')
  if (figures.length < 2 || !figures.every((text) => unitOf(text) === unit)) return figures
  return figures.map((text, index) => (index < figures.length - 1 ? text.slice(0, -unit.length).trim() : text))
}
