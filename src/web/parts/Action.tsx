// What can be touched. Its corners are broken; it says its consequence in a second line.
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import css from './Action.module.css'

interface Words {
  readonly children: ReactNode
  /** What will be after it. */
  readonly also?: ReactNode
}

interface Looks {
  /** The one thing to do on this sheet. */
  readonly isMain?: boolean
  readonly isChosen?: boolean
  readonly isCentred?: boolean
}

const kindOf = ({ isMain, isChosen, isCentred }: Looks, isOff = false): string =>
  [css.action, isMain && css.main, isChosen && css.chosen, isCentred && css.centre, isOff && css.off]
    .filter(Boolean)
    .join(' ')

interface Does extends Words, Looks {
  readonly onDo: () => void
  /** It cannot be done yet; it can still be reached, so that its words are read. */
  readonly isOff?: boolean
  readonly label?: string
  readonly keys?: string
  readonly isPressed?: boolean
}

/** The main action of the next sheet stands at the same place: a finger that bounces is no second tap. */
const BOUNCE_MS = 200
let lastMain: { readonly at: number; readonly of: object } | undefined

function isBounce(of: object): boolean {
  const at = performance.now()
  const bounced = lastMain !== undefined && lastMain.of !== of && at - lastMain.at < BOUNCE_MS
  if (!bounced) lastMain = { at, of }
  return bounced
}

export function Action({ children, also, onDo, isOff, label, keys, isPressed, ...looks }: Does) {
  return (
    <button
      type="button"
      className={kindOf(looks, isOff)}
      onClick={({ detail, currentTarget }) => {
        // By keyboard there is no bounce: detail is 0.
        if (isOff || (looks.isMain && detail > 0 && isBounce(currentTarget))) return
        onDo()
      }}
      aria-disabled={isOff || undefined}
      aria-label={label}
      aria-keyshortcuts={keys}
      aria-pressed={isPressed}
    >
      <span>{children}</span>
      {also && <small>{also}</small>}
    </button>
  )
}

interface Leads extends Words, Looks {
  readonly to: string
  readonly label?: string
  readonly keys?: string
}

export function ActionLink({ children, also, to, label, keys, ...looks }: Leads) {
  return (
    <Link href={to} className={kindOf(looks)} aria-label={label} aria-keyshortcuts={keys}>
      <span>{children}</span>
      {also && <small>{also}</small>}
    </Link>
  )
}

interface Leading {
  readonly children: ReactNode
  readonly onDo: () => void
  readonly isOpen?: boolean
  readonly label?: string
}

/** Words that lead to a reason. */
export function WordAction({ children, onDo, isOpen, label }: Leading) {
  return (
    <button type="button" className={css.link} onClick={onDo} aria-expanded={isOpen} aria-label={label}>
      {children}
    </button>
  )
}

const HOLD_MS = 2000

interface Holds extends Words, Looks {
  readonly onDo: () => void
  /** Asked where it is not held: by keyboard, by switch, by a short tap. */
  readonly asks: string
  readonly yes: string
  readonly no: string
  readonly keys?: string
}

/**
 * What cannot be undone asks for a second, different action: it is held for two seconds, or, where it cannot be held, a question is
 * answered with a key of its own.
 */
export function HoldAction({ children, also, onDo, asks, yes, no, keys, ...looks }: Holds) {
  const [isHeld, setHeld] = useState(false)
  const [isAsked, setAsked] = useState(false)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const done = useRef(false)
  useEffect(() => () => clearTimeout(timer.current), [])
  const begin = () => {
    done.current = false
    setHeld(true)
    timer.current = setTimeout(() => {
      done.current = true
      setHeld(false)
      onDo()
    }, HOLD_MS)
  }
  const end = () => {
    clearTimeout(timer.current)
    setHeld(false)
  }
  if (isAsked)
    return (
      <Question
        asks={asks}
        yes={yes}
        no={no}
        onNo={() => setAsked(false)}
        onYes={() => {
          setAsked(false)
          onDo()
        }}
      />
    )
  return (
    <button
      type="button"
      className={`${kindOf(looks)} ${isHeld ? css.holding : ''}`}
      aria-keyshortcuts={keys}
      onPointerDown={begin}
      onPointerUp={end}
      onPointerLeave={end}
      onPointerCancel={end}
      onContextMenu={(event) => event.preventDefault()}
      onClick={() => {
        if (!done.current) setAsked(true)
        done.current = false
      }}
    >
      <span className={css.fill} aria-hidden="true" />
      <span>{children}</span>
      {also && <small>{also}</small>}
    </button>
  )
}

interface Asks {
  readonly asks: string
  readonly yes: string
  readonly no: string
  readonly onYes: () => void
  readonly onNo: () => void
  /** A third answer, likelier than both. */
  readonly instead?: { readonly says: string; readonly onDo: () => void } | undefined
}

/** A question with its own keys: Y and Esc. */
export function Question({ asks, yes, no, onYes, onNo, instead }: Asks) {
  const first = useRef<HTMLDivElement>(null)
  useEffect(() => {
    first.current?.querySelector('button')?.focus()
  }, [])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') onNo()
      else if (event.key === 'y' || event.key === 'Y') onYes()
      else return
      event.preventDefault()
      event.stopPropagation()
    }
    window.addEventListener('keydown', onKey, true)
    return () => window.removeEventListener('keydown', onKey, true)
  }, [onYes, onNo])
  return (
    <div className={css.ask} role="alertdialog" aria-label={asks}>
      <p>{asks}</p>
      {instead && <Action onDo={instead.onDo}>{instead.says}</Action>}
      <div className={css.row} ref={first}>
        <Action onDo={onNo}>{no}</Action>
        <Action onDo={onYes}>{yes}</Action>
      </div>
    </div>
  )
}

/** Actions beside each other. */
export const ActionRow = ({ children }: { children: ReactNode }) => <div className={css.row}>{children}</div>
