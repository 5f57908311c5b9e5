// The Build sheet: one step at a time, with its drawing, settings, cautions, readings, clocks, and the hand that signs it.
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { System } from '../../../quantity/printQuantity.ts'
import type { Saying } from '../../../record/entriesOfJob.ts'
import { clockText, runningClocks } from '../../model/clocks.ts'
import { type JobOnSheet, stagesOf, stepInHand, timesOf } from '../../model/jobOnSheet.ts'
import { liveLimit, type Typed } from '../../model/liveLimit.ts'
import { type Act, beginningOf, isAnswered, nextAct, resultOf, signatureOf } from '../../model/nextAct.ts'
import { nearCheck, nearSize, oddReading } from '../../model/oddReading.ts'
import { markOfStep, photoWanted, secondOf, secondSaying, whyNotSecond } from '../../model/signOff.ts'
import { offSayings, resultNow } from '../../model/tries.ts'
import type { SizeSheet, StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { Action, ActionLink, ActionRow, HoldAction, Question } from '../../parts/Action.tsx'
import { READING_ID } from '../../parts/ReadingField.tsx'
import { Sheet } from '../../parts/Sheet.tsx'
import { StageLine } from '../../parts/StageLine.tsx'
import { TitleBlock } from '../../parts/TitleBlock.tsx'
import { useNow } from '../../parts/useNow.ts'
import { useBench, useBenchState } from '../../sync/BenchContext.tsx'
import { words } from '../../words/words.ts'
import { buildPath, stagePaths } from '../paths.ts'
import { saysOfOdd } from '../saysOfOdd.ts'
import { useBlock } from '../useBlock.ts'
import { useDraft } from '../useDraft.ts'
import { useKeys } from '../useKeys.ts'
import { usePut } from '../usePut.ts'
import { useTakePhoto } from '../useTakePhoto.tsx'
import css from './Build.module.css'
import { BuildMain } from './BuildMain.tsx'
import { BuildNotes } from './BuildNotes.tsx'
import { TakeOffActions } from './TakeOffActions.tsx'
import { inNextTry } from './Tries.tsx'
import { useBolts } from './useBolts.ts'
import { useTries } from './useTries.ts'
import { WhyUncounted } from './WhyUncounted.tsx'

interface Parts {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly workedKey: string
  readonly step: StepSheetData
  readonly system: System
}

interface Asked {
  readonly says: string
  readonly onYes: () => void
  /** Missing: sign it. */
  readonly yes?: string
  /** A reading that can hardly be meant is asked about in its own words. */
  readonly odd?: { readonly typed?: string }
}

const MAIN_ID = 'main-action'

export function BuildSheet({ job, worked, workedKey, step, system }: Parts) {
  const { put, trouble } = usePut(job.number)
  const [, go] = useLocation()
  const [asked, setAsked] = useState<Asked>()
  const [size, setSize] = useState<SizeSheet>()
  const [isWhy, setWhy] = useState(false)
  const place = `${job.number} ${step.step}`
  const [instrument, setInstrument] = useDraft(
    `${job.number} instrument ${size ? `${size.part}.${size.feature}` : step.step}`,
  )
  const [text, setText] = useDraft(`${place} ${size ? `size ${size.feature}` : 'check'}`)
  const steps = worked.steps
  const now_ms = useNow(true)
  const running = runningClocks(steps, (id) => timesOf(job, id), now_ms)
  const limit = size ? (size.limitNew ?? size.limitWorn) : step.check?.limit
  const as = size ? 'length' : (step.check?.measures ?? 'length')
  const uncertainty =
    as === 'length' ? (worked.instruments.find(({ name }) => name === instrument)?.uncertainty_m ?? 0) : 0
  const typed: Typed = liveLimit(text, { as, limit, system, uncertainty })
  const record = job.state.steps.get(step.step)
  const result = resultNow(job.state, step)
  const trying = useTries({ job, worked, workedKey, step, system })
  const bolts = useBolts(place, step, record)
  const [isAskedWhy, setAskedWhy] = useState(false)
  const bolt = bolts.uncounted === '' ? bolts.tight.next : undefined
  const act = nextAct({ step, record, result, typed: size ? { kind: 'nothing' } : typed, running, bolt })
  const sequence = job.state.sequence?.entry
  const bench = useBench()
  const { person } = useBenchState()
  const photo = useTakePhoto(job.number, { step: step.step, ...(step.part && { part: step.part.id }) })
  const [without, setWithout] = useDraft(`${place} without photo`)
  const second = secondOf(step, record)
  const canBeSecond =
    second.is === 'wanted' &&
    record !== undefined &&
    (person === undefined || !(whyNotSecond(record, person) ?? bench.mayNot([secondSaying(step, sequence)], person)))
  const shutsNow = (step.wants?.shuts.length ?? 0) > 0 && act.act !== 'done'
  const wantedPhoto = photoWanted(job.state, step)
  const isPhotoMain = !size && wantedPhoto !== undefined && without === '' && (shutsNow || act.act === 'sign')
  // Somebody who looks is often near: the sheet stays and says that he is wanted.
  const goOn = () => step.wants?.secondPerson !== true && forward()
  const next = steps[step.number]
  const previous = steps[step.number - 2]
  const inHand = stepInHand(job)

  const nextOpen = steps.find(
    ({ number, step: id }) => number > step.number && job.state.steps.get(id)?.stands !== 'done',
  )
  const forward = () => nextOpen && go(buildPath(job.number, nextOpen.step))
  const signature = () => signatureOf(step, sequence, bolts.said())
  const signed = () => {
    bolts.anew()
    bolts.setUncounted('')
    goOn()
  }
  const sign = (also: readonly Saying[] = []) => put([...also, signature()], signed)
  const begin = () => {
    const starts = () => put([beginningOf(step, sequence)])
    if (act.act !== 'begin' || act.wait_s === undefined) return starts()
    setAsked({
      says: words.build.beginAsk(words.clocks.tooEarly(clockText(act.wait_s))),
      yes: words.build.beginYes,
      onYes: starts,
    })
  }
  const take = () => {
    if (typed.kind !== 'figure') return document.getElementById(READING_ID)?.focus()
    const near = size ? nearSize(size) : nearCheck(step.check)
    const odd = oddReading(text, { as, value: typed.value, near, system })
    if (!odd) return takeIt()
    setAsked({ says: saysOfOdd(typed.text, odd), onYes: takeIt, odd: odd.likely ? { typed: odd.likely.typed } : {} })
  }
  const takeIt = () => {
    if (typed.kind !== 'figure') return
    if (size) {
      const { value } = typed
      const body = {
        part: size.part,
        feature: size.feature,
        reads: { low: value, high: value, standing: 'seen' as const },
        step: step.step,
        ...(instrument !== '' && { with: instrument }),
      }
      return put([{ kind: 'reading', body }], () => {
        setText('')
        setSize(undefined)
      })
    }
    const said = resultOf(step, { typed, instrument: instrument || undefined })
    if (!said) return
    const isSigned = act.act === 'take' && act.signs
    const tried = trying?.with(said) ?? []
    put([...tried, said, ...(isSigned ? [signature()] : [])], () => {
      setText('')
      trying?.clear()
      if (isSigned) signed()
    })
  }
  const answer = (said: 'good' | 'bad' | 'not known') => {
    const check = step.check?.id ?? step.step
    const body = { check, result: said }
    if (said === 'good') sign([{ kind: 'check-result', body }])
    else put([{ kind: 'check-result', body }])
  }
  const notRead = () => {
    if (!step.check) return
    const said = { kind: 'check-result', body: { check: step.check.id, result: 'not known' } } as const
    put([...(trying?.with(said) ?? []), said], () => {
      setText('')
      trying?.clear()
    })
  }

  const tapMain = () => document.getElementById(MAIN_ID)?.querySelector<HTMLElement>('button, a')?.click()
  useKeys({
    n: next && (() => go(buildPath(job.number, next.step))),
    p: previous && (() => go(buildPath(job.number, previous.step))),
    h: inHand === undefined ? undefined : () => go(buildPath(job.number, inHand)),
    r: () => document.getElementById(READING_ID)?.focus(),
    s: tapMain,
    a: act.act === 'tighten' ? bolts.all : undefined,
    w: () => setWhy(!isWhy),
    c: photo.ask,
    g: isPhotoMain ? () => setWithout('yes') : undefined,
    escape: size && (() => setSize(undefined)),
  })

  const block = useBlock({ stage: 'build', sheet: `${step.number}/${steps.length}`, job, worked })
  const off = act.act === 'sign' && act.why?.is === 'bad' && !size ? trying?.off : undefined
  const comesOff = () => {
    const { first } = step.tries ?? {}
    if (!off || first === undefined) return
    put(offSayings(off.undo.map(({ step: id }) => id)), () => go(buildPath(job.number, first)))
  }
  const main = { act: size ? sizeAct(typed) : act, step, next: nextOpen }
  return (
    <Sheet
      label={words.build.title}
      page={`${job.number}, ${step.number}: ${step.does}`}
      head={<StageLine present="build" states={stagesOf(job)} to={stagePaths(job.number)} />}
      notes={
        <BuildNotes
          {...{ job, worked, step, system, running, now_ms, size, text, typed, instrument, setText, setInstrument }}
          isBegun={bolts.taps > 0 || record?.stands === 'started'}
          tried={trying && trying.view.standing.length > 0 ? { inNext: inNextTry(trying, system) } : undefined}
          onTake={take}
          onCloseSize={() => setSize(undefined)}
          onNotRead={notRead}
          isReading={size !== undefined || (step.check?.limit !== undefined && record?.stands !== 'done')}
        />
      }
      actions={
        asked ? (
          <Question
            asks={asked.says}
            yes={asked.yes ?? (asked.odd ? words.odd.yes : words.build.signYes)}
            no={asked.odd ? words.odd.no : words.build.signNo}
            instead={
              asked.odd?.typed === undefined
                ? undefined
                : {
                    says: words.odd.inUnit(asked.odd.typed),
                    onDo: () => {
                      setText(asked.odd?.typed ?? text)
                      setAsked(undefined)
                    },
                  }
            }
            onNo={() => {
              setAsked(undefined)
              if (asked.odd) setTimeout(() => document.getElementById(READING_ID)?.focus())
            }}
            onYes={() => {
              setAsked(undefined)
              asked.onYes()
            }}
          />
        ) : isAskedWhy ? (
          <WhyUncounted
            onNo={() => setAskedWhy(false)}
            onWhy={(why) => {
              bolts.setUncounted(why)
              setAskedWhy(false)
            }}
          />
        ) : (
          <>
            <div id={MAIN_ID} className={css.acts}>
              {off ? (
                <TakeOffActions
                  off={off}
                  number={trying?.view.number ?? 1}
                  onOff={comesOff}
                  onAsk={(says) => setAsked({ says, onYes: comesOff })}
                  onSign={() => setAsked({ says: words.build.signBadAsk(resultWord('bad')), onYes: () => sign() })}
                />
              ) : isPhotoMain ? (
                <PhotoFirst of={wantedPhoto} onTake={photo.ask} onWithout={() => setWithout('yes')} />
              ) : canBeSecond && !size ? (
                <Action
                  isMain
                  onDo={() => put([secondSaying(step, sequence)])}
                  also={words.second.signAlso(second.did.join(', '))}
                  keys="S"
                >
                  {words.second.sign}
                </Action>
              ) : (
                <MainAction
                  {...main}
                  onBegin={begin}
                  onTake={take}
                  onSign={() => sign()}
                  onBolt={bolts.tick}
                  onAllTight={bolts.all}
                  onNotCounted={() => setAskedWhy(true)}
                  canUntap={bolts.taps > 0}
                  onAsk={(says) => setAsked({ says, onYes: () => sign() })}
                  onAnswer={answer}
                  isAnswer={!size && isAnswered(step, result)}
                  isSize={size !== undefined}
                  nextPath={inHand === undefined ? undefined : buildPath(job.number, inHand)}
                  inHandNumber={steps.find(({ step: id }) => id === inHand)?.number}
                />
              )}
            </div>
            <ActionRow>
              {previous ? (
                <ActionLink to={buildPath(job.number, previous.step)} keys="P" isCentred>
                  {words.build.previous}
                </ActionLink>
              ) : (
                <Action onDo={() => undefined} isOff isCentred>
                  {words.build.previous}
                </Action>
              )}
              <Action onDo={() => setWhy(!isWhy)} keys="W" isCentred isPressed={isWhy} isChosen={isWhy}>
                {words.build.why}
              </Action>
              {next ? (
                <ActionLink to={buildPath(job.number, next.step)} keys="N" isCentred>
                  {words.build.next}
                </ActionLink>
              ) : (
                <Action onDo={() => undefined} isOff isCentred>
                  {words.build.next}
                </Action>
              )}
            </ActionRow>
          </>
        )
      }
      block={<TitleBlock {...block} />}
    >
      <BuildMain
        {...{ job, worked, workedKey, step, system, isWhy, bolts, now_ms, trying, second, put, isPhotoMain }}
        trouble={trouble ?? photo.trouble}
        typed={size ? { kind: 'nothing' } : typed}
        mark={markOfStep(job, step)}
        photo={photo}
        onReadSize={(one) => {
          setSize(one)
          setTimeout(() => document.getElementById(READING_ID)?.focus())
        }}
        onTakeBack={(...entries) => put(entries.map((of) => ({ kind: 'withdrawn', body: { of } })))}
      />
    </Sheet>
  )
}

interface FirstParts {
  readonly of: string
  readonly onTake: () => void
  readonly onWithout: () => void
}

/** What is shut is not seen again: the photo comes before it. */
const PhotoFirst = ({ of, onTake, onWithout }: FirstParts) => (
  <>
    <Action isMain onDo={onTake} also={of} keys="S">
      {words.photos.take}
    </Action>
    <ActionRow>
      <Action onDo={onWithout} keys="G">
        {words.photos.without}
      </Action>
    </ActionRow>
  </>
)

const sizeAct = (typed: Typed): Act =>
  typed.kind === 'figure' ? { act: 'take', text: typed.text, signs: false } : { act: 'type' }

interface MainParts {
  readonly act: Act
  readonly step: StepSheetData
  readonly next: StepSheetData | undefined
  readonly isAnswer: boolean
  /** A size of the part is read, which signs nothing. */
  readonly isSize: boolean
  readonly nextPath: string | undefined
  readonly inHandNumber: number | undefined
  /** So many bolts on, or back. */
  readonly onBolt: (by: 1 | -1) => void
  readonly onAllTight: () => void
  /** Signed though they are not counted: it is asked why. */
  readonly onNotCounted: () => void
  readonly canUntap: boolean
  readonly onBegin: () => void
  readonly onTake: () => void
  readonly onSign: () => void
  readonly onAsk: (says: string) => void
  readonly onAnswer: (said: 'good' | 'bad' | 'not known') => void
}

function MainAction({ act, step, next, isAnswer, isSize, nextPath, inHandNumber, ...on }: MainParts) {
  const texts = words.build
  const askBad = (says: string) => () => on.onAsk(texts.signBadAsk(resultWord(says)))
  const then = next ? texts.signAlso(next.does) : texts.signLast
  if (act.act === 'done')
    return nextPath !== undefined && inHandNumber !== undefined ? (
      <ActionLink to={nextPath} isMain keys="S">
        {texts.nextStep(inHandNumber)}
      </ActionLink>
    ) : (
      <Action onDo={() => undefined} isMain isOff>
        {texts.doneAll}
      </Action>
    )
  if (act.act === 'begin')
    return (
      <Action
        isMain
        onDo={on.onBegin}
        also={act.wait_s === undefined ? texts.beginAlso(act.clock) : words.clocks.tooEarly(clockText(act.wait_s))}
        keys="S"
      >
        {texts.begin}
      </Action>
    )
  if (act.act === 'tighten') {
    const { number, stage, stages, text, left } = act.bolt
    return (
      <>
        <Action isMain onDo={() => on.onBolt(1)} also={texts.boltAlso(stage, stages, text, left)} keys="S">
          {texts.bolt(number)}
        </Action>
        <ActionRow>
          <Action onDo={() => on.onBolt(-1)} isOff={!on.canUntap} isCentred>
            {texts.boltBack}
          </Action>
          <Action onDo={on.onAllTight} keys="A" isCentred>
            {texts.boltsAll}
          </Action>
          <Action onDo={on.onNotCounted} isCentred>
            {words.bolts.notCounted}
          </Action>
        </ActionRow>
      </>
    )
  }
  if (act.act === 'type')
    return (
      <Action isMain onDo={on.onTake} also={isSize ? undefined : words.reading.takeFirstAlso} keys="S">
        {words.reading.takeFirst}
      </Action>
    )
  if (act.act === 'take')
    return (
      <Action
        isMain
        onDo={on.onTake}
        also={act.signs ? then : isSize ? words.reading.asSecond : words.reading.asUnsigned}
        keys="S"
      >
        {act.signs ? words.reading.takeSign(act.text) : words.reading.take(act.text)}
      </Action>
    )
  if (isAnswer)
    return (
      <>
        <Action isMain onDo={() => on.onAnswer('good')} also={texts.sign(step.number)} keys="S">
          {act.why?.is === 'bad' ? words.reading.goodNow : words.reading.answers.good}
        </Action>
        <ActionRow>
          <Action onDo={() => on.onAnswer('bad')}>{words.reading.answers.bad}</Action>
          <Action onDo={() => on.onAnswer('not known')}>{words.reading.answers['not known']}</Action>
        </ActionRow>
        {act.why?.is === 'bad' && (
          <ActionRow>
            <Action onDo={askBad(act.why.says)}>{texts.signBad}</Action>
          </ActionRow>
        )}
      </>
    )
  const { why } = act
  if (why?.is === 'no return')
    return (
      <HoldAction
        isMain
        onDo={on.onSign}
        also={`${texts.signHold}, ${texts.signHoldKey}`}
        asks={texts.signAsk}
        yes={texts.signYes}
        no={texts.signNo}
        keys="S"
      >
        {texts.sign(step.number)}
      </HoldAction>
    )
  if (why)
    return (
      <Action
        isMain
        onDo={() =>
          on.onAsk(
            why.is === 'bad'
              ? texts.signBadAsk(resultWord(why.says))
              : texts.clockAsk(words.clocks.tooEarly(clockText(why.wait_s))),
          )
        }
        also={why.is === 'bad' ? resultWord(why.says) : words.clocks.tooEarly(clockText(why.wait_s))}
        keys="S"
      >
        {why.is === 'bad' ? texts.signBad : texts.sign(step.number)}
      </Action>
    )
  return (
    <Action isMain onDo={on.onSign} also={then} keys="S">
      {texts.sign(step.number)}
    </Action>
  )
}

const resultWord = (result: string): string =>
  result === 'bad' ? words.reading.answers.bad.toLowerCase() : words.reading.answers['not known'].toLowerCase()
