// Where a size is typed. It is echoed as it is understood, with its verdict, before it counts.
import { useRef } from 'react'
import type { System } from '../../quantity/printQuantity.ts'
import { BARE, type Typed } from '../model/liveLimit.ts'
import type { Measured } from '../model/workedJob.ts'
import { words } from '../words/words.ts'
import { Keypad } from './Keypad.tsx'
import css from './Reading.module.css'
import { Verdict } from './Verdict.tsx'

interface Parts {
  readonly of: string
  readonly limit?: string | undefined
  readonly as: Measured
  readonly system: System
  readonly text: string
  readonly typed: Typed
  readonly onText: (text: string) => void
  readonly onTake: () => void
}

export const READING_ID = 'reading'

export function ReadingField({ of, limit, as, system, text, typed, onText, onTake }: Parts) {
  const input = useRef<HTMLInputElement>(null)
  const hasKeypad = matchMedia('(any-pointer: coarse)').matches
  return (
    <div>
      <div className={css.reading}>
        <label className={css.head} htmlFor={READING_ID}>
          <b>{of}</b>
          <span>{limit !== undefined && words.reading.limit(limit)}</span>
        </label>
        <div className={css.line}>
          <input
            ref={input}
            id={READING_ID}
            className={css.input}
            value={text}
            // The plate of keys beneath stands for the device's own.
            inputMode={hasKeypad ? 'none' : 'text'}
            autoComplete="off"
            autoCorrect="off"
            spellCheck={false}
            placeholder="—"
            aria-describedby="reading-echo"
            onChange={({ target }) => onText(target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') {
                // Else the same press answers the question that may come.
                event.preventDefault()
                onTake()
              }
              if (event.key === 'Escape') input.current?.blur()
            }}
          />
          {typed.kind === 'nothing' && <span className={css.unit}>{BARE[as][system]}</span>}
        </div>
        <div className={css.echo} id="reading-echo" aria-live="polite">
          <Echo typed={typed} as={as} system={system} />
        </div>
      </div>
      <Keypad text={text} onText={onText} />
    </div>
  )
}

function Echo({ typed, as, system }: { typed: Typed; as: Measured; system: System }) {
  if (typed.kind === 'nothing')
    return (
      <p className={css.why}>{as === 'length' ? words.reading.hint[system] : words.reading.bare(BARE[as][system])}</p>
    )
  if (typed.kind === 'unclear')
    return (
      <p className={css.unclear}>
        {typed.says} {typed.next}
      </p>
    )
  return (
    <>
      <p>
        <span className="figure">{typed.text}</span>
        <br />
        <span className={`figure ${css.why}`}>{typed.other}</span>
      </p>
      <Verdict judged={typed.judged} />
    </>
  )
}
