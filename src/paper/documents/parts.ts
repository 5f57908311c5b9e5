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

/** More lines than these stand in two columns. */
const MANY = 4

export const cautions = (texts: readonly string[]): Markup | undefined =>
  texts.length
    ? markup`<div class="caution">${HAZARD}<ul${texts.length > MANY && markup` class="many"`}>${texts.map((text) => markup`<li>${text}</li>`)}</ul></div>`
    : undefined

const WORDS: Readonly<Record<Standing, string>> = { seen: 'seen', told: 'told', usual: 'usual', supposed: 'supposed ?' }
export const standingWord = (standing: Standing): string => WORDS[standing]

const BASIS: Readonly<Record<Figure['basis'], string>> = {
  readings: 'readings',
  nominal: 'nominal sizes',
  mixed: 'part readings',
  table: 'a table',
}
export const restsOn = ({ basis, standing }: Figure): string => `${BASIS[basis]}, ${standingWord(standing)}`

export const verdictOf = ({ verdict }: Figure): Markup | undefined => (verdict ? judgementMark(verdict) : undefined)

export const limitOf = ({ limit, dimension }: Figure, system: System): string | undefined =>
  limit && limitText(limit, dimension, system)

/** A figure in both systems, the job's own first. */
export function bothTexts(figure: Figure, system: System): Markup {
  const text = figureText(figure, figure.dimension, system)
  const other = figureText(figure, figure.dimension, system === 'metric' ? 'inch' : 'metric')
  return markup`<span class="fig">${text}</span>${other !== text && markup`<br><span class="told">${other}</span>`}`
}

/** What judges only the strength of the parts has its place in the table of settings, unless it says no. */
const isForTheBench = ({ dimension, verdict }: Figure): boolean =>
  (dimension !== 'pressure' && dimension !== 'number') || verdict === 'out' || verdict === 'not known'

/** A setting as the bench wants it: its figures, the first limit as a gauge, what is missing. */
export function settingOnSheet({ title, figures, says, missing }: Setting, system: System): Markup {
  const shown = figures.filter(isForTheBench)
  const judged = shown.find(({ limit }) => limit)
  const rows = shown.map(
    (figure) =>
      markup`<tr><td>${figure.label}${figure.note && markup`<br><span class="told">${figure.note}</span>`}</td><td><span class="fig">${figureText(figure, figure.dimension, system)}</span></td><td>${limitOf(figure, system)} ${verdictOf(figure)}</td><td class="told">${restsOn(figure)}</td></tr>`,
  )
  return markup`<div class="setting"><h4>Set: ${title}</h4><div class="beside"><table><colgroup><col style="width:32%"><col style="width:27%"><col style="width:20%"><col></colgroup><tbody>${rows}</tbody></table>${judged?.limit && drawn(figureGauge(judged, system))}</div>${says.map((text) => markup`<p>${text}</p>`)}${missing.length > 0 && markup`<p class="told"><b>Not known.</b> ${missing.join(' ')}</p>`}</div>`
}

const figureGauge = (figure: Figure, system: System): Drawing =>
  gauge({
    title: figure.label,
    dimension: figure.dimension,
    limit: figure.limit ?? {},
    readings: [{ low: figure.low, high: figure.high, is: figure.verdict ?? 'not known' }],
    system,
    width: 200,
  })
