// Kit: one list of what to get and why, with what came in.
import { hourOf } from '../../../journal/clock.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { Region } from '../../parts/Region.tsx'
import { useNow } from '../../parts/useNow.ts'
import { words } from '../../words/words.ts'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'

const texts = words.desk

export function Kit({ job: { state }, worked: { desk } }: Stands) {
  const now_ms = useNow(false)
  const groups = [...new Set(desk.kit.map(({ group }) => group))]
  if (groups.length === 0)
    return (
      <Region place={10}>
        <p>{texts.nothingToGet}</p>
      </Region>
    )
  return groups.map((group, index) => {
    const lines = desk.kit.filter((line) => line.group === group)
    return (
      <Region key={group} place={10 + index} title={`${texts.groups[group]} (${lines.length})`}>
        <ul className={css.rows}>
          {lines.map(({ part, what, pieces, amount, number, from, price, lead, why }) => (
            <li key={what} className={css.row}>
              <span>
                <b>{what}</b>
                <span className={`told ${css.line}`}>{number}</span>
              </span>
              <span>
                {why.map(({ says, standing, source }) => (
                  <span key={says} className={css.line}>
                    {says}{' '}
                    <span className="told">{[words.standings[standing], source].filter(Boolean).join(', ')}</span>
                  </span>
                ))}
                {(part === undefined ? [] : (state.parts.get(part)?.in ?? [])).map(
                  ({ entry, person, at, pieces: came }) => (
                    <b key={entry} className={css.line}>
                      {texts.cameIn(person, sayWhen(hourOf(at), now_ms), came)}
                    </b>
                  ),
                )}
              </span>
              <span className={css.right}>
                <span>{amount ?? (pieces === undefined ? texts.unknownPieces : texts.pieces(pieces))}</span>
                <span className={`told ${css.line}`}>{[from, price, lead].filter(Boolean).join(', ')}</span>
              </span>
            </li>
          ))}
        </ul>
      </Region>
    )
  })
}
