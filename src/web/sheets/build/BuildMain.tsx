// The left of the Build sheet: what is done, drawn, set and proved, and what was said of it.

import { useEffect, useMemo, useRef, useState } from 'react'
import { hourOf } from '../../../journal/clock.ts'
import type { At } from '../../../journal/entry.ts'
import { gauge } from '../../../paper/drawings/gauge.ts'
import { holeMap } from '../../../paper/drawings/holeMap.ts'
import { metre } from '../../../quantity/constructors.ts'
import { printQuantity, type System } from '../../../quantity/printQuantity.ts'
import type { Saying } from '../../../record/entriesOfJob.ts'
import type { Fact } from '../../../record/state.ts'
import { checksOf, isDone, type JobOnSheet, type Mark as MarkName } from '../../model/jobOnSheet.ts'
import { judgeSize, type Typed } from '../../model/liveLimit.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import type { Second } from '../../model/signOff.ts'
import { figureWords } from '../../model/spoken.ts'
import type { SizeSheet, StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { Action, WordAction } from '../../parts/Action.tsx'
import { Drawing } from '../../parts/Drawing.tsx'
import { Mark, Rack } from '../../parts/Mark.tsx'
import { Reasons } from '../../parts/Reasons.tsx'
import { Region } from '../../parts/Region.tsx'
import { SettingTable } from '../../parts/SettingTable.tsx'
import { Verdict } from '../../parts/Verdict.tsx'
import { words } from '../../words/words.ts'
import { LargerDrawing } from '../LargerDrawing.tsx'
import { useStepDrawing } from '../useDrawings.ts'
import { useRoom } from '../useRoom.ts'
import type { TakingPhoto } from '../useTakePhoto.tsx'
import { BeforeShut } from './BeforeShut.tsx'
import { BoltsRegion } from './BoltsRegion.tsx'
import css from './Build.module.css'
import { Photos } from './Photos.tsx'
import { SecondPerson } from './SecondPerson.tsx'
import { SequenceNotice } from './SequenceNotice.tsx'
import { Tries } from './Tries.tsx'
import type { Bolts } from './useBolts.ts'
import type { Trying } from './useTries.ts'

interface Parts {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly workedKey: string
  readonly step: StepSheetData
  readonly system: System
  readonly mark: MarkName
  readonly isWhy: boolean
  readonly trouble: string | undefined
  /** What is being typed for the check; it stands on the gauge before it counts. */
  readonly typed: Typed
  readonly now_ms: number
  readonly second: Second
  readonly photo: TakingPhoto
  /** The main action is to take the photo that is wanted. */
  readonly isPhotoMain: boolean
  readonly put: (said: readonly Saying[], then?: () => void) => void
  /** The setting that is tried here. */
  readonly trying: Trying | undefined
  readonly bolts: Bolts
  readonly onReadSize: (size: SizeSheet) => void
  readonly onTakeBack: (...entries: readonly string[]) => void
}

const MOST_MAP = 420

export function BuildMain(parts: Parts) {
  const { job, worked, workedKey, step, system, mark, isWhy, bolts, trouble, now_ms, onReadSize, onTakeBack } = parts
  const { tight } = bolts
  const texts = words.build
  const count = texts.stepOf(step.number, worked.steps.length)
  const numbers = useMemo(() => new Map(worked.items.map(({ part, number }) => [part, number])), [worked])
  const room = useRoom(system)
  const drawing = useStepDrawing(workedKey, step.step, room)
  const [isLarge, setLarge] = useState(false)
  // While the bolts are being tightened their map comes before anything else.
  const head = useRef<HTMLHeadingElement>(null)
  // Where the action that led here is gone, whoever cannot see the sheet is told the new step.
  // biome-ignore lint/correctness/useExhaustiveDependencies: a step after the other
  useEffect(() => {
    if (document.activeElement === document.body) head.current?.focus({ preventScroll: true })
  }, [job.number, step.step])
  const isTightening = tight.next !== undefined
  const maps = step.maps.length > 0 && (
    <Region place={isTightening ? 14 : 40}>
      <div className={css.maps}>
        {step.maps.map((map) => (
          <Drawing
            key={map.connection}
            isSmall
            drawn={holeMap(map, Math.min(room.width, MOST_MAP), {
              reached: tight.reached.get(map.connection) ?? new Map(),
              next: tight.next?.connection === map.connection ? tight.next.hole : undefined,
            })}
          />
        ))}
      </div>
    </Region>
  )
  const counted = <BoltsRegion {...{ worked, step, bolts, now_ms }} record={job.state.steps.get(step.step)} />
  const before = worked.steps.filter(({ number, step: id }) => number < step.number && !isDone(job.state.steps.get(id)))
  return (
    <>
      <div className={css.head}>
        <p className={css.count}>
          <span>
            {count.before} <b>{count.n}</b> {count.middle} <b>{count.of}</b>, {step.place}
            {step.crew ? `, ${texts.forCrew(step.crew)}` : step.people > 1 && `, ${texts.people(step.people)}`}
          </span>
          <span className={css.state}>
            <Mark name={mark} size={20} />
            {words.states[mark]}
          </span>
        </p>
        <h1 tabIndex={-1} ref={head}>
          {step.does}
        </h1>
        {before.length > 0 && mark === 'to do' && (
          <p className="told">{texts.earlier(listOf(before.map(({ number }) => number)))}</p>
        )}
      </div>
      {trouble !== undefined && (
        <p className={css.trouble} role="alert">
          <Mark name="stop" /> <b>{texts.notKept}</b> {trouble}
        </p>
      )}
      <SequenceNotice job={job} step={step.step} now_ms={now_ms} />
      {step.noReturn !== undefined && (
        <div className={css.noReturn}>
          <Rack />
          <p>
            <b>{texts.noReturn}</b> {step.noReturn}
          </p>
        </div>
      )}
      <Renewed job={job} step={step} />
      <BeforeShut job={parts.job} worked={parts.worked} step={parts.step} />
      <SecondPerson {...parts} />
      {isWhy && <Why step={step} />}
      {isTightening && maps}
      {isTightening && counted}
      <div className={css.drawn}>
        <div>
          {!step.isDrawn ? (
            <p className={css.empty}>{texts.noDrawing}</p>
          ) : drawing ? (
            <>
              <Drawing drawn={drawing} numbers={numbers} />
              <WordAction onDo={() => setLarge(true)}>{words.drawing.larger}</WordAction>
              {isLarge && (
                <LargerDrawing
                  of={{ step: step.step }}
                  title={step.does}
                  {...{ system, numbers }}
                  onClose={() => setLarge(false)}
                />
              )}
            </>
          ) : (
            <p className={css.empty}>{texts.drawing}</p>
          )}
        </div>
        <Facts step={step} worked={worked} system={system} />
      </div>
      {!isTightening && maps}
      {!isTightening && counted}
      <CheckReadings {...parts} onTakeBack={onTakeBack} />
      {parts.trying && (
        <Tries
          {...{ trying: parts.trying, system, now_ms }}
          isOpen={!isDone(job.state.steps.get(step.step))}
          onTakeBack={(entries) => onTakeBack(...entries)}
        />
      )}
      <Photos {...parts} isMain={parts.isPhotoMain} />
      {step.within.length > 0 && (
        <Region title={texts.within} place={50}>
          <ol className={css.list}>
            {step.within.map((text, index) => (
              <li key={text}>
                <span className={css.no}>{index + 1}</span>
                <span>{text}</span>
              </li>
            ))}
          </ol>
        </Region>
      )}
      {step.settings.length > 0 && (
        <Region title={texts.settings} place={60}>
          {step.settings.map((setting) => (
            <SettingTable key={`${setting.connection} ${setting.title}`} setting={setting} />
          ))}
        </Region>
      )}
      {step.sizes.length > 0 && (
        <Region title={words.reading.sizes} place={70}>
          {step.sizes.map((size) => (
            <Size key={size.feature} size={size} {...{ job, system, now_ms, onReadSize, onTakeBack }} />
          ))}
        </Region>
      )}
      {(step.part?.note !== undefined || step.proofs.length > 0 || step.warnings.length > 0) && (
        <Region place={80}>
          <Texts title={texts.notes} texts={step.part?.note === undefined ? [] : [step.part.note]} />
          <Texts title={texts.proofs} texts={step.proofs} />
          <Texts title={texts.warnings} texts={step.warnings} />
        </Region>
      )}
      <SaidOfIt {...parts} />
    </>
  )
}

/** `3, 4, 7 … 12`: a long row is not read at a bench. */
function listOf(numbers: readonly number[]): string {
  const [first, last] = [numbers.slice(0, 4), numbers.at(-1)]
  return numbers.length <= 5 ? numbers.join(', ') : `${first.join(', ')} … ${last}`
}

/** Decided to be renewed: the old one, which may lie nearer, does not go back in. */
function Renewed({ job, step }: Pick<Parts, 'job' | 'step'>) {
  const part = step.part && job.state.parts.get(step.part.id)
  if (part?.decision?.decision !== 'renew' || part.part !== step.step || isDone(job.state.steps.get(step.step)))
    return null
  return (
    <div className={css.notice}>
      <p>
        <Mark name="look" />
        <span>
          <b>{words.build.renewed(part.part)}</b> {part.in.length === 0 && words.build.notIn}
        </span>
      </p>
    </div>
  )
}

function Facts({ step, worked, system }: { step: StepSheetData; worked: WorkedJob; system: System }) {
  const texts = words.build
  const next = worked.steps[step.number]
  const before = [
    ...step.setUp,
    ...(step.wait_s >= 60 ? [texts.wait(printQuantity(seconds(step.wait_s), 'time', { system }))] : []),
  ]
  return (
    <dl className={css.facts}>
      {step.part && (
        <div>
          <dt>{texts.underWork}</dt>
          <dd>
            <b>
              {step.part.number} {step.part.id}
            </b>
            {step.part.mass_kg !== undefined && (
              <>
                <br />
                {figureWords({ low: step.part.mass_kg, high: step.part.mass_kg }, 'mass', system)}
              </>
            )}
          </dd>
        </div>
      )}
      {step.tools.length > 0 && (
        <div>
          <dt>{texts.tools}</dt>
          <dd>{step.tools.join(', ')}</dd>
        </div>
      )}
      {before.length > 0 && (
        <div>
          <dt>{texts.before}</dt>
          <dd>{before.join(', ')}</dd>
        </div>
      )}
      <div>
        <dt>{texts.takes}</dt>
        <dd>{texts.minutes(Math.round(step.usual_s / 60))}</dd>
      </div>
      {next && (
        <div>
          <dt>{texts.next}</dt>
          <dd>
            {next.number} {next.does}
          </dd>
        </div>
      )}
    </dl>
  )
}

const seconds = (s: number) => s as Parameters<typeof printQuantity<'time'>>[0]

function Why({ step }: { step: StepSheetData }) {
  const texts = words.build
  return (
    <Region title={texts.why} place={12} isWell>
      <Reasons why={step.why} className={css.why} />
    </Region>
  )
}

function Texts({ title, texts }: { title: string; texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <>
      <h3>{title}</h3>
      <ul className={css.bullets}>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  )
}

/** The readings of the check of this step on its gap gauge; second ones stand beside first ones. */
function CheckReadings({ job, worked, step, system, typed, trying, now_ms, onTakeBack }: Parts) {
  const { check } = step
  if (!check) return null
  const results = checksOf(job.state, check.id)
  if (results.length === 0 && !check.limit) return null
  const limit = check.limit
  const judged = results.flatMap((result) => {
    const value = result.values?.[0]
    if (!value || !limit) return []
    const uncertainty = worked.instruments.find(({ name }) => name === result.with)?.uncertainty_m ?? 0
    const as = check.measures
    return [{ result, value, uncertainty, judged: judgeSize(value.high, { as, limit, system, uncertainty }) }]
  })
  // What was read at a try stands with the tries.
  const listed = results.filter(({ entry }) => !trying?.view.resultEntries.has(entry))
  return (
    <Region title={words.reading.readings} place={25}>
      {limit && (
        <div className={css.gauge}>
          <Drawing
            isSmall
            drawn={gauge({
              title: check.settles ?? check.id,
              dimension: check.measures,
              limit: {
                ...(limit.low !== undefined && { low: limit.low }),
                ...(limit.high !== undefined && { high: limit.high }),
              },
              readings: [
                ...judged.map(({ value, uncertainty, judged: { is } }) => ({
                  low: value.low,
                  high: value.high,
                  ...(uncertainty > 0 && { uncertainty }),
                  is,
                })),
                ...(typed.kind === 'figure' ? [{ low: typed.value, high: typed.value, is: typed.judged.is }] : []),
              ],
              system,
              width: 440,
            })}
          />
          <p className="told">
            {words.standings[limit.standing]}
            {limit.source !== undefined && `, ${limit.source}`}
          </p>
        </div>
      )}
      {check.told !== undefined && <p>{check.told}</p>}
      <ol className={css.readings}>
        {listed.map((result, index) => {
          const found = judged.find((one) => one.result.entry === result.entry)
          return (
            <li key={result.entry}>
              <span className={css.no}>{index + 1}</span>
              <span className={css.value}>
                {found ? figureWords(found.value, check.measures, system) : words.reading.answers[result.result]}
              </span>
              <span className="told">{by(result, now_ms)}</span>
              <span>
                {found && <Verdict judged={found.judged} />}
                <WordAction onDo={() => onTakeBack(result.entry)}>{words.build.takeBack}</WordAction>
              </span>
            </li>
          )
        })}
      </ol>
    </Region>
  )
}

interface SizeParts {
  readonly size: SizeSheet
  readonly job: JobOnSheet
  readonly system: System
  readonly now_ms: number
  readonly onReadSize: (size: SizeSheet) => void
  readonly onTakeBack: (entry: string) => void
}

function Size({ size, job, system, now_ms, onReadSize, onTakeBack }: SizeParts) {
  const readings = job.state.readings.filter(({ part, feature }) => part === size.part && feature === size.feature)
  const limits = [
    ...(size.limitNew ? [`${words.build.limits.new} ${size.limitNew.text}`] : []),
    ...(size.limitWorn ? [`${words.build.limits.worn} ${size.limitWorn.text}`] : []),
  ].join('; ')
  const limit = { ...size.limitNew, ...size.limitWorn }
  return (
    <div className={css.size}>
      <p>
        <b>{size.feature}</b>
        {size.what !== undefined && `, ${size.what}`}
        <br />
        <span className="told">{limits}</span>
      </p>
      <Action onDo={() => onReadSize(size)} label={`${words.reading.again}: ${size.feature}`}>
        {words.reading.again}
      </Action>
      <ol className={css.readings}>
        {readings.map((reading, index) => (
          <li key={reading.entry}>
            <span className={css.no}>{index + 1}</span>
            <span className={css.value}>{reading.reads ? figureWords(reading.reads, 'length', system) : '?'}</span>
            <span className="told">
              {by(reading, now_ms)}
              {reading.where !== undefined && `, ${reading.where}`}
            </span>
            <span>
              {reading.reads && (
                <Verdict judged={judgeSize(reading.reads.high, { as: 'length', limit, system, uncertainty: 0 })} />
              )}
              {reading.step !== undefined && (
                <WordAction onDo={() => onTakeBack(reading.entry)}>{words.build.takeBack}</WordAction>
              )}
            </span>
          </li>
        ))}
      </ol>
    </div>
  )
}

const by = (said: { person: string; at: At; by?: string | null; date?: string | null }, now_ms: number): string =>
  words.reading.by(said.by ?? said.person, said.date ?? sayWhen(hourOf(said.at), now_ms))

/** Signatures, beginnings and what was taken back: nothing is rubbed out. */
function SaidOfIt({ job, step, now_ms, onTakeBack, system }: Parts) {
  const texts = words.build
  const record = job.state.steps.get(step.step)
  const slips = [
    ...(job.slips.get(step.step) ?? []),
    ...(step.check && step.check.id !== step.step ? (job.slips.get(step.check.id) ?? []) : []),
  ]
  const starts = record?.starts ?? []
  const signed = record?.done ?? []
  if (starts.length + signed.length + slips.length === 0 && record?.stands !== 'undone') return null
  const people = new Set(signed.map(({ person }) => person))
  const line = (fact: Fact<'step-started'> | Fact<'step-signed'>, text: string) => (
    <li key={fact.entry}>
      <span>{text}</span>
      <WordAction onDo={() => onTakeBack(fact.entry)}>{texts.takeBack}</WordAction>
    </li>
  )
  return (
    <Region title={texts.others} place={90}>
      {people.size > 1 && (
        <p className="look">
          <Mark name="look" size={18} /> {texts.signedTwice}
        </p>
      )}
      {record?.stands === 'undone' && <p>{texts.undone}</p>}
      <ul className={css.said}>
        {starts.map((fact) => line(fact, texts.started(fact.person, sayWhen(hourOf(fact.at), now_ms))))}
        {signed.map((fact, index) =>
          line(fact, (index === 0 ? texts.signed : texts.alsoSigned)(fact.person, sayWhen(hourOf(fact.at), now_ms))),
        )}
        {slips.map((slip) => (
          <li key={slip.entry} className={css.gone}>
            {texts.takenBack(slipWord(slip.what, slip.reads, system), slip.by, sayWhen(slip.at_ms, now_ms))}
          </li>
        ))}
      </ul>
    </Region>
  )
}

function slipWord(what: string, reads: number | undefined, system: System): string {
  if (reads !== undefined) return printQuantity(metre(reads), 'length', { system })
  if (what === 'photo') return words.photos.aPhoto
  return what === 'step-signed'
    ? words.build.aSignature
    : what === 'step-started'
      ? words.build.aStart
      : words.build.aReading
}
