// Bolts that are not counted hold nobody up: it is asked why, and kept.
import { useEffect, useRef, useState } from 'react'
import { Action, ActionRow } from '../../parts/Action.tsx'
import { words } from '../../words/words.ts'
import css from './Build.module.css'

interface Parts {
  readonly onWhy: (why: string) => void
  readonly onNo: () => void
}

const texts = words.bolts

export function WhyUncounted({ onWhy, onNo }: Parts) {
  const [text, setText] = useState('')
  const box = useRef<HTMLFieldSetElement>(null)
  useEffect(() => box.current?.querySelector('button')?.focus(), [])
  const own = text.trim()
  return (
    <fieldset
      className={css.whyNot}
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onNo()
      }}
    >
      <legend>{texts.why}</legend>
      {texts.reasons.map((reason) => (
        <Action key={reason} onDo={() => onWhy(reason)}>
          {reason}
        </Action>
      ))}
      <label>
        {texts.other}
        <input value={text} maxLength={1000} onChange={({ target }) => setText(target.value)} />
      </label>
      <ActionRow>
        <Action onDo={onNo}>{texts.back}</Action>
        <Action onDo={() => own !== '' && onWhy(own)} isOff={own === ''}>
          {texts.take}
        </Action>
      </ActionRow>
    </fieldset>
  )
}
