// A drawing as large as the sheet: drawn nearer or farther by a key or a tap, moved by the finger or by the arrow keys.
import { useEffect, useRef, useState } from 'react'
import type { Drawing as Drawn } from '../../paper/drawings/drawing.ts'
import { words } from '../words/words.ts'
import { Action } from './Action.tsx'
import { Drawing } from './Drawing.tsx'
import css from './LargeDrawing.module.css'

/** So many times the width of the sheet. */
const STEPS = [1, 1.5, 2.25, 3.5] as const

interface Parts {
  readonly title: string
  /** Missing while it is being drawn. */
  readonly drawn: Drawn | undefined
  readonly numbers?: ReadonlyMap<string, number>
  readonly onClose: () => void
}

export function LargeDrawing({ title, drawn, numbers, onClose }: Parts) {
  const dialog = useRef<HTMLDialogElement>(null)
  const field = useRef<HTMLElement>(null)
  // A sheet held upright shows a wide drawing as a strip: it begins nearer.
  const [zoom, setZoom] = useState(() => (innerHeight > innerWidth ? 2 : 0))
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal()
    field.current?.focus()
  }, [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: once it is drawn
  useEffect(() => {
    const box = field.current
    box?.scrollTo((box.scrollWidth - box.clientWidth) / 2, (box.scrollHeight - box.clientHeight) / 2)
  }, [drawn])
  /** What is in the middle stays in the middle. */
  const to = (next: number) => {
    const box = field.current
    if (!box || next < 0 || next >= STEPS.length) return
    const [x, y] = [
      (box.scrollLeft + box.clientWidth / 2) / box.scrollWidth,
      (box.scrollTop + box.clientHeight / 2) / box.scrollHeight,
    ]
    setZoom(next)
    requestAnimationFrame(() =>
      box.scrollTo(x * box.scrollWidth - box.clientWidth / 2, y * box.scrollHeight - box.clientHeight / 2),
    )
  }
  const texts = words.drawing
  return (
    <dialog
      ref={dialog}
      className={css.large}
      aria-label={title}
      onClose={onClose}
      onKeyDown={(event) => {
        // The keys of the sheet beneath rest meanwhile.
        event.stopPropagation()
        if (event.key === '+' || event.key === '=') to(zoom + 1)
        if (event.key === '-') to(zoom - 1)
      }}
    >
      <div className={css.frame}>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved with the arrow keys */}
        <section ref={field} className={css.field} tabIndex={0} aria-label={texts.field}>
          <div className={css.paper} style={{ width: `${STEPS[zoom]! * 100}%` }}>
            {drawn ? <Drawing drawn={drawn} {...(numbers && { numbers })} /> : <p>{words.build.drawing}</p>}
          </div>
        </section>
        <div className={css.foot}>
          <h2>{title}</h2>
          <Action isCentred onDo={() => to(zoom - 1)} isOff={zoom === 0} keys="-">
            {texts.farther}
          </Action>
          <Action isCentred onDo={() => to(zoom + 1)} isOff={zoom === STEPS.length - 1} keys="+">
            {texts.nearer}
          </Action>
          <Action isCentred onDo={() => dialog.current?.close()} keys="Escape">
            {words.reading.close}
          </Action>
        </div>
      </div>
    </dialog>
  )
}
