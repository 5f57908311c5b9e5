// A drawing of the paper room on a sheet: the same lines, coloured by the scheme. A tap on a part says which it is.
import { useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { Drawing as Drawn } from '../../paper/drawings/drawing.ts'
import { DRAWING_STYLE } from '../../paper/drawings/style.ts'
import css from './Drawing.module.css'

let isStyled = false

/** The one style of all drawings; made by the script, so that nothing inline is asked of the policy of the page. */
function styleDrawings(): void {
  if (isStyled) return
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(DRAWING_STYLE)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
  isStyled = true
}

interface Parts {
  readonly drawn: Drawn
  readonly isSmall?: boolean
  /** Part → its number in the parts list. */
  readonly numbers?: ReadonlyMap<string, number>
}

export function Drawing({ drawn, isSmall, numbers }: Parts) {
  const [touched, setTouched] = useState<string>()
  const figure = useRef<HTMLElement>(null)
  useLayoutEffect(styleDrawings, [])
  useEffect(() => {
    const element = figure.current
    if (!element) return
    const touch = ({ target }: Event) => {
      const part = target instanceof Element ? target.closest('[data-part]')?.getAttribute('data-part') : undefined
      setTouched(part ?? undefined)
    }
    element.addEventListener('click', touch)
    return () => element.removeEventListener('click', touch)
  }, [])
  const number = touched === undefined ? undefined : numbers?.get(touched)
  return (
    <figure ref={figure} className={`${css.drawing} ${isSmall ? css.small : ''}`}>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own markup, made by src/paper, where every name is escaped */}
      <div dangerouslySetInnerHTML={{ __html: drawn.svg }} />
      {touched !== undefined && (
        <figcaption className={css.touched}>
          {number !== undefined && <span className="figure">{number}</span>} {touched}
        </figcaption>
      )}
      {drawn.notes.length > 0 && <figcaption>{drawn.notes.join(' ')}</figcaption>}
    </figure>
  )
}
