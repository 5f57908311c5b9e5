// Pieces that several sheets share: figures with their drawing, cautions, settings, lists.
import type { Standing } from '../../planning/model/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Figure, Setting } from '../../unit/connections/kind.ts'
import type { Drawing } from '../drawings/drawing.ts'
import { gauge } from '../drawings/gauge.ts'
import { HAZARD, judgementMark } from '../drawings/marks.ts'
import { figureText, limitText } from '../figureText.ts'
import { type Markup, markup, trusted } from '../markup.ts'

export const drawn = ({ svg, notes }: Drawing, caption?: string): Markup =>
  markup`<figure>${trusted(svg)}${(caption !== undefined || notes.length > 0) && markup`<figcaption>${[caption, ...notes].filter((text) => text !== undefined).join(' ')}</figcaption>`}</figure>`

/** An empty list leaves nothing, not an empty heading. */
export const listed = (title: string, texts: readonly string[]): Markup | undefined =>
  texts.length ? markup`<h4>${title}</h4><ul>${texts.map((text) => markup`<li>${text}</li>`)}</ul>` : undefined

export const cautions = (texts: readonly string[]): Markup | undefined =>
  texts.length
    ? markup`<div class="caution">${HAZARD}<ul>${texts.map((text) => markup`<li>${text}</li>`)}</ul></div>`
    : undefined

const WORDS: Readonly<Record<Standing, string>> = { seen: 'seen', told: 'told', usual: 'usual', supposed: 'supposed ?' }
export const standingWord = (standing: Standing): string => WORDS[standing]

const BASIS: Readonly<Record<Figure['basis'], string>> = {
  readings: 'from readings',
  nominal: 'from nominal sizes',
  mixed: 'some read, some nominal',
  table: 'from a table',
}
export const restsOn = ({ basis, standing }: Figure): string => `${BASIS[basis]}, ${standingWord(standing)}`

export const verdictOf = ({ verdict }: Figure): Markup | undefined => (verdict ? judgementMark(verdict) : undefined)

export const limitOf = ({ limit, dimension }: Figure, system: System): string | undefined =>
  limit && limitText(limit, dimension, system)

/** A setting as the bench wants it: figures, the gauge of the one that has both limits, what is missing. */
export function settingOnSheet(setting: Setting, system: System): Markup {
  const { title, figures, says, missing } = setting
  const judged =
    figures.find(({ limit }) => limit?.low !== undefined && limit.high !== undefined) ??
    figures.find(({ limit }) => limit)
  const rows = figures.map(
    (figure) =>
      markup`<dt>${figure.label}${figure.note && markup`<br><span class="told small">${figure.note}</span>`}</dt><dd><span class="fig">${figureText(figure, figure.dimension, system, true)}</span> ${verdictOf(figure)}<br><span class="told small">${restsOn(figure)}</span></dd>`,
  )
  return markup`<div class="setting"><h4>${title}</h4><dl>${rows}</dl>${judged?.limit && drawn(figureGauge(judged, system))}${says.map((text) => markup`<p>${text}</p>`)}${listed('Not known', missing)}</div>`
}

export const figureGauge = (figure: Figure, system: System): Drawing =>
  gauge({
    title: figure.label,
    dimension: figure.dimension,
    limit: figure.limit ?? {},
    readings: [{ low: figure.low, high: figure.high, is: figure.verdict ?? 'not known' }],
    system,
    width: 260,
  })
