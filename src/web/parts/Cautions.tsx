// What can hurt, before anything else; the first ones at a glance, all of them one tap away.
import { useState } from 'react'
import { words } from '../words/words.ts'
import css from './Cautions.module.css'
import { Hazard } from './Mark.tsx'

const FIRST = 3

export function Cautions({ texts }: { texts: readonly string[] }) {
  const [isOpen, setOpen] = useState(false)
  if (texts.length === 0) return null
  const rest = texts.length - FIRST
  return (
    <div className={css.cautions} role="note" aria-label={words.build.cautions}>
      <Hazard />
      <div>
        <ul>
          {(isOpen ? texts : texts.slice(0, FIRST)).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        {rest > 0 && (
          <button type="button" className={css.more} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            {isOpen ? words.build.cautionFewer : words.build.cautionMore(rest)}
          </button>
        )}
        {!texts.some((text) => /manual/i.test(text)) && <p className={css.defer}>{words.build.deferTo}</p>}
      </div>
    </div>
  )
}
