// As checked, set and tightened: every result of every check, every try of every setting, those taken back too, and the bolts counted stage by stage.
import type { CheckTold, TightenedTold, Tried, TryTold } from '../../job/model/tried.ts'
import { figureText, limitText } from '../figureText.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'

/** Whether the record has anything for this sheet. */
export const hasTried = (tried: Tried | undefined): tried is Tried =>
  tried !== undefined && tried.checks.length + tried.tries.length + tried.tightened.length > 0

export const TRIED_TITLE = 'As checked, set and tightened'

export function triedSheet({ tried, system, work }: JobBookInput): Markup | undefined {
  if (!hasTried(tried)) return undefined
  const last = new Map(tried.checks.map((one) => [one.check, one]))
  const checks =
    tried.checks.length > 0 &&
    markup`<h3>Checks</h3><table><colgroup><col style="width:42mm"><col><col style="width:34mm"><col style="width:26mm"><col style="width:48mm"></colgroup><thead><tr><th>Check</th><th>Limit</th><th>Read</th><th>Result</th><th>By</th></tr></thead><tbody>${[...last.keys()].flatMap((check) => tried.checks.filter((one) => one.check === check).map((one) => checkRow(one, { system, work, isLast: last.get(check) === one })))}</tbody></table>`
  const settings = [...new Set(tried.tries.map(({ of }) => of))]
  const rows = settings.flatMap((of) => [
    markup`<tr class="group"><td colspan="5"><b>${of}</b></td></tr>`,
    ...tried.tries.filter((one) => one.of === of).map((one) => tryRow(one, system)),
  ])
  const tries =
    rows.length > 0 &&
    markup`<h3>Tries of settings</h3><table><colgroup><col style="width:16mm"><col><col style="width:34mm"><col style="width:26mm"><col style="width:48mm"></colgroup><thead><tr><th>Try</th><th>What was in</th><th>Read</th><th>Result</th><th>By</th></tr></thead><tbody>${rows}</tbody></table>`
  const bolts =
    tried.tightened.length > 0 &&
    markup`<h3>Bolts counted</h3><table><colgroup><col style="width:42mm"><col><col style="width:48mm"></colgroup><thead><tr><th>Step</th><th>Counted</th><th>By</th></tr></thead><tbody>${tried.tightened.map(boltRow)}</tbody></table>`
  return markup`<section id="as-set"><h2>${TRIED_TITLE}</h2>${checks}${tries}${bolts}</section>`
}

const RESULTS: Readonly<Record<TryTold['result'], string>> = { good: 'good', bad: 'not good', 'not known': 'not known' }

/** The last result is how the unit goes out; one that is not good says so aloud. */
function checkRow(
  { check, read, result, with: instrument, ...hand }: CheckTold,
  { system, work, isLast }: Pick<JobBookInput, 'system' | 'work'> & { readonly isLast: boolean },
): Markup {
  const limit = work.unit.checks.get(check)?.limit
  const told = limit && ((read && limitText(limit, read.dimension, system)) ?? limit.text)
  const isOpen = isLast && result !== 'good'
  return markup`<tr><td><b>${check}</b></td><td class="told">${told}</td><td>${read && markup`<span class="fig">${figureText(read, read.dimension, system)}</span>`}${instrument !== undefined && markup`<br><span class="told">${instrument}</span>`}</td><td>${isOpen ? markup`<b>${RESULTS[result]}</b>` : RESULTS[result]}</td><td>${handText(hand)}</td></tr>`
}

function tryRow(
  { number, tried, pack, read, result, with: instrument, takenBack, ...hand }: TryTold,
  system: JobBookInput['system'],
): Markup {
  const inside = pack ? `${tried} = ${figureText(pack, 'length', system)}` : tried
  const figure = read ? figureText(read, read.dimension, system) : 'could not be read'
  const back = takenBack && markup`<br><b>taken back by ${handText(takenBack)}</b>`
  return markup`<tr><td class="fig">${number}</td><td>${inside}</td><td><span class="fig">${figure}</span>${instrument !== undefined && markup`<br><span class="told">${instrument}</span>`}</td><td>${takenBack ? markup`<s>${RESULTS[result]}</s>` : RESULTS[result]}</td><td>${handText(hand)}${back}</td></tr>`
}

function boltRow({ step, stages, uncounted, ...hand }: TightenedTold): Markup {
  const isNamed = new Set(stages.map(({ connection }) => connection)).size > 1
  const lines = stages.map(({ connection, stage, says, count, of, rest, with: wrench }) => {
    const more = [...(rest ? ['the rest said all at once'] : []), ...(wrench === undefined ? [] : [`with ${wrench}`])]
    return markup`<div>${isNamed && `${connection}: `}<span class="fig">${count} of ${of}</span> at stage ${stage}, ${says}${more.length > 0 && `; ${more.join('; ')}`}</div>`
  })
  return markup`<tr><td><b>${step}</b></td><td>${lines}${uncounted !== undefined && markup`<div><b>Not counted:</b> ${uncounted}</div>`}</td><td>${handText(hand)}</td></tr>`
}

/** After ISO 8601, to the minute. A book is read far from where it was made: the time is that of Greenwich, and says so. */
const handText = ({ person, ms }: { readonly person: string; readonly ms: number }): string =>
  `${person}, ${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')} UTC`
