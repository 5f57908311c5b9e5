// Strip and Decide: where each part lies and in what condition, or what was decided for it.
import type { JobOnSheet } from '../../model/jobOnSheet.ts'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import css from './Stages.module.css'

const texts = words.desk
const ORDER = ['renew', 'repair', 'reuse', 'none'] as const

export function Parts({ job, of }: { job: JobOnSheet; of: 'strip' | 'decide' }) {
  const parts = [...job.state.parts.values()]
  if (parts.length === 0)
    return (
      <Region place={10}>
        <p>{texts.noParts}</p>
      </Region>
    )
  const row = ({ part, where, conditions, decision }: (typeof parts)[number]) => (
    <li key={part} className={css.row}>
      <b>{part}</b>
      <span>
        {conditions.map(({ entry, condition, person }) => (
          <span key={entry} className={css.line}>
            {condition} <span className="told">{person}</span>
          </span>
        ))}
        {of === 'decide' && decision?.why !== undefined && <span className={css.line}>{decision.why}</span>}
      </span>
      <span className="told">
        {of === 'strip'
          ? where === undefined || where === 'not known'
            ? texts.notKnown
            : texts.where(where)
          : decision?.person}
      </span>
    </li>
  )
  if (of === 'strip')
    return (
      <Region place={10} title={texts.partCount(parts.length)}>
        <ul className={css.rows}>{parts.map(row)}</ul>
      </Region>
    )
  return ORDER.map((decided, index) => {
    const group = parts.filter(({ decision }) => (decision?.decision ?? 'none') === decided)
    if (group.length === 0) return null
    return (
      <Region key={decided} place={10 + index} title={`${texts.decisions[decided]} (${group.length})`}>
        <ul className={css.rows}>{group.map(row)}</ul>
      </Region>
    )
  })
}
