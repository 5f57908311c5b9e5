// The small marks that stand before a word: what a shop punches and ties on, and the triangle of ISO 3864.
import type { Judgement } from '../../job/model/verdict.ts'
import { type Markup, markup } from '../markup.ts'

const JOINT = markup`<path d="M12 1.5V22.5" fill="none" stroke="currentColor" stroke-width="2.4"/><circle cx="5" cy="12" r="3.6"/><circle cx="19" cy="12" r="3.6"/>`
const TAG = markup`<path d="M1.5 4.5C4 1.5 6 4.5 8 8" fill="none" stroke="currentColor" stroke-width="1.8"/><path d="M4.6 9.8 9.8 4.6 21.6 16.4 16.4 21.6Z" fill="var(--brass-fill,#F2D48A)" stroke="currentColor" stroke-width="2"/><circle cx="9" cy="9" r="1.7"/>`
const OCTAGON = markup`<path d="M7.6 1.5H16.4L22.5 7.6V16.4L16.4 22.5H7.6L1.5 16.4V7.6Z"/><path d="M8.8 4.4H15.2L19.6 8.8V15.2L15.2 19.6H8.8L4.4 15.2V8.8Z" fill="none" stroke="var(--paper,#fff)" stroke-width="1.6"/>`

const MARKS: Readonly<Record<Judgement, { readonly kind: string; readonly shape: Markup }>> = {
  within: { kind: 'good', shape: JOINT },
  'worn, usable': { kind: 'look', shape: TAG },
  out: { kind: 'stop', shape: OCTAGON },
  'not known': { kind: 'asked', shape: markup`` },
}

/** Word and mark, never the mark alone. */
export function judgementMark(is: Judgement): Markup {
  const { kind, shape } = MARKS[is]
  const sign =
    shape.markup === ''
      ? markup`<b>?</b>`
      : markup`<svg class="mark" viewBox="0 0 24 24" width="14" height="14" fill="currentColor" aria-hidden="true">${shape}</svg>`
  return markup`<span class="verdict ${kind}">${sign} ${is}</span>`
}

/** The triangle for hazards; nothing else on a sheet is yellow. */
export const HAZARD: Markup = markup`<svg class="hazard" viewBox="0 0 40 36" width="26" height="24" role="img" aria-label="Caution"><path d="M20 2.2 38 33.6H2Z" fill="var(--hazard,#F6C400)" stroke="#12181B" stroke-width="3" stroke-linejoin="round"/><path d="M20 12v11" stroke="#12181B" stroke-width="3.4" stroke-linecap="round"/><circle cx="20" cy="28.4" r="2" fill="#12181B"/></svg>`

/** Ratchet teeth: past here there is no way back without harm. */
export const RACK: Markup = markup`<svg class="rack" viewBox="-20 -17 41 23" width="26" height="15" role="img" aria-label="Point of no return"><path d="M-19 -2.5L-6 -16V-2.5L7 -16V-2.5L20 -16V-2.5ZM-19 0h39v5h-39Z" fill="var(--red,#A5280B)"/></svg>`
