// The sequence: what it is worth, how far that is proven, the map, and every step in one table.
import type { WorkUp } from '../../job/workUp.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import { RACK } from '../drawings/marks.ts'
import { sequenceMaps } from '../drawings/sequenceMap.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { drawn, standingWord } from './parts.ts'
import type { StepFacts } from './stepFacts.ts'
import { holdText, placeText, time } from './stepSheet.ts'

const COLUMNS = 5
/** What stands beneath a heading on the shorter of the two papers. */
const PAGE_PX = 800

export function sequenceSheet(steps: readonly StepFacts[], { work, result }: JobBookInput): Markup {
  if (result.conflict) return conflictSheet(result)
  if (!result.value)
    return markup`<section id="sequence"><h2>The sequence</h2><p>No sequence was found within the effort given, and no conflict was shown. Give it more time.</p></section>`
  const holds = new Set(work.unit.checks.keys())
  const map = sequenceMaps(result, work.problem, { width: 685, holds, mostHeight: PAGE_PX }).map((one) => drawn(one))
  return markup`<section id="sequence"><h2>The sequence</h2>${proofLine(result, work)}${map}<table><colgroup><col style="width:12mm"><col style="width:58mm"><col style="width:36mm"><col style="width:11mm"><col></colgroup><thead><tr><th>No.</th><th>Step</th><th>Workpiece</th><th>Min</th><th>Why here</th></tr></thead><tbody>${steps.map(row)}</tbody></table></section>`
}

function row(step: StepFacts): Markup {
  const { number, operation, setUp, wait_s, why } = step
  const before = [
    ...setUp.filter((text) => text.startsWith('turn ')),
    ...(wait_s >= 60 ? [`wait ${time(wait_s)}`] : []),
  ]
  return markup`<tr><td><a href="#step-${number}" style="color:inherit;text-decoration:none"><span class="number">${number}</span></a></td><td>${before.length > 0 && markup`<span class="told">First ${before.join(', ')}.</span><br>`}<b>${operation.does}</b></td><td class="told">${placeText(step)}</td><td class="fig">${Math.round(operation.duration_s.usual / 60)}</td><td>${why[0] ? holdText(why[0]) : markup`<span class="told">quickest here</span>`}</td></tr>${operation.noReturn !== undefined && markup`<tr class="no-return"><td>${RACK}</td><td colspan="${COLUMNS - 1}"><b>Point of no return.</b> ${operation.noReturn}</td></tr>`}`
}

const pointsOf = (hazard: number): string => `${hazard} ${hazard === 1 ? 'point' : 'points'} of hazard`

/** What it takes, what nothing can beat, and on which doubts that rests. */
export function proofLine({ value, bound, proven, assumptions }: PlanResult, work: WorkUp): Markup {
  if (!value) return markup``
  const [hazard, elapsed_s, changes] = value
  const done = work.job?.done.length ?? 0
  const open = work.questions.filter(({ rank }) => rank === 1).length
  const said = proven
    ? work.faults.length > 0
      ? 'What was told cannot all be true: see the first page. Proven for the rest: no sequence is better.'
      : 'Proven: for what was told, no sequence is better.'
    : `Not proven: the best that was found. ${bound ? `Nothing can be better than ${pointsOf(bound[0])}, ${time(bound[1])}, ${bound[2]} changes.` : ''}`
  const doubts = assumptions.map(({ reason, wouldChange }) => {
    const matters =
      wouldChange === 'not tried'
        ? 'not tried without it'
        : wouldChange
          ? 'without it another sequence is best'
          : 'without it the same value'
    return markup`<li>${reason.says} <span class="told">(${standingWord(reason.standing)}; ${matters})</span></li>`
  })
  const rests = [...work.taken.map((text) => markup`<li>${text}</li>`), ...doubts]
  return markup`<p><b>${time(elapsed_s)}</b>, ${pointsOf(hazard)}, ${changes} changes of set-up${done > 0 && `; ${done} steps stand already and are not in it`}. <b>${said}</b></p>${rests.length > 0 ? markup`<h4>It rests on</h4><ul>${rests}</ul>` : open === 0 && markup`<p class="told">It rests on no supposed relation.</p>`}${open > 0 && markup`<p><a href="#not-known">${open === 1 ? '1 thing that is not known' : `${open} things that are not known`}</a> could change it.</p>`}`
}

function conflictSheet({ conflict }: PlanResult): Markup {
  const members = (conflict?.members ?? []).map(
    ({ id, op, reason, giveUp }) =>
      markup`<tr><td>${op}</td><td>${reason.says}</td><td class="told">${standingWord(reason.standing)}${reason.source && `, ${reason.source}`}</td><td>${giveUp === 'never' ? 'never given up' : conflict?.cheapest.includes(id) ? 'cheapest to give up' : ''}</td></tr>`,
  )
  return markup`<section id="sequence"><h2>There is no sequence</h2><p>These cannot all hold. Take any one of them out and the others can.</p><table><thead><tr><th>Step</th><th>Reason</th><th>Standing</th><th></th></tr></thead><tbody>${members}</tbody></table></section>`
}
