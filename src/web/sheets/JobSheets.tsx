// The sheets of one job. While it is worked up, or where something is missing, a calm sheet says so and what can be done.
import type { ReactNode } from 'react'
import { useState } from 'react'
import { Redirect } from 'wouter'
import { type JobOnSheet, stagesOf, stepInHand } from '../model/jobOnSheet.ts'
import type { Stage } from '../model/stages.ts'
import { Action, ActionLink } from '../parts/Action.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine, StageLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'
import { words } from '../words/words.ts'
import { BuildSheet } from './build/BuildSheet.tsx'
import css from './Plain.module.css'
import { buildPath, sequencePath, stagePaths } from './paths.ts'
import { SequenceSheet } from './sequence/SequenceSheet.tsx'
import { saysOf, useBlock, useShopBlock } from './useBlock.ts'
import { useJob, type Working } from './useJob.ts'
import { useSystem } from './usePreference.ts'

export function SequenceRoute({ number }: { number: string }) {
  const [system] = useSystem()
  const [isAnew, setAnew] = useState(false)
  const at = useJob(number, system, isAnew)
  const { job, worked, workedKey, working } = at
  if (!job) return <NoJob number={number} />
  if (!worked || working.is === 'trouble' || working.is === 'no unit' || (isAnew && working.is !== 'done'))
    return (
      <WorkingSheet job={job} stage="sequence" working={working} again={at.again} stop={at.stop}>
        {isAnew && <Action onDo={() => setAnew(false)}>{words.sequence.keep}</Action>}
      </WorkingSheet>
    )
  return (
    <SequenceSheet
      {...{ job, worked, workedKey, system, isAnew }}
      onAnew={() => setAnew(true)}
      onKeep={() => setAnew(false)}
    />
  )
}

export function BuildRoute({ number, step }: { number: string; step?: string | undefined }) {
  const [system] = useSystem()
  const { job, worked, workedKey, working, again, stop } = useJob(number, system)
  if (!job) return <NoJob number={number} />
  if (!job.state.sequence) return <NoSequence job={job} />
  if (!worked || working.is === 'trouble' || working.is === 'no unit')
    return <WorkingSheet job={job} stage="build" working={working} again={again} stop={stop} />
  const wanted = step ?? stepInHand(job) ?? worked.steps.at(-1)?.step
  if (step === undefined && wanted !== undefined) return <Redirect to={buildPath(number, wanted)} replace />
  const found = worked.steps.find(({ step: id }) => id === wanted)
  if (!found) return <NoStep job={job} step={step ?? ''} />
  return <BuildSheet key={found.step} {...{ job, worked, workedKey, system }} step={found} />
}

interface Calm {
  readonly job: JobOnSheet
  readonly stage: Stage
  readonly title: string
  readonly texts: readonly string[]
  readonly actions: ReactNode
}

function CalmSheet({ job, stage, title, texts, actions }: Calm) {
  const block = useBlock({ stage, sheet: '–', job, worked: undefined })
  return (
    <Sheet
      label={title}
      head={<StageLine present={stage} states={stagesOf(job)} to={stagePaths(job.number)} />}
      actions={actions}
      block={<TitleBlock {...block} />}
    >
      <div className={css.plain} aria-live="polite">
        <h1>{title}</h1>
        {texts.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
    </Sheet>
  )
}

interface Shown {
  readonly job: JobOnSheet
  readonly stage: Stage
  readonly working: Working
  readonly again: () => void
  readonly stop: () => void
  readonly children?: ReactNode
}

export function WorkingSheet({ job, stage, working, again, stop, children }: Shown) {
  const texts = words.working
  const says =
    working.is === 'searching'
      ? [texts.searching(working.states)]
      : working.is === 'stopped'
        ? [texts.stopped]
        : working.is === 'no unit'
          ? [texts.noUnit]
          : working.is === 'trouble'
            ? [texts.broken, ...working.says]
            : [texts.reading]
  const isRunning = working.is === 'searching' || working.is === 'reading' || working.is === 'done'
  return (
    <CalmSheet
      job={job}
      stage={stage}
      title={texts.title}
      texts={says}
      actions={
        <>
          {isRunning ? (
            <Action isMain onDo={stop}>
              {texts.stop}
            </Action>
          ) : (
            <Action isMain onDo={again}>
              {texts.again}
            </Action>
          )}
          {children}
          <ActionLink to="/">{texts.toHome}</ActionLink>
        </>
      }
    />
  )
}

function NoSequence({ job }: { job: JobOnSheet }) {
  return (
    <CalmSheet
      job={job}
      stage="build"
      title={words.build.noSequence}
      texts={[words.build.noSequenceWhy]}
      actions={
        <ActionLink isMain to={sequencePath(job.number)}>
          {words.build.toSequence}
        </ActionLink>
      }
    />
  )
}

function NoStep({ job, step }: { job: JobOnSheet; step: string }) {
  return (
    <CalmSheet
      job={job}
      stage="build"
      title={words.build.title}
      texts={[words.build.noStep(step)]}
      actions={
        <ActionLink isMain to={buildPath(job.number)}>
          {words.build.inHand}
        </ActionLink>
      }
    />
  )
}

export function NoJob({ number }: { number: string }) {
  const bench = useBench()
  const { contact } = useBenchState()
  const block = useShopBlock(number, 0)
  const texts = words.working
  return (
    <Sheet
      label={number}
      head={<NameLine />}
      actions={
        <>
          <ActionLink isMain to="/">
            {texts.toHome}
          </ActionLink>
          <Action onDo={() => bench.beInStep()}>{texts.askShop}</Action>
        </>
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.plain} aria-live="polite">
        <h1>{texts.noJob(number)}</h1>
        <p>
          {contact.is === 'in step'
            ? texts.noJobInShop
            : contact.is === 'not met'
              ? texts.noJobAsking
              : contact.is === 'away'
                ? texts.noJobAway
                : saysOf(contact)}
        </p>
      </div>
    </Sheet>
  )
}
