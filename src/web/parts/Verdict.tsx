// A verdict: word, mark and why; never a bare colour.
import type { Judged } from '../model/liveLimit.ts'
import { words } from '../words/words.ts'
import { Mark } from './Mark.tsx'
import css from './Reading.module.css'

const COLOUR: Readonly<Record<Judged['is'], string>> = { within: 'good', out: 'stop', 'not known': '' }

export function Verdict({ judged }: { judged: Judged }) {
  return (
    <div>
      <span className={`${css.verdict} ${COLOUR[judged.is]}`}>
        {judged.is === 'within' && <Mark name="done" />}
        {judged.is === 'out' && <Mark name="stop" />}
        {judged.is === 'not known' && <b aria-hidden="true">?</b>}
        {words.judgements[judged.is]}
      </span>
      {judged.because !== 'within' && <span className={css.why}>{because(judged)}</span>}
    </div>
  )
}

export function because({ because: why, by }: Judged): string {
  const texts = words.reading.because
  return why === 'under' || why === 'over' ? texts[why](by ?? '') : texts[why]
}
