// A drawing of the paper room on a sheet: the same lines, coloured by the scheme.
import { useLayoutEffect } from 'react'
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

export function Drawing({ drawn, isSmall }: { drawn: Drawn; isSmall?: boolean }) {
  useLayoutEffect(styleDrawings, [])
  return (
    <figure className={`${css.drawing} ${isSmall ? css.small : ''}`}>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own markup, made by src/paper, where every name is escaped */}
      <div dangerouslySetInnerHTML={{ __html: drawn.svg }} />
      {drawn.notes.length > 0 && <figcaption>{drawn.notes.join(' ')}</figcaption>}
    </figure>
  )
}
