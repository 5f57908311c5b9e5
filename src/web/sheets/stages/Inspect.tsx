// Inspect: every reading against its limits, what was found, what nobody has measured.
import { hourOf } from '../../../journal/clock.ts'
import type { ReadingRow } from '../../model/desk.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { Mark } from '../../parts/Mark.tsx'
import { Region } from '../../parts/Region.tsx'
import { useNow } from '../../parts/useNow.ts'
import { words } from '../../words/words.ts'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'

const texts = words.desk

export function Inspect({ job: { state }, worked: { desk } }: Stands) {
  const now_ms = useNow(false)
  return (
    <>
      {state.findings.length > 0 && (
        <Region title={texts.findings} place={10}>
          <ul className={css.rows}>
            {state.findings.map(({ entry, says, person, at }) => (
              <li key={entry}>
                {says} <span className="told">{words.reading.by(person, sayWhen(hourOf(at), now_ms))}</span>
              </li>
            ))}
          </ul>
        </Region>
      )}
      <Region title={texts.readings} place={20}>
        {desk.readings.length === 0 && <p>{texts.noReadings}</p>}
        <ul className={css.rows}>
          {desk.readings.map((row, place) => (
            // Two readings of one feature may say the same word for word; they stand in their order.
            // biome-ignore lint/suspicious/noArrayIndexKey: the order is what tells them apart
            <li key={`${place} ${row.part} ${row.feature}`} className={css.row}>
              <span>
                <b>{row.part}</b>
                <span className={css.line}>{row.feature}</span>
              </span>
              <span>
                <span className={css.line}>{row.limits === '' ? texts.noLimit : row.limits}</span>
                <span className={`told ${css.line}`}>{row.how}</span>
              </span>
              <span className={css.right}>
                <span className={css.figure}>{row.reads ?? texts.notRead}</span>
                <Judgement row={row} />
              </span>
            </li>
          ))}
        </ul>
      </Region>
      {desk.unmeasured.length > 0 && (
        <Region title={`${texts.unmeasured} (${desk.unmeasured.length})`} place={30}>
          <ul className={css.rows}>
            {desk.unmeasured.map(({ part, feature, what, limits }) => (
              <li key={`${part} ${feature}`} className={css.row}>
                <span>
                  <b>{part}</b>
                  <span className={css.line}>{feature}</span>
                </span>
                <span className="told">{what}</span>
                <span>{limits}</span>
              </li>
            ))}
          </ul>
        </Region>
      )}
    </>
  )
}

function Judgement({ row: { is, because } }: { row: ReadingRow }) {
  return (
    <span className={css.line}>
      <b className={is === 'out' ? 'stop' : is === 'not known' ? '' : 'good'}>
        {is === 'out' && <Mark name="stop" size={16} />}
        {is !== 'out' && is !== 'not known' && <Mark name="done" size={16} />} {words.judgements[is]}
      </b>
      {is !== 'within' && because !== undefined && <span className="told"> {because}</span>}
    </span>
  )
}
