// The Sequence sheet: the steps in their order with their reasons, the points of no return, and the half section beside.

import { type ReactNode, useMemo, useState } from 'react'
import { hourOf } from '../../../journal/clock.ts'
import { second } from '../../../quantity/constructors.ts'
import { printQuantity, type System } from '../../../quantity/printQuantity.ts'
import { hoursText } from '../../model/clocks.ts'
import { isDone, type JobOnSheet, stagesOf, stepInHand } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { markOfStep, secondOf, waitsFor } from '../../model/signOff.ts'
import type { StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { Action, ActionLink, WordAction } from '../../parts/Action.tsx'
import { Drawing } from '../../parts/Drawing.tsx'
import { Hero } from '../../parts/Hero.tsx'
import { Mark, Rack } from '../../parts/Mark.tsx'
import { Reasons } from '../../parts/Reasons.tsx'
import { Sheet } from '../../parts/Sheet.tsx'
import { StageLine } from '../../parts/StageLine.tsx'
import { TitleBlock } from '../../parts/TitleBlock.tsx'
import { words } from '../../words/words.ts'
import { LargerDrawing } from '../LargerDrawing.tsx'
import { buildPath, stagePaths } from '../paths.ts'
import { useBlock } from '../useBlock.ts'
import { useLineDrawings, useStepDrawing } from '../useDrawings.ts'
import { useNarrow } from '../useNarrow.ts'
import { usePut } from '../usePut.ts'
import css from './Sequence.module.css'

interface Parts {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly workedKey: string
  readonly system: System
  readonly isAnew: boolean
  readonly onAnew: () => void
  readonly onKeep: () => void
}

const texts = words.sequence
const BESIDE = { width: 320, mostHeight: 240 }

export function SequenceSheet({ job, worked, workedKey, system, isAnew, onAnew, onKeep }: Parts) {
  const { put, trouble } = usePut(job.number)
  const [chosen, setChosen] = useState<string>()
  const { plan, steps } = worked
  const block = useBlock({ stage: 'sequence', sheet: '1/1', job, worked })
  const step = steps.find(({ step: id }) => id === chosen)
  const isNarrow = useNarrow()
  const about = step && <About {...{ step, job, worked, workedKey, system }} />
  const standing = job.state.sequence
  const isProposed = isAnew || !standing
  const adopt = () =>
    put(
      [
        {
          kind: 'sequence-adopted',
          body: {
            steps: steps.map(({ step: id, mode, crew }) => ({ step: id, mode, ...(crew && { people: [...crew] }) })),
            ...(job.state.unit && { unit: job.state.unit.unit }),
            ...(standing && { from: standing.entry }),
            ...(plan.value && { value: [...plan.value] }),
            proven: plan.proven,
          },
        },
      ],
      onKeep,
    )
  const inHand = stepInHand(job)
  const goOn = steps.find(({ step: id }) => id === inHand)
  return (
    <Sheet
      label={texts.title}
      page={`${job.number}: ${texts.title}`}
      head={<StageLine present="sequence" states={stagesOf(job)} to={stagePaths(job.number)} />}
      notes={about && !isNarrow ? about : <Lines worked={worked} workedKey={workedKey} system={system} />}
      actions={
        <>
          {isProposed && plan.value && (
            <Action isMain onDo={adopt} also={texts.adoptAlso(steps.length)}>
              {texts.adopt}
            </Action>
          )}
          {!isProposed &&
            (goOn ? (
              <ActionLink isMain to={buildPath(job.number, goOn.step)} also={texts.goOnAlso}>
                {texts.goOn(goOn.number)}
              </ActionLink>
            ) : (
              <ActionLink isMain to={buildPath(job.number)}>
                {texts.allDone}
              </ActionLink>
            ))}
          {isAnew && standing && <Action onDo={onKeep}>{texts.keep}</Action>}
          {!isAnew && standing && (
            <Action onDo={onAnew} also={texts.anewAlso}>
              {texts.anew}
            </Action>
          )}
        </>
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.head}>
        <h1>{texts.head}</h1>
        <Value worked={worked} />
        {isProposed ? (
          plan.value && <Proof worked={worked} />
        ) : (
          <p className={css.proof}>
            <b className="good">
              <Mark name="done" size={18} />
              {texts.adopted(standing.person, sayWhen(hourOf(standing.at), Date.now()))}
            </b>
          </p>
        )}
        {isAnew && <p className="told">{texts.fresh}</p>}
        {trouble !== undefined && (
          <p role="alert">
            <b>{words.build.notKept}</b> {trouble}
          </p>
        )}
      </div>
      {plan.breaches.length > 0 && (
        <div className={css.breach}>
          <h2>{texts.breaches}</h2>
          {plan.breaches.map((says) => (
            <p key={says}>{says}</p>
          ))}
        </div>
      )}
      <Conflict worked={worked} />
      <Rows
        job={job}
        steps={steps}
        chosen={chosen}
        onChoose={(id) => setChosen(id === chosen ? undefined : id)}
        about={isNarrow ? about : undefined}
      />
    </Sheet>
  )
}

function Value({ worked: { plan } }: { worked: WorkedJob }) {
  if (!plan.value) return null
  const [hazard, elapsed_s, changes] = plan.value
  return (
    <p className={css.value}>
      <Hero text={hoursText(elapsed_s)} size={44} />
      <span>
        {`${texts.value.hours}, `}
        {texts.value.hazard(hazard)}, {texts.value.changes(changes)}
      </span>
    </p>
  )
}

function Proof({ worked: { plan, taken } }: { worked: WorkedJob }) {
  const [isOpen, setOpen] = useState(false)
  const rests = [
    ...taken.map((says) => ({ says, more: '' })),
    ...plan.rests.map(({ says, standing, matters }) => ({
      says,
      more: `${words.standings[standing]}; ${texts.matters[String(matters) as keyof typeof texts.matters]}`,
    })),
  ]
  return (
    <>
      <p className={css.proof}>
        {plan.proven ? (
          <>
            <b className="good">
              <Mark name="done" size={18} />
              {texts.proven}
            </b>
            <span>{texts.provenFor}.</span>
          </>
        ) : (
          <b>{texts.notProven}.</b>
        )}
      </p>
      {rests.length > 0 && (
        <details open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
          <summary>
            {texts.rests} ({rests.length})
          </summary>
          <ul>
            {rests.map(({ says, more }) => (
              <li key={says}>
                {says} <span className="told">{more}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}

function Conflict({ worked: { plan } }: { worked: WorkedJob }) {
  if (plan.value) return null
  if (!plan.conflict) return <p className={css.breach}>{texts.none}</p>
  return (
    <div className={css.breach}>
      <h2>{texts.conflict}</h2>
      <p>{texts.conflictWhy}</p>
      <ul>
        {plan.conflict.members.map(({ says, cheapest }) => (
          <li key={says}>
            {says} {cheapest && <b>({texts.cheapest})</b>}
          </li>
        ))}
      </ul>
    </div>
  )
}

interface RowParts {
  readonly job: JobOnSheet
  readonly steps: readonly StepSheetData[]
  readonly chosen: string | undefined
  readonly onChoose: (step: string) => void
  /** Where there is no room beside the list, it stands beneath the step it is about. */
  readonly about: ReactNode
}

function Rows({ job, steps, chosen, onChoose, about }: RowParts) {
  const names = texts.columns
  return (
    <div className={css.list}>
      <div className={css.names} aria-hidden="true">
        <span>{names.number}</span>
        <span>{names.step}</span>
        <span>{names.place}</span>
        <span>{names.minutes}</span>
        <span>{names.why}</span>
      </div>
      <ol aria-label={texts.list}>
        {steps.map((step) => (
          <Row
            key={step.step}
            step={step}
            job={job}
            isChosen={step.step === chosen}
            onChoose={onChoose}
            about={step.step === chosen && about}
          />
        ))}
      </ol>
    </div>
  )
}

interface OneRow {
  readonly step: StepSheetData
  readonly job: JobOnSheet
  readonly isChosen: boolean
  readonly onChoose: (step: string) => void
  readonly about: ReactNode
}

function Row({ step, job, isChosen, onChoose, about }: OneRow) {
  const [why] = step.why
  const before = [
    ...step.setUp.filter((text) => text.startsWith('turn ')).map(texts.turn),
    ...(step.wait_s >= 60 ? [texts.wait(printQuantity(second(step.wait_s), 'time', { system: 'metric' }))] : []),
  ]
  const mark = markOfStep(job, step)
  const lookedAt = secondOf(step, job.state.steps.get(step.step))
  const also = [
    ...waitsFor(job, step).map((what) => words.second.waits[what]),
    ...(lookedAt.is === 'given' && lookedAt.how !== 'second person' ? [words.second.oneShort] : []),
  ]
  return (
    <li>
      <button type="button" className={css.row} aria-pressed={isChosen} onClick={() => onChoose(step.step)}>
        <span className={css.no}>{step.number}</span>
        <span className={css.does}>
          <span>
            {before.length > 0 && <small>{before.join(' ')}</small>}
            {step.does}
            {also.length > 0 && <small>{also.join(', ')}</small>}
          </span>
          {mark !== 'to do' && (
            <>
              <Mark name={mark} size={20} />
              <span className="aside">{words.states[mark]}</span>
            </>
          )}
        </span>
        <span className={css.place}>
          {step.place}
          {step.crew && `, ${words.build.forCrew(step.crew)}`}
        </span>
        <span className={css.min}>{Math.round(step.usual_s / 60)}</span>
        <span className={css.reason}>
          {why ? `${why.side} ${why.number > 0 ? `${why.number}, ` : ''}${why.step}: ${why.says}` : texts.quickest}
        </span>
      </button>
      {about}
      {step.noReturn !== undefined && (
        <p className={css.noReturn}>
          <Rack />
          <span>
            <b>{texts.noReturn}</b> {step.noReturn}
          </span>
        </p>
      )}
    </li>
  )
}

interface AboutParts {
  readonly worked: WorkedJob
  readonly step: StepSheetData
  readonly job: JobOnSheet
  readonly workedKey: string
  readonly system: System
}

function About({ step, job, worked, workedKey, system }: AboutParts) {
  const drawing = useStepDrawing(workedKey, step.step, { ...BESIDE, system })
  const [isLarge, setLarge] = useState(false)
  const numbers = useNumbers(worked)
  const canGo =
    job.state.sequence?.steps.some(({ step: id }) => id === step.step) || isDone(job.state.steps.get(step.step))
  const title = texts.about(step.number, step.does)
  return (
    <div className={css.about}>
      <h2 aria-live="polite">{title}</h2>
      {canGo && <ActionLink to={buildPath(job.number, step.step)}>{texts.toStep(step.number)}</ActionLink>}
      {drawing && (
        <div>
          <Drawing drawn={drawing} numbers={numbers} />
          <WordAction onDo={() => setLarge(true)}>{words.drawing.larger}</WordAction>
        </div>
      )}
      <Reasons why={step.why} />
      {isLarge && (
        <LargerDrawing of={{ step: step.step }} {...{ title, system, numbers }} onClose={() => setLarge(false)} />
      )}
    </div>
  )
}

const useNumbers = ({ items }: WorkedJob): ReadonlyMap<string, number> =>
  useMemo(() => new Map(items.map(({ part, number }) => [part, number])), [items])

function Lines({ worked, workedKey, system }: { worked: WorkedJob; workedKey: string; system: System }) {
  const drawings = useLineDrawings(workedKey, worked.lines, { ...BESIDE, system })
  const [large, setLarge] = useState<string>()
  const numbers = useNumbers(worked)
  return (
    <div className={css.lines}>
      {(drawings ?? []).map(({ line, drawn }) => (
        <section key={line} className={css.line} aria-label={words.drawing.ofLine(line)}>
          <h2>{words.drawing.ofLine(line)}</h2>
          <WordAction onDo={() => setLarge(line)} label={`${words.drawing.larger}: ${words.drawing.ofLine(line)}`}>
            {words.drawing.larger}
          </WordAction>
          <Drawing drawn={drawn} numbers={numbers} />
        </section>
      ))}
      <details>
        <summary>{texts.items}</summary>
        <ol>
          {worked.items.map(({ number, part }) => (
            <li key={part}>
              <span className="figure">{number}</span> {part}
            </li>
          ))}
        </ol>
      </details>
      {large !== undefined && (
        <LargerDrawing
          of={{ line: large }}
          title={words.drawing.ofLine(large)}
          {...{ system, numbers }}
          onClose={() => setLarge(undefined)}
        />
      )}
    </div>
  )
}
