// The sheet that every screen is: trimmed edge, zones, frame, stage line, one action, title block.
import { type ReactNode, useEffect, useRef } from 'react'
import { words } from '../words/words.ts'
import css from './Sheet.module.css'

interface Parts {
  /** The line across the top. */
  readonly head: ReactNode
  readonly children: ReactNode
  /** What stands at the right of the drawing, or beneath it on a telephone. */
  readonly notes?: ReactNode
  /** One solid action, others in outline. */
  readonly actions?: ReactNode
  readonly block: ReactNode
  /** Name of the sheet for somebody who cannot see it. */
  readonly label: string
  /** What the window is called; the label where it is missing. */
  readonly page?: string
}

const NUMBERS = ['1', '2', '3', '4', '5', '6']
const LETTERS = ['A', 'B', 'C', 'D']

export function Sheet({ head, children, notes, actions, block, label, page = label }: Parts) {
  const done = useRef<HTMLElement>(null)
  useEffect(() => {
    document.title = `${page} · ${words.name}`
  }, [page])
  return (
    <div className={css.sheet}>
      <Zones />
      <div className={css.frame}>
        <button type="button" className={css.skip} onClick={() => firstOf(done.current)?.focus()}>
          {words.toAction}
        </button>
        <header className={css.stage}>{head}</header>
        <div className={css.body}>
          <main className={css.main} aria-label={label}>
            {children}
          </main>
          <aside className={css.notes} aria-label={words.notes}>
            {notes}
          </aside>
        </div>
        <section ref={done} className={css.actions} aria-label={words.toDo}>
          {actions}
        </section>
        <footer className={css.block}>{block}</footer>
      </div>
    </div>
  )
}

/** The main action is the first that can be reached among them. */
const firstOf = (actions: HTMLElement | null) => actions?.querySelector<HTMLElement>('a, button')

/** "Look at C2", over the telephone. */
function Zones() {
  return (
    <div className={css.zones} aria-hidden="true">
      {[css.top, css.bottom].map((side) => (
        <div key={side} className={`${css.across} ${side}`}>
          {NUMBERS.map((text) => (
            <span key={text}>{text}</span>
          ))}
        </div>
      ))}
      {[css.left, css.right].map((side) => (
        <div key={side} className={`${css.down} ${side}`}>
          {LETTERS.map((text) => (
            <span key={text}>{text}</span>
          ))}
        </div>
      ))}
    </div>
  )
}
