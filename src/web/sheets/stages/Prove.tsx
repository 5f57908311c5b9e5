// Prove: every check of the unit with its limit, and every result that stands.

import { Link } from 'wouter'
import { hourOf } from '../../../journal/clock.ts'
import { figureText } from '../../../paper/figureText.ts'
import { checksOf, type JobOnSheet } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import type { WorkedJob } from '../../model/workedJob.ts'
import { Mark } from '../../parts/Mark.tsx'
import { Region } from '../../parts/Region.tsx'
import { useNow } from '../../parts/useNow.ts'
import { words } from '../../words/words.ts'
import { buildPath } from '../paths.ts'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'

const texts = words.desk

export function Prove({ job, worked, system }: Stands) {
  const now_ms = useNow(false)
  const { checks } = worked.desk
  const inSequence = new Set(job.state.sequence?.steps.map(({ step }) => step))
  return (
    <Region place={10}>
      {checks.length === 0 && <p>{texts.noChecks}</p>}
      <ul className={css.rows}>
        {checks.map(({ id, does, limit, told, measures }) => {
          const results = checksOf(job.state, id)
          return (
            <li key={id} className={css.row}>
              <span>
                <b>{inSequence.has(id) ? <Link href={buildPath(job.number, id)}>{id}</Link> : id}</b>
                <span className={`told ${css.line}`}>{does}</span>
              </span>
              <span>
                {limit ? words.reading.limit(limit.text) : told}
                {limit && (
                  <span className={`told ${css.line}`}>
                    {[words.standings[limit.standing], limit.source].filter(Boolean).join(', ')}
                  </span>
                )}
              </span>
              <span className={css.right}>
                {results.length === 0 && <span className="told">{texts.notMade}</span>}
                {results.map(({ entry, result, values, person, at, with: instrument }) => (
                  <span key={entry} className={css.line}>
                    {values?.[0] && <span className={css.figure}>{figureText(values[0], measures, system)} </span>}
                    <b className={result === 'good' ? 'good' : result === 'bad' ? 'stop' : ''}>
                      {result !== 'not known' && <Mark name={result === 'good' ? 'done' : 'stop'} size={16} />}{' '}
                      {words.reading.answers[result]}
                    </b>
                    <span className={`told ${css.line}`}>
                      {[instrument, words.reading.by(person, sayWhen(hourOf(at), now_ms))].filter(Boolean).join(', ')}
                    </span>
                  </span>
                ))}
              </span>
            </li>
          )
        })}
      </ul>
    </Region>
  )
}

/** How many checks have a good result as their last word. */
export const goodChecks = ({ state }: JobOnSheet, { desk }: WorkedJob): number =>
  desk.checks.filter(({ id }) => checksOf(state, id).at(-1)?.result === 'good').length
