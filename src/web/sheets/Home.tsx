// Home: the jobs in hand, how far each has come, and the clocks that run.
import { useMemo } from 'react'
import type { Entry } from '../../journal/entry.ts'
import { runningClocks } from '../model/clocks.ts'
import { isDone, type JobOnSheet, jobOnSheet, looksIn, stagesOf, stepInHand, timesOf } from '../model/jobOnSheet.ts'
import { STAGES } from '../model/stages.ts'
import { ActionLink } from '../parts/Action.tsx'
import { ClockGauge } from '../parts/ClockGauge.tsx'
import { Mark } from '../parts/Mark.tsx'
import { Region } from '../parts/Region.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useNow } from '../parts/useNow.ts'
import { useBenchState } from '../sync/BenchContext.tsx'
import { words } from '../words/words.ts'
import { clocksOf } from './clocksAtHand.ts'
import css from './Home.module.css'
import { buildPath, sequencePath } from './paths.ts'
import { useShopBlock } from './useBlock.ts'

const texts = words.home
/** The shop's own stream: sign-ins and devices, no job. */
const SHOP = 'shop'

export function Home() {
  const { streams, me } = useBenchState()
  const jobs = useMemo(() => jobsIn(streams), [streams])
  const block = useShopBlock(
    texts.title,
    jobs.reduce((sum, job) => sum + looksIn(job), 0),
  )
  const now_ms = useNow(true)
  const clocks = jobs.flatMap((job) =>
    runningClocks([{ clocks: clocksOf(job.number) }], (step) => timesOf(job, step), now_ms)
      .filter(({ left_s }) => left_s !== undefined)
      .map((running) => ({ job: job.number, running })),
  )
  const first = jobs.find((job) => job.state.sequence && stepInHand(job) !== undefined) ?? jobs[0]
  return (
    <Sheet
      label={texts.title}
      head={<NameLine />}
      notes={
        <>
          {clocks.length > 0 && (
            <Region place={4} isBare>
              {clocks.map(({ job, running }) => (
                <ClockGauge
                  key={`${job} ${running.clock.id}`}
                  running={running}
                  label={texts.clock(job, running.clock.says)}
                />
              ))}
            </Region>
          )}
          <Region place={5} title={texts.book}>
            <p className="told">{texts.bookWhy}</p>
            <p>
              <a href="/books">{texts.book}</a>
            </p>
          </Region>
        </>
      }
      actions={
        first ? (
          <GoOn job={first} />
        ) : (
          me?.enrolled === false && (
            <ActionLink isMain to="/enrol">
              {words.enrol.title}
            </ActionLink>
          )
        )
      }
      block={<TitleBlock {...block} />}
    >
      {jobs.length === 0 ? (
        <div className={css.empty}>
          <h1>{texts.none}</h1>
          <p>{texts.noneWhy}</p>
        </div>
      ) : (
        <>
          <h1 className="aside">{texts.title}</h1>
          <ul>
            {jobs.map((job) => (
              <JobRow key={job.number} job={job} />
            ))}
          </ul>
        </>
      )}
    </Sheet>
  )
}

const jobsIn = (streams: ReadonlyMap<string, readonly Entry[]>): readonly JobOnSheet[] =>
  [...streams]
    .filter(([stream, entries]) => stream !== SHOP && entries.some(({ kind }) => kind === 'job-opened'))
    .map(([stream, entries]) => jobOnSheet(stream, entries))
    .sort((a, b) => a.number.localeCompare(b.number))

function GoOn({ job }: { job: JobOnSheet }) {
  const step = stepInHand(job)
  const place = job.state.sequence?.steps.findIndex((one) => one.step === step) ?? -1
  return step !== undefined && place >= 0 ? (
    <ActionLink isMain to={buildPath(job.number, step)} also={step}>
      {texts.goOn(job.number, place + 1)}
    </ActionLink>
  ) : (
    <ActionLink isMain to={sequencePath(job.number)} also={texts.noSequence}>
      {texts.openJob(job.number)}
    </ActionLink>
  )
}

function JobRow({ job }: { job: JobOnSheet }) {
  const { state } = job
  const steps = state.sequence?.steps ?? []
  const signed = steps.filter(({ step }) => isDone(state.steps.get(step))).length
  const looks = looksIn(job)
  return (
    <li className={css.job}>
      <div>
        <h2>
          {unitName(job)}
          <small>{[state.opened.serial, job.job.owner].filter(Boolean).join(', ')}</small>
        </h2>
        <SmallLine job={job} />
        <p>
          <b>{words.stages[state.sequence ? 'build' : 'sequence']}:</b>{' '}
          {steps.length > 0 ? texts.steps(signed, steps.length) : texts.noSequence}
          {state.opened.invented && <span className="told"> ({texts.sample})</span>}
        </p>
        {looks > 0 && (
          <p className={css.looks}>
            <Mark name="look" size={18} />
            {words.block.looks(looks)}
          </p>
        )}
      </div>
      <ActionLink to={state.sequence ? buildPath(job.number) : sequencePath(job.number)} isCentred also={texts.open}>
        {job.number}
      </ActionLink>
    </li>
  )
}

/** `reversing-gearcase.unit.yaml` says what it is of. */
const unitName = ({ job }: JobOnSheet): string => {
  const name = (job.unit.split('/').at(-1) ?? '').replace(/\.unit\.ya?ml$/, '').replaceAll('-', ' ')
  return name === '' ? words.block.noOwner : name[0]?.toUpperCase() + name.slice(1)
}

function SmallLine({ job }: { job: JobOnSheet }) {
  const states = stagesOf(job)
  const present = job.state.sequence ? 'build' : 'sequence'
  return (
    <div className={css.line} aria-hidden="true">
      {STAGES.map((stage) => (
        <span key={stage}>
          {stage === present ? (
            <b />
          ) : states[stage] && states[stage] !== 'to come' ? (
            <Mark name={states[stage]} size={20} />
          ) : (
            <i />
          )}
        </span>
      ))}
    </div>
  )
}
