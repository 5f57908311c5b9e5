// Home: the jobs in hand, how far each has come, what is next, what waits, what somebody should look at, the clocks that run.
import { useMemo } from 'react'
import type { Entry } from '../../journal/entry.ts'
import { runningClocks } from '../model/clocks.ts'
import { goOnWith, type HomeJob, homeJob, type ToLookAt } from '../model/homeJob.ts'
import { type JobOnSheet, jobOnSheet, stagesOf, timesOf } from '../model/jobOnSheet.ts'
import { STAGES } from '../model/stages.ts'
import type { ClockSheet } from '../model/workedJob.ts'
import { Action, ActionLink } from '../parts/Action.tsx'
import { ClockGauge } from '../parts/ClockGauge.tsx'
import { Mark } from '../parts/Mark.tsx'
import { Region } from '../parts/Region.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { useNow } from '../parts/useNow.ts'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'
import { words } from '../words/words.ts'
import { clocksOf } from './clocksAtHand.ts'
import css from './Home.module.css'
import { buildPath, sequencePath } from './paths.ts'
import { saysOf, useShopBlock } from './useBlock.ts'

const texts = words.home
/** The shop's own stream: sign-ins and devices, no job. */
const SHOP = 'shop'
/** A long list is not read at a bench: so many names, then how many more. */
const MOST_NAMES = 3

interface Listed {
  readonly sheet: JobOnSheet
  readonly job: HomeJob
}

export function Home() {
  const { streams, me, person, waiting, contact } = useBenchState()
  const jobs = useMemo(() => jobsIn(streams), [streams])
  const looks = jobs.flatMap(({ job }) => job.looks.map((look) => ({ job: job.number, look })))
  const block = useShopBlock(texts.title, looks.length, jobs.length)
  const now_ms = useNow(true)
  const clocks = jobs.flatMap(({ sheet }) =>
    runningClocks([{ clocks: clocksOf(sheet.number) }], (step) => timesOf(sheet, step), now_ms).map((running) => ({
      job: sheet.number,
      running,
    })),
  )
  const first = firstOf(jobs, clocks[0]?.job)
  return (
    <Sheet
      label={texts.title}
      head={<NameLine />}
      notes={
        <>
          {clocks.length > 0 && (
            <Region place={0} isBare label={texts.clocks}>
              {clocks.map(({ job, running }) => (
                <ClockGauge
                  key={`${job} ${running.clock.id}`}
                  running={running}
                  label={texts.clock(job, running.clock.says)}
                />
              ))}
            </Region>
          )}
          <Region place={7} title={texts.device}>
            <InStep waiting={[...waiting.values()].reduce((sum, n) => sum + n, 0)} />
          </Region>
          <Region place={8} title={texts.book}>
            <p className="told">{texts.bookWhy}</p>
            <p>
              <a className={css.link} href="/books">
                {texts.books}
              </a>
            </p>
          </Region>
        </>
      }
      actions={
        <>
          {person === undefined && me?.enrolled !== false && (
            <ActionLink isMain={!first} to="/device" also={texts.whoAlso}>
              {texts.who}
            </ActionLink>
          )}
          {first && contact.is === 'refused' && me?.enrolled === false && (
            <ActionLink to="/enrol">{words.enrol.title}</ActionLink>
          )}
          {first ? (
            <GoOn job={first} clock={clocks[0]?.job === first.number ? clocks[0].running.clock : undefined} />
          ) : (
            me?.enrolled === false && (
              <ActionLink isMain to="/enrol">
                {words.enrol.title}
              </ActionLink>
            )
          )}
        </>
      }
      block={<TitleBlock {...block} />}
    >
      {jobs.length === 0 ? (
        <FirstRun />
      ) : (
        <>
          <h1 className="aside">{texts.title}</h1>
          <ul className={css.jobs}>
            {jobs.map((listed) => (
              <JobRow key={listed.job.number} {...listed} />
            ))}
          </ul>
          {looks.length > 0 && (
            <Region place={5} title={texts.looks(looks.length)}>
              <ul className={css.lookList}>
                {looks.map(({ job, look }) => (
                  <LookRow key={`${job} ${look.what} ${look.about}`} job={job} look={look} />
                ))}
              </ul>
            </Region>
          )}
          {jobs.every(({ job }) => job.isInvented) && <HowToBegin />}
        </>
      )}
    </Sheet>
  )
}

/** What was touched last stands first; what is built up to the end stands last. */
const jobsIn = (streams: ReadonlyMap<string, readonly Entry[]>): readonly Listed[] =>
  [...streams]
    .filter(([stream, entries]) => stream !== SHOP && entries.some(({ kind }) => kind === 'job-opened'))
    .map(([stream, entries]) => {
      const sheet = jobOnSheet(stream, entries)
      return { sheet, job: homeJob(sheet) }
    })
    .sort(
      (a, b) =>
        Number(isBuilt(a.job)) - Number(isBuilt(b.job)) ||
        b.job.touched_ms - a.job.touched_ms ||
        a.job.number.localeCompare(b.job.number),
    )

