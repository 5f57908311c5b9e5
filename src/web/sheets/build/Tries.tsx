// The tries of a setting: what was in, what was read, what came off between; what is in now, and what to try next.

import { useId, useState } from 'react'
import { hourOf } from '../../../journal/clock.ts'
import type { System } from '../../../quantity/printQuantity.ts'
import type { NextTry, PackChoice } from '../../../unit/tries/nextTry.ts'
import { BARE } from '../../model/liveLimit.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { figureWords } from '../../model/spoken.ts'
import { type FittedDraft, NO_DRAFT, type OffRow, type TryRow } from '../../model/tries.ts'
import { Action, ActionRow, WordAction } from '../../parts/Action.tsx'
import { Keypad } from '../../parts/Keypad.tsx'
import { Region } from '../../parts/Region.tsx'
import { Verdict } from '../../parts/Verdict.tsx'
import { words } from '../../words/words.ts'
import build from './Build.module.css'
import css from './Tries.module.css'
import type { Trying } from './useTries.ts'

type ShimPack = NonNullable<PackChoice['pack']>

interface Parts {
  readonly trying: Trying
  readonly system: System
  readonly now_ms: number
  /** Whether something can still be said to be in: not where the step is signed. */
  readonly isOpen: boolean
  readonly onTakeBack: (entries: readonly string[]) => void
}

const texts = words.tries

export function Tries({ trying, system, now_ms, isOpen, onTakeBack }: Parts) {
  const { view, off, next } = trying
  return (
    <Region title={texts.title} place={27}>
      {view.rows.length === 0 ? (
        <p className="told">{texts.none}</p>
      ) : (
        <ol className={css.rows}>
          {view.rows.map((row) =>
            row.is === 'try' ? (
              <Try key={row.made.entry} row={row} now_ms={now_ms} onTakeBack={onTakeBack} />
            ) : (
              <Off key={row.entry} row={row} now_ms={now_ms} onTakeBack={onTakeBack} />
            ),
          )}
        </ol>
      )}
      {next && <Next next={next} trying={trying} system={system} isOpen={isOpen && !off} />}
      {next && next.is !== 'right' && trying.sheet.first === undefined && <p className="told">{texts.noWay}</p>}
      {off && (
        <div className={css.off}>
          <h3>{texts.takeApartHead(view.number)}</h3>
          <ol className={build.list}>
            {off.undo.map(({ step }, index) => (
              <li key={step}>
                <span className={build.no}>{index + 1}</span>
                <span>{step}</span>
              </li>
            ))}
          </ol>
          {off.noReturn.map((says) => (
            <p key={says}>{says}</p>
          ))}
          {off.renews.length > 0 && <p>{texts.renews(off.renews.join(', '))}</p>}
        </div>
      )}
      {isOpen && <WhatIsIn trying={trying} system={system} />}
    </Region>
  )
}

interface RowParts<Row> {
  readonly row: Row
  readonly now_ms: number
  readonly onTakeBack: (entries: readonly string[]) => void
}

function Try({ row: { made, fitted, read, judged }, now_ms, onTakeBack }: RowParts<TryRow>) {
  const { takenBack, resultEntry, entry, number, person, at } = made
  const said = (
    <>
      <b className={css.number}>{texts.number(number)}</b>
      <span className={css.fitted}>{fitted}</span>
      <span className={css.read}>{read ?? texts.notRead}</span>
      <span className={`told ${css.by}`}>{words.reading.by(person, sayWhen(hourOf(at), now_ms))}</span>
    </>
  )
  if (takenBack)
    return (
      <li>
        <s className={`${css.try} ${css.gone}`}>{said}</s>
        <span className="told">{texts.takenBack(takenBack.person, sayWhen(hourOf(takenBack.at), now_ms))}</span>
      </li>
    )
  return (
    <li className={css.try}>
      {said}
      <span className={css.verdict}>
        {judged ? <Verdict judged={judged} /> : <b>{words.reading.answers[made.result]}</b>}
        <WordAction onDo={() => onTakeBack([entry, ...(resultEntry === undefined ? [] : [resultEntry])])}>
          {words.build.takeBack}
          <span className="aside"> {texts.number(number)}</span>
        </WordAction>
      </span>
    </li>
  )
}

function Off({ row: { steps, entries, person, at }, now_ms, onTakeBack }: RowParts<OffRow>) {
  return (
    <li className={css.between}>
      <span>{texts.off(steps.join(', '), person, sayWhen(hourOf(at), now_ms))}</span>
      <WordAction onDo={() => onTakeBack(entries)}>{words.build.takeBack}</WordAction>
    </li>
  )
}

interface NextParts {
  readonly next: NextTry
  readonly trying: Trying
  readonly system: System
  /** Whether another pack can go in now: not before the one that is in came off. */
  readonly isOpen: boolean
}

