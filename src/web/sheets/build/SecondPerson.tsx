// The second person of a step: what is wanted, who cannot be it and why, and what somebody does who is alone.

import { useState } from 'react'
import { hourOf } from '../../../journal/clock.ts'
import { printProblem } from '../../../problem/problem.ts'
import type { Saying } from '../../../record/entriesOfJob.ts'
import type { JobOnSheet } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { photoOfRecheck, recheckSaying, type Second, secondSaying, whyNotSecond } from '../../model/signOff.ts'
import type { StepSheetData } from '../../model/workedJob.ts'
import { Action, ActionLink, ActionRow, WordAction } from '../../parts/Action.tsx'
import { Mark } from '../../parts/Mark.tsx'
import { Region } from '../../parts/Region.tsx'
import { useBench, useBenchState } from '../../sync/BenchContext.tsx'
import { words } from '../../words/words.ts'
import plain from '../Plain.module.css'
import { useDraft } from '../useDraft.ts'
import type { TakingPhoto } from '../useTakePhoto.tsx'
import css from './SecondPerson.module.css'

const texts = words.second

interface Parts {
  readonly job: JobOnSheet
  readonly step: StepSheetData
  readonly second: Second
  readonly photo: TakingPhoto
  readonly now_ms: number
  readonly put: (said: readonly Saying[], then?: () => void) => void
  readonly onTakeBack: (entry: string) => void
}

export function SecondPerson(parts: Parts) {
  const { job, step, second, now_ms, put, onTakeBack } = parts
  const { person } = useBenchState()
  if (second.is === 'given') {
    const { by, how } = second
    const record = job.state.steps.get(step.step)
    const isTwo = how === 'second person'
    return (
      <Region title={texts.title} place={24}>
        <p className={css.line}>
          <Mark name={isTwo ? 'done' : 'look'} size={20} />
          <span>
            {(isTwo ? texts.given : texts.one)(by.person, sayWhen(hourOf(by.at), now_ms))}
            {by.method !== undefined && <span className="told"> {texts.byMethod(by.method, by.says)}</span>}
          </span>
        </p>
        <WordAction onDo={() => onTakeBack(by.entry)}>{words.build.takeBack}</WordAction>
        {!isTwo && record && person !== undefined && !whyNotSecond(record, person) && (
          <div className={css.row}>
            <Action onDo={() => put([secondSaying(step, job.state.sequence?.entry)])} also={texts.still}>
              {texts.sign}
            </Action>
          </div>
        )}
      </Region>
    )
  }
  if (!step.wants?.secondPerson) return null
  if (second.is === 'not yet')
    return (
      <Region title={texts.title} place={24}>
        <p>{texts.before}</p>
        <Why step={step} />
      </Region>
    )
  return <Asked {...parts} />
}

const Why = ({ step: { wants } }: Pick<Parts, 'step'>) =>
  wants?.why !== undefined && (
    <span className={css.why}>
      {texts.why(wants.why)}{' '}
      <span className="told">
        {[words.standings[wants.standing], wants.source].filter((text) => text !== undefined).join(', ')}
      </span>
    </span>
  )

/** It is signed and waits. */
function Asked(parts: Parts) {
  const { job, step } = parts
  const { person } = useBenchState()
  const bench = useBench()
  const [isAlone, setAlone] = useState(false)
  const record = job.state.steps.get(step.step)
  const isFirst = record && person !== undefined ? whyNotSecond(record, person) : undefined
  const role = person === undefined ? undefined : bench.mayNot([secondSaying(step, undefined)], person)
  const whyNot = [isFirst, role].filter((problem) => problem !== undefined)
  const canCheckAgain = isFirst !== undefined && role === undefined
  return (
    <Region title={texts.title} place={13} isWell>
      <p className={css.line}>
        <Mark name="look" size={20} />
        <span>
          <b>{texts.wanted}.</b>
          <Why step={step} />
        </span>
      </p>
      {whyNot.map((problem) => (
        <p key={problem.code}>{printProblem(problem)}</p>
      ))}
      {whyNot.length === 0 && person !== undefined && <p>{texts.can(person)}</p>}
      <div className={css.row}>
        <ActionLink to={`/device?back=${encodeURIComponent(location.pathname)}`} also={texts.otherAlso}>
          {texts.other}
        </ActionLink>
        {canCheckAgain && !isAlone && (
          <Action onDo={() => setAlone(true)} also={texts.aloneAlso}>
            {texts.alone}
          </Action>
        )}
      </div>
      {canCheckAgain && isAlone && person !== undefined && (
        <Alone {...parts} person={person} onClose={() => setAlone(false)} />
      )}
    </Region>
  )
}

function Alone({
  job,
  step,
  photo,
  now_ms,
  put,
  person,
  onClose,
}: Parts & { readonly person: string; readonly onClose: () => void }) {
  const place = `${job.number} ${step.step}`
  const [method, setMethod] = useDraft(`${place} method`)
  const [found, setFound] = useDraft(`${place} found`)
  const taken = photoOfRecheck(job.state, step.step, person)
  const isReady = method.trim() !== '' && taken !== undefined
  const sign = () => {
    if (!taken || !isReady) return
    put([recheckSaying(step.step, { method: method.trim(), found: found.trim(), photo: taken.file })], () => {
      setMethod('')
      setFound('')
    })
  }
  return (
    <form
      className={`${plain.form} ${css.form}`}
      onSubmit={(event) => {
        event.preventDefault()
        sign()
      }}
    >
      <p>{texts.aloneWhy}</p>
      <label>
        {texts.method}
        <input value={method} maxLength={500} autoComplete="off" onChange={({ target }) => setMethod(target.value)} />
      </label>
      <label>
        {texts.found}
        <input value={found} maxLength={500} autoComplete="off" onChange={({ target }) => setFound(target.value)} />
      </label>
      <p>{taken ? texts.photo(sayWhen(hourOf(taken.at), now_ms)) : texts.noPhoto}</p>
      {!taken && <Action onDo={photo.ask}>{words.photos.take}</Action>}
      <ActionRow>
        <Action onDo={onClose}>{texts.close}</Action>
        <Action onDo={sign} isOff={!isReady} also={isReady ? undefined : texts.notReady}>
          {texts.signAlone}
        </Action>
      </ActionRow>
    </form>
  )
}
