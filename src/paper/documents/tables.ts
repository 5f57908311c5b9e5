// The tables of the job book: settings, buying list, what is not known.
import type { KitLine } from '../../job/model/kit.ts'
import type { Question } from '../../unit/connections/kind.ts'
import type { PartId } from '../../unit/model/unit.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { bothTexts, limitOf, restsOn, standingWord, verdictOf } from './parts.ts'
import type { Sources } from './sources.ts'

export function settingsTable({ settings, system }: JobBookInput, sources: Sources): Markup {
  const rows = settings.flatMap(({ title, figures, says, missing }) => [
    markup`<tr class="group"><td colspan="4"><b>${title}</b>${says.map((text) => markup` ${text}`)}${missing.length > 0 && markup`<div class="told"><b>?</b> ${missing.join(' ')}</div>`}</td></tr>`,
    ...figures.map(
      (figure) =>
        markup`<tr><td>${figure.label} ${sources.mark(figure.source)}${figure.note && markup`<br><span class="told">${figure.note}</span>`}</td><td>${bothTexts(figure, system)}</td><td>${limitOf(figure, system)} ${sources.mark(figure.limit?.source)}<br>${verdictOf(figure)}</td><td class="told">${restsOn(figure)}</td></tr>`,
    ),
  ])
  return markup`<section id="settings"><h2>Settings</h2>${rows.length ? markup`<table><colgroup><col style="width:60mm"><col style="width:52mm"><col style="width:40mm"><col></colgroup><thead><tr><th>Setting</th><th>Value</th><th>Limit</th><th>Rests on</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>No connection of this unit has anything to set yet.</p>`}</section>`
}

export function kitTable({ kit }: JobBookInput, numbers: ReadonlyMap<PartId, number>, sources: Sources): Markup {
  const groups = [...new Set(kit.map(({ group }) => group))]
  const rows = groups.flatMap((group) => [
    markup`<tr class="group"><td colspan="6"><b>${group[0]?.toUpperCase()}${group.slice(1)}</b></td></tr>`,
    ...kit.filter((line) => line.group === group).map((line) => kitRow(line, numbers, sources)),
  ])
  return markup`<section id="kit"><h2>Buying list</h2>${rows.length ? markup`<table><colgroup><col style="width:11mm"><col style="width:42mm"><col style="width:15mm"><col style="width:30mm"><col style="width:26mm"><col></colgroup><thead><tr><th>Item</th><th>What</th><th>Pieces</th><th>From</th><th>Price, lead</th><th>Why</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>Nothing is to be bought.</p>`}</section>`
}

function kitRow(
  { part, what, pieces, amount, why, number, from, price, lead }: KitLine,
  numbers: ReadonlyMap<PartId, number>,
  sources: Sources,
): Markup {
  const reasons = why.map(
    ({ says, standing, source }) =>
      markup`<div>${says} <span class="told">${standingWord(standing)}</span> ${sources.mark(source)}</div>`,
  )
  return markup`<tr><td class="fig">${part !== undefined && numbers.get(part)}</td><td><b>${what}</b>${number && markup`<br><span class="told">${number}</span>`}</td><td class="fig">${amount ?? pieces ?? '?'}</td><td>${from ?? markup`<span class="told">not told</span>`}</td><td>${[price, lead].filter((text) => text !== undefined).join(', ') || markup`<span class="told">not told</span>`}</td><td>${reasons}</td></tr>`
}

export function questionsTable(questions: readonly Question[]): Markup {
  const rows = questions.map(
    ({ rank, about, asks, holdsUp }) =>
      markup`<tr><td class="fig">${rank}</td><td><b>${about}</b></td><td>${asks}</td><td>${holdsUp}</td></tr>`,
  )
  return markup`<section id="not-known"><h2>What was not known</h2>${rows.length ? markup`<p>Rank 1 holds up the sequence or a setting and is asked first; rank 3 is worth writing down some day. Nothing here was guessed in silence: what was supposed is marked where it is used.</p><table><colgroup><col style="width:12mm"><col style="width:34mm"><col style="width:76mm"><col></colgroup><thead><tr><th>Rank</th><th>About</th><th>Question</th><th>What it holds up</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>Nothing is open.</p>`}</section>`
}
