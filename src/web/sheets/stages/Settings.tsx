// Set: every setting with its sources, and what its tries read.
import { hourOf } from '../../../journal/clock.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { triesView } from '../../model/tries.ts'
import { ActionLink } from '../../parts/Action.tsx'
import { Region } from '../../parts/Region.tsx'
import { SettingTable } from '../../parts/SettingTable.tsx'
import { useNow } from '../../parts/useNow.ts'
import { Verdict } from '../../parts/Verdict.tsx'
import { words } from '../../words/words.ts'
import { buildPath } from '../paths.ts'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'

const texts = words.desk

export function Settings({ job, worked, system }: Stands) {
  const now_ms = useNow(false)
  const tried = worked.steps.filter(({ step, tries }) => tries?.check === step)
  return (
    <>
      {tried.map(({ step, tries }, index) => {
        const { rows } = triesView({ job, sheet: tries!, system, instruments: worked.instruments })
        // What may be set by other means is not promised to be.
        if (rows.length === 0 && !tries!.isShims) return null
        return (
          <Region key={step} title={`${texts.tried}: ${tries!.of}`} place={10 + index}>
            {rows.length === 0 && <p className="told">{words.tries.none}</p>}
            <ul className={css.rows}>
              {rows.flatMap((row) =>
                row.is === 'off' || row.made.takenBack
                  ? []
                  : [
                      <li key={row.made.entry} className={css.row}>
                        <span>
                          <b>{words.tries.number(row.made.number)}</b>
                          <span className={`told ${css.line}`}>
                            {words.reading.by(row.made.person, sayWhen(hourOf(row.made.at), now_ms))}
                          </span>
                        </span>
                        <span>{row.fitted}</span>
                        <span className={css.right}>
                          <span className={css.figure}>{row.read ?? words.tries.notRead}</span>
                          {row.judged && <Verdict judged={row.judged} />}
                        </span>
                      </li>,
                    ],
              )}
            </ul>
            {job.state.sequence && <ActionLink to={buildPath(job.number, step)}>{texts.toStep(step)}</ActionLink>}
          </Region>
        )
      })}
      <Region place={50}>
        {worked.desk.settings.length === 0 && <p>{texts.nothingToSet}</p>}
        {worked.desk.settings.map((setting) => (
          <SettingTable key={`${setting.connection} ${setting.title}`} setting={setting} />
        ))}
      </Region>
    </>
  )
}
