// What can hurt, before anything else; the first ones at a glance, all of them one tap away.
import { useState } from 'react'
import { words } from '../words/words.ts'
import css from './Cautions.module.css'
import { Hazard } from './Mark.tsx'

const FIRST = 3

export function Cautions({ texts, isBrief = false }: { texts: readonly string[]; isBrief?: boolean }) {
  const [isOpen, setOpen] = useState(false)
  if (texts.length === 0) return null
  const first = isBrief ? 1 : FIRST
  const rest = texts.length - first
  return (
    <div className={css.cautions} role="note" aria-label={words.build.cautions}>
      <Hazard />
      <div>
        <ul>
          {(isOpen ? texts : texts.slice(0, first)).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        {rest > 0 && (
          <button type="button" className={css.more} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            {isOpen ? words.build.cautionFewer : words.build.cautionMore(rest)}
          </button>
        )}
        {!isBrief && !texts.some((text) => /manual/i.test(text)) && <p className={css.defer}>{words.build.deferTo}</p>}
      </div>
    </div>
  )
}
