// Book in: what the job is, and what was told of it.
import { figureText } from '../../../paper/figureText.ts'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'

const texts = words.desk

export function BookIn({ job: { job, state }, worked, system }: Stands) {
  const rows: readonly (readonly [string, string | undefined])[] = [
    [texts.owner, job.owner],
    [texts.serial, job.serial],
    [texts.variant, worked.variant],
    [texts.unit, [worked.unit, worked.revision].filter(Boolean).join(', ')],
    [texts.people, job.plant.crew?.map(({ name }) => name).join(', ') ?? String(job.plant.people)],
    [texts.note, job.note],
  ]
  const { instruments } = worked
  return (
    <>
      <Region place={10}>
        <dl className={css.facts}>
          {rows.map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text ?? <span className="told">{texts.notTold}</span>}</dd>
            </div>
          ))}
        </dl>
        {state.opened.invented && <p className="told">{texts.invented}</p>}
        {worked.taken.map((text) => (
          <p key={text} className="told">
            {text}
          </p>
        ))}
      </Region>
      {job.shims.length > 0 && (
        <Region title={texts.shims} place={20}>
          <ul className={css.rows}>
            {job.shims.map(({ id, reads, nominal, for: use }) => (
              <li key={id} className={css.row}>
                <b>{id}</b>
                <span className="told">
                  {[use, nominal && `${words.basis.nominal}: ${figureText(nominal, 'length', system)}`]
                    .filter(Boolean)
                    .join('; ')}
                </span>
                <span className={css.figure}>{reads ? figureText(reads, 'length', system) : texts.notMeasured}</span>
              </li>
            ))}
          </ul>
        </Region>
      )}
      {instruments.length > 0 && (
        <Region title={texts.instruments} place={30}>
          <ul className={css.rows}>
            {instruments.map(({ name, uncertainty_m, due }) => (
              <li key={name} className={css.row}>
                <b>{name}</b>
                <span className="told">{due !== undefined && texts.due(due)}</span>
                <span className={css.figure}>
                  {uncertainty_m !== undefined &&
                    words.reading.uncertainty(
                      figureText({ low: uncertainty_m, high: uncertainty_m }, 'length', system),
                    )}
                </span>
              </li>
            ))}
          </ul>
        </Region>
      )}
      {worked.wrenches.length > 0 && (
        <Region title={texts.wrenches} place={40}>
          <ul className={css.rows}>
            {worked.wrenches.map(({ name, range }) => (
              <li key={name} className={css.row}>
                <b>{name}</b>
                <span />
                <span className={css.figure}>{range?.text}</span>
              </li>
            ))}
          </ul>
        </Region>
      )}
    </>
  )
}
