// A ruled region of a sheet. `place` is where it stands on a telephone, where all is one column.
import type { CSSProperties, ReactNode } from 'react'
import css from './Region.module.css'

interface Parts {
  readonly children: ReactNode
  readonly title?: string
  /** What it is called where no title is seen. */
  readonly label?: string
  readonly place: number
  readonly isWell?: boolean
  readonly isBare?: boolean
}

export function Region({ children, title, label, place, isWell, isBare }: Parts) {
  const kind = [css.region, isWell && css.well, isBare && css.bare, place === 0 && css.first].filter(Boolean).join(' ')
  return (
    <section className={kind} style={{ '--place': place } as CSSProperties} aria-label={title ?? label}>
      {title !== undefined && <h2>{title}</h2>}
      {children}
    </section>
  )
}
