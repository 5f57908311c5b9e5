// What to set at a step: figures with their unit, limit, verdict, and on what they rest one tap away.
import { useState } from 'react'
import type { FigureSheet, SettingSheet } from '../model/workedJob.ts'
import { words } from '../words/words.ts'
import { WordAction } from './Action.tsx'
import { Mark } from './Mark.tsx'
import css from './SettingTable.module.css'

export function SettingTable({ setting }: { setting: SettingSheet }) {
  const [isOpen, setOpen] = useState(false)
  const { title, figures, says, missing } = setting
  return (
    <div className={css.setting}>
      <h3>{title}</h3>
      <dl className={css.rows}>
        {figures.map((figure) => (
          <div key={`${figure.label} ${figure.text}`} className={css.row}>
            <dt>
              {figure.label}
              {figure.note !== undefined && <span className={css.small}>{figure.note}</span>}
              {isOpen && (
                <span className={css.small}>
                  {words.basis[figure.basis]}, {words.standings[figure.rests]}. {words.build.source}: {figure.source}
                </span>
              )}
            </dt>
            <dd>
              <Figure figure={figure} />
            </dd>
          </div>
        ))}
      </dl>
      {says.map((text) => (
        <p key={text} className={css.says}>
          {text}
        </p>
      ))}
      {missing.length > 0 && (
        <p className={css.says}>
          <b>{words.build.missing}</b> {missing.join(' ')}
        </p>
      )}
      {figures.length > 0 && (
        <WordAction onDo={() => setOpen(!isOpen)} isOpen={isOpen}>
          {words.build.source}
        </WordAction>
      )}
    </div>
  )
}

function Figure({ figure: { text, other, limit, verdict, doubt, rests } }: { figure: FigureSheet }) {
  return (
    <>
      <span className={`${css.figure} ${rests === 'seen' ? '' : css.loose}`}>{text}</span>
      {rests !== 'seen' && <span className={css.source}> {words.standings[rests]}</span>}
      {other !== undefined && <span className={`${css.small} figure`}>{other}</span>}
      {(limit !== undefined || verdict) && (
        <span className={css.small}>
          {doubt ? <b>{words.doubts[doubt.is](doubt.at)}</b> : limit}{' '}
          {verdict && !doubt && (
            <span className={`${css.verdict} ${verdict === 'within' ? 'good' : verdict === 'out' ? 'stop' : ''}`}>
              {verdict === 'within' && <Mark name="done" size={15} />}
              {verdict === 'out' && <Mark name="stop" size={15} />}
              {words.judgements[verdict]}
            </span>
          )}
        </span>
      )}
    </>
  )
}