function Next({ next, trying, system, isOpen }: NextParts) {
  if (next.is === 'right') return <p>{texts.right}</p>
  if (next.is === 'not known')
    return (
      <div className={css.next}>
        <h3>{texts.next}</h3>
        <p>
          <b>{texts.notKnown}</b> {next.says} {next.next}
        </p>
      </div>
    )
  const pack = next.is === 'pack' ? next.choice?.pack : undefined
  const named = pack?.shims.map(({ id }) => id)
  return (
    <div className={css.next}>
      <h3>{texts.next}</h3>
      <p className={css.proposal}>
        <b>{headline(next, system)}</b>
      </p>
      {next.is === 'pack' && <Stock next={next} system={system} />}
      <p>{next.says}</p>
      <p className="told">
        {texts.source}: {next.source}.
      </p>
      <ul className={build.bullets}>
        {next.cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {isOpen && named && named.length > 0 && (
        <ActionRow>
          <Action onDo={() => trying.setDraft({ ...NO_DRAFT, ids: named })}>{texts.take(named.join(' + '))}</Action>
        </ActionRow>
      )}
    </div>
  )
}

function headline(next: Exclude<NextTry, { is: 'right' | 'not known' }>, system: System): string {
  if (next.is === 'seat again') return texts.seatAgain
  if (next.is === 'pack') {
    const range = figureWords(next.wanted, 'length', system)
    return next.isSure ? texts.fit(range) : texts.mayFit(range)
  }
  const { low, high } = next.wanted
  const turn = (from: number, to: number) => figureWords({ low: from, high: to }, 'angle', system)
  if (low >= 0) return texts.slacken(turn(low, high))
  return high <= 0 ? texts.tighten(turn(-high, -low)) : texts.between(turn(low, high))
}

const packText = ({ shims, total }: ShimPack, system: System): string =>
  `${shims.map(({ id }) => id).join(' + ') || texts.noShim} = ${figureWords({ low: total, high: total }, 'length', system)}`

/** What goes in at the next try: what is said already, else what is proposed from the stock. */
export function inNextTry({ fitted, next }: Trying, system: System): string | undefined {
  if (fitted.is === 'said') return fitted.text
  const pack = next?.is === 'pack' ? next.choice?.pack : undefined
  return pack && packText(pack, system)
}

function Stock({ next: { choice }, system }: { next: Extract<NextTry, { is: 'pack' }>; system: System }) {
  if (!choice) return null
  const said = (pack: ShimPack) => packText(pack, system)
  return (
    <p className={css.proposal}>
      {choice.pack ? texts.fromStock(said(choice.pack)) : texts.nearest(choice.nearest.map(said).join('; '))}
    </p>
  )
}

function WhatIsIn({ trying, system }: { trying: Trying; system: System }) {
  const { sheet, view, draft, setDraft, fitted } = trying
  const change = (part: Partial<FittedDraft>) => setDraft({ ...draft, ...part })
  const toggled = (id: string) => (draft.ids.includes(id) ? draft.ids.filter((one) => one !== id) : [...draft.ids, id])
  const still = view.stillIn
  return (
    <fieldset className={css.fitted}>
      <legend>{still ? texts.inNow : texts.inFor(view.number)}</legend>
      {!sheet.isShims && (
        <ActionRow>
          {(['shims', 'nut'] as const).map((by) => (
            <Action
              key={by}
              onDo={() => change({ by })}
              isPressed={draft.by === by}
              isChosen={draft.by === by}
              isCentred
            >
              {texts.by[by]}
            </Action>
          ))}
        </ActionRow>
      )}
      {draft.by === 'shims' ? (
        <>
          <p className="told">{sheet.shims.length > 0 ? texts.shims : texts.noShims}</p>
          <div className={css.shims}>
            {sheet.shims.map(({ id, text }) => (
              <Action
                key={id}
                onDo={() => change({ ids: toggled(id) })}
                isPressed={draft.ids.includes(id)}
                isChosen={draft.ids.includes(id)}
                isCentred
                also={text}
              >
                {id}
              </Action>
            ))}
          </div>
          <Field
            label={texts.pack}
            why={texts.packWhy}
            as="length"
            {...{ system }}
            text={draft.pack}
            onText={(pack) => change({ pack })}
          />
        </>
      ) : (
        <>
          <Field
            label={texts.turn}
            why={texts.turnWhy}
            as="angle"
            {...{ system }}
            text={draft.turn}
            onText={(turn) => change({ turn })}
          />
          <Field label={texts.lead} as="length" {...{ system }} text={draft.lead} onText={(lead) => change({ lead })} />
        </>
      )}
      <div className={css.echo} aria-live="polite">
        {fitted.is === 'said' ? (
          <p>
            <b>{texts.said(fitted.text)}</b>
          </p>
        ) : fitted.is === 'unclear' ? (
          <p>
            {fitted.says} {fitted.next}
          </p>
        ) : (
          <p className="told">{still ? texts.same(still.tried) : texts.notSaid}</p>
        )}
        {fitted.is !== 'nothing' && <WordAction onDo={trying.clear}>{texts.wipe}</WordAction>}
      </div>
    </fieldset>
  )
}

interface FieldParts {
  readonly label: string
  readonly why?: string
  readonly as: 'length' | 'angle'
  readonly system: System
  readonly text: string
  readonly onText: (text: string) => void
}

/** A size beside the reading: its plate of keys opens where it is touched. */
function Field({ label, why, as, system, text, onText }: FieldParts) {
  const id = useId()
  const [isTouched, setTouched] = useState(false)
  const hasKeypad = matchMedia('(any-pointer: coarse)').matches
  return (
    <div className={css.field}>
      <label htmlFor={id}>
        {label}
        {why !== undefined && <span className="told">, {why}</span>}
      </label>
      <div className={css.line}>
        <input
          id={id}
          value={text}
          inputMode={hasKeypad ? 'none' : 'text'}
          autoComplete="off"
          spellCheck={false}
          placeholder="—"
          onFocus={() => setTouched(true)}
          onChange={({ target }) => onText(target.value)}
          onKeyDown={({ key, currentTarget }) => (key === 'Enter' || key === 'Escape') && currentTarget.blur()}
        />
        <span className="told">{BARE[as][system]}</span>
      </div>
      {hasKeypad && isTouched && <Keypad text={text} onText={onText} label={texts.keypad(label)} />}
    </div>
  )
}