const isBuilt = ({ of, next }: HomeJob): boolean => of > 0 && !next

/** A job whose clock runs comes before the one that was touched last. */
const firstOf = (jobs: readonly Listed[], hurried: string | undefined): HomeJob | undefined =>
  (jobs.find(({ job }) => job.number === hurried) ?? jobs.find(({ job }) => !isBuilt(job)) ?? jobs[0])?.job

function GoOn({ job, clock }: { job: HomeJob; clock: ClockSheet | undefined }) {
  const { number, of } = job
  const on = goOnWith(job, clock)
  if (on)
    return (
      <ActionLink isMain to={buildPath(number, on.step)} also={on.hasClock ? texts.itsClock(on.step) : on.step}>
        {on.number === undefined ? texts.goOnWith(number) : texts.goOn(number, on.number)}
      </ActionLink>
    )
  return (
    <ActionLink
      isMain
      to={of > 0 ? buildPath(number) : sequencePath(number)}
      also={of > 0 ? texts.built : texts.noSequence}
    >
      {texts.openJob(number)}
    </ActionLink>
  )
}

function JobRow({ sheet, job }: Listed) {
  const { number, stage, next, of, signed, begun, looks, toGet, lost } = job
  return (
    <li className={css.job}>
      <div>
        <h2>
          {job.unit} <small>{job.about.join(', ')}</small>
        </h2>
        <SmallLine job={sheet} present={stage} />
        <p>
          <b>{words.stages[stage]}:</b>{' '}
          {of === 0 ? texts.noSequence : next ? texts.next(next.number, of, next.step) : texts.built}
          {job.isInvented && <span className="told"> ({texts.sample})</span>}
        </p>
        {signed > 0 && next && <p className="told">{texts.steps(signed, of)}</p>}
        {begun.map(({ step, person }) => (
          <p key={step} className={css.state}>
            <Mark name="in hand" size={18} /> {texts.begun(step, person)}
          </p>
        ))}
        {lost.length > 0 && <p className="told">{texts.lost(named(lost))}</p>}
        {toGet.length > 0 && <p className="told">{texts.toGet(toGet.length, named(toGet))}</p>}
        {looks.length > 0 && (
          <p className={`${css.state} look`}>
            <Mark name="look" size={18} /> {texts.looks(looks.length)}
          </p>
        )}
      </div>
      <ActionLink to={of > 0 ? buildPath(number) : sequencePath(number)} isCentred also={texts.open}>
        {number}
      </ActionLink>
    </li>
  )
}

const named = (names: readonly string[]): string =>
  names.length <= MOST_NAMES + 1
    ? names.join(', ')
    : texts.andMore(names.slice(0, MOST_NAMES).join(', '), names.length - MOST_NAMES)

function LookRow({ job, look: { what, about, people, step } }: { job: string; look: ToLookAt }) {
  return (
    <li className={css.lookRow}>
      <Mark name="look" size={20} />
      <span>
        {texts.clock(job, texts.lookOf[what](about))}{' '}
        {people.length > 0 && <span className="told">{people.join(', ')}</span>}
      </span>
      {step !== undefined && (
        <ActionLink to={buildPath(job, step)} label={texts.lookAt(about)} isCentred>
          {texts.lookNow}
        </ActionLink>
      )}
    </li>
  )
}

function InStep({ waiting }: { waiting: number }) {
  const { contact } = useBenchState()
  const isWell = contact.is === 'in step' && waiting === 0
  return (
    <>
      <p className={css.inStep}>
        <Mark name={isWell ? 'done' : contact.is === 'refused' ? 'stop' : 'look'} size={20} />
        <span>{saysOf(contact)}</span>
      </p>
      {waiting > 0 && <p>{words.devices.waiting(waiting)}</p>}
    </>
  )
}

function FirstRun() {
  const bench = useBench()
  const { contact } = useBenchState()
  return (
    <div className={css.empty}>
      <h1>{contact.is === 'not met' ? texts.asking : texts.none}</h1>
      {contact.is === 'in step' ? (
        <p>{texts.noneInShop}</p>
      ) : (
        <>
          <p>{texts.noneWhy}</p>
          <Action onDo={() => bench.beInStep()}>{texts.askShop}</Action>
        </>
      )}
      <HowToBegin />
    </div>
  )
}

/** Where a job of one's own comes from. */
function HowToBegin() {
  return (
    <details className={css.begin} open>
      <summary>{texts.begin}</summary>
      <ol>
        {texts.beginHow.map(([says, command]) => (
          <li key={says}>
            {says}
            {command !== '' && (
              <>
                <br />
                <code>{command}</code>
              </>
            )}
          </li>
        ))}
      </ol>
    </details>
  )
}

function SmallLine({ job, present }: { job: JobOnSheet; present: HomeJob['stage'] }) {
  const states = stagesOf(job)
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
