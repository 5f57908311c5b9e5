// What was counted of the bolts of a step: by whom and when where it is signed; before that how far this device is, with which wrench.
import { hourOf } from '../../../journal/clock.ts'
import type { StepState } from '../../../record/state.ts'
import { isDone } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import type { TightenedStage } from '../../model/tightened.ts'
import type { StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { WordAction } from '../../parts/Action.tsx'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import css from './Build.module.css'
import type { Bolts } from './useBolts.ts'

interface Parts {
  readonly worked: WorkedJob
  readonly step: StepSheetData
  readonly record: StepState | undefined
  readonly bolts: Bolts
  readonly now_ms: number
}

const texts = words.bolts

export function BoltsRegion({ worked, step, record, bolts, now_ms }: Parts) {
  const signed = (record?.signatures ?? []).filter(({ tightened, as }) => tightened && (as ?? 'done') === 'done')
  const isOpen = !isDone(record)
  const { tight, taps, wrench, uncounted } = bolts
  if (signed.length === 0 && (!isOpen || tight.total === 0)) return null
  return (
    <Region title={texts.title} place={tight.next ? 15 : 41}>
      {signed.map(({ entry, person, at, tightened = [], uncounted: why }) => (
        <div key={entry}>
          <ul className={css.bullets}>
            {tightened.map((stage) => (
              <li key={`${stage.connection} ${stage.stage}`}>{stageText(stage, step.maps.length > 1)}</li>
            ))}
          </ul>
          <p className="told">
            {texts.by(person, sayWhen(hourOf(at), now_ms))}
            {why !== undefined && `. ${texts.because(why)}`}
          </p>
        </div>
      ))}
      {isOpen && tight.total > 0 && (
        <>
          {taps > 0 && tight.next && (
            <p>
              {texts.half(taps, tight.total)} <WordAction onDo={bolts.anew}>{texts.anew}</WordAction>
            </p>
          )}
          {uncounted !== '' && (
            <p>
              {texts.because(uncounted)} <WordAction onDo={() => bolts.setUncounted('')}>{texts.after}</WordAction>
            </p>
          )}
          {worked.wrenches.length > 0 && (
            <label className={`${css.with} ${css.flush}`}>
              <span>{texts.wrench}</span>
              <select value={wrench} onChange={({ target }) => bolts.setWrench(target.value)}>
                <option value="">{texts.noWrench}</option>
                {worked.wrenches.map((one) => (
                  <option key={one.name} value={one.name}>
                    {one.name}
                    {one.range && ` ${one.range.text}`}
                    {!isFor(one, step) && `, ${texts.outOfRange}`}
                  </option>
                ))}
              </select>
            </label>
          )}
        </>
      )}
    </Region>
  )
}

/** Whether every stage lies in the range of the wrench; where nobody told one, nothing is said against it. */
const isFor = ({ range }: WorkedJob['wrenches'][number], { maps }: StepSheetData): boolean =>
  !range || maps.every(({ torques }) => torques.every(({ low, high }) => low >= range.low && high <= range.high))

function stageText({ connection, stage, says, count, of, rest, with: wrench }: TightenedStage, isNamed: boolean) {
  return [
    `${isNamed ? `${connection}: ` : ''}${texts.stage(count, of, stage, says)}`,
    ...(rest ? [texts.rest] : []),
    ...(wrench === undefined ? [] : [texts.with(wrench)]),
  ].join('; ')
}
