// The tables of the job book: settings, buying list, what is not known, readings, sources.
import type { KitLine } from '../../job/model/kit.ts'
import type { ReadingVerdict, Unmeasured } from '../../job/model/verdict.ts'
import { printKnown } from '../../quantity/known.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Question } from '../../unit/connections/kind.ts'
import type { Limit, PartId } from '../../unit/model/unit.ts'
import { gauge } from '../drawings/gauge.ts'
import { judgementMark } from '../drawings/marks.ts'
import { figureText, limitText } from '../figureText.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { drawn, limitOf, restsOn, standingWord, verdictOf } from './parts.ts'

export function settingsTable({ settings, system }: JobBookInput): Markup {
  const rows = settings.flatMap(({ title, figures, says, missing }) => [
    markup`<tr><td colspan="5"><b>${title}</b>${says.map((text) => markup` ${text}`)}${missing.length > 0 && markup`<br><span class="verdict">?</span> <span class="told">${missing.join(' ')}</span>`}</td></tr>`,
    ...figures.map(
      (figure) =>
        markup`<tr><td>${figure.label}${figure.note && markup`<br><span class="told">${figure.note}</span>`}</td><td class="fig">${figureText(figure, figure.dimension, system, true)}</td><td>${limitOf(figure, system)}<br>${verdictOf(figure)}</td><td class="told">${restsOn(figure)}</td><td class="told">${figure.source}${figure.limit && markup`<br>limit: ${figure.limit.source}`}</td></tr>`,
    ),
  ])
  return markup`<section id="settings"><h2>Settings</h2>${rows.length ? markup`<table><thead><tr><th>Setting</th><th>Value</th><th>Limit</th><th>Rests on</th><th>Source</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>No connection of this unit has anything to set yet.</p>`}</section>`
}

export function kitTable(kit: readonly KitLine[], numbers: ReadonlyMap<PartId, number>): Markup {
  const groups = [...new Set(kit.map(({ group }) => group))]
  const rows = groups.flatMap((group) => [
    markup`<tr><td></td><td colspan="5"><b>${group[0]?.toUpperCase()}${group.slice(1)}</b></td></tr>`,
    ...kit.filter((line) => line.group === group).map((line) => kitRow(line, numbers)),
  ])
  return markup`<section id="kit"><h2>Buying list</h2>${rows.length ? markup`<table><thead><tr><th>Item</th><th>What</th><th>Pieces</th><th>From</th><th>Price, lead</th><th>Why</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>Nothing is to be bought.</p>`}</section>`
}

function kitRow(
  { part, what, pieces, amount, why, number, from, price, lead }: KitLine,
  numbers: ReadonlyMap<PartId, number>,
): Markup {
  const reasons = why.map(
    ({ says, standing, source }) =>
      markup`<div>${says} <span class="told">${standingWord(standing)}${source && `, ${source}`}</span></div>`,
  )
  return markup`<tr><td class="fig">${part !== undefined && numbers.get(part)}</td><td><b>${what}</b>${number && markup`<br><span class="told">${number}</span>`}</td><td class="fig">${amount ?? pieces ?? '?'}</td><td>${from ?? markup`<span class="told">not told</span>`}</td><td>${[price, lead].filter((text) => text !== undefined).join(', ') || markup`<span class="told">not told</span>`}</td><td>${reasons}</td></tr>`
}

export function questionsTable(questions: readonly Question[]): Markup {
  const rows = questions.map(
    ({ rank, about, asks, holdsUp }) =>
      markup`<tr><td class="fig">${rank}</td><td><b>${about}</b></td><td>${asks}</td><td>${holdsUp}</td></tr>`,
  )
  return markup`<section id="not-known"><h2>What was not known</h2>${rows.length ? markup`<p>Rank 1 is asked first. Nothing here was guessed in silence: what was supposed is marked where it is used.</p><table><thead><tr><th>Rank</th><th>About</th><th>Question</th><th>What it holds up</th></tr></thead><tbody>${rows}</tbody></table>` : markup`<p>Nothing is open.</p>`}</section>`
}

export function readingsTable({ verdicts, work, system }: JobBookInput): Markup | undefined {
  if (!verdicts) return undefined
  const features = [...new Set(verdicts.readings.map(({ part, feature }) => `${part}\u0000${feature}`))]
  const rows = features.map((key) =>
    featureRow(
      verdicts.readings.filter(({ part, feature }) => `${part}\u0000${feature}` === key),
      system,
    ),
  )
  const found = [...(work.job?.asFound.values() ?? [])].map(
    ({ part, where, condition, decision }) =>
      markup`<tr><td><b>${part}</b></td><td>${where}</td><td>${condition}</td><td>${decision ?? markup`<span class="told">not decided</span>`}</td></tr>`,
  )
  return markup`<section id="readings"><h2>As found, and readings</h2>${found.length > 0 && markup`<table><thead><tr><th>Part</th><th>Where it is</th><th>Condition</th><th>Decision</th></tr></thead><tbody>${found}</tbody></table>`}${rows.length > 0 && markup`<h3>Readings against limits</h3><table><thead><tr><th>Feature</th><th>Readings</th><th>Limits</th><th>Verdict</th><th>On the scale</th></tr></thead><tbody>${rows}</tbody></table>`}${unmeasuredTable(verdicts.unmeasured, system)}</section>`
}

const bounds = ({ low, high }: Limit) => ({ ...(low !== undefined && { low }), ...(high !== undefined && { high }) })

function featureRow(readings: readonly ReadingVerdict[], system: System): Markup {
  const [first] = readings
  if (!first) return markup``
  const { part, feature, what, limitNew, limitWorn } = first
  const read = readings.map(
    ({ reading, uncertainty }) =>
      markup`<div><span class="fig">${reading.reads ? printKnown(reading.reads, 'length', { system, both: true }) : 'not read'}</span><br><span class="told">${[reading.where, reading.with, uncertainty && `± ${printKnown(uncertainty, 'length', { system })}`, reading.temperature && `at ${printKnown(reading.temperature, 'temperature', { system })}`, reading.by, reading.date].filter(Boolean).join(', ')}</span></div>`,
  )
  const onScale = readings.flatMap(({ reading, uncertainty, is }) =>
    reading.reads
      ? [
          {
            low: reading.reads.low,
            high: reading.reads.high,
            is,
            ...(uncertainty && { uncertainty: uncertainty.high }),
          },
        ]
      : [],
  )
  const limit = limitNew ?? limitWorn
  const scale =
    limit && onScale.length
      ? drawn(
          gauge({
            title: `${part}, ${feature}`,
            dimension: 'length',
            limit: bounds(limit),
            ...(limitNew && limitWorn && { worn: bounds(limitWorn) }),
            readings: onScale,
            system,
            width: 230,
          }),
        )
      : undefined
  return markup`<tr><td><b>${part}</b><br>${feature}${what && markup`<br><span class="told">${what}</span>`}</td><td>${read}</td><td>${limitsText(limitNew, limitWorn, system)}</td><td>${readings.map(({ is, because }) => markup`<div>${judgementMark(is)}${because && markup`<br><span class="told">${because}</span>`}</div>`)}</td><td>${scale}</td></tr>`
}

function limitsText(limitNew: Limit | undefined, limitWorn: Limit | undefined, system: System): Markup {
  const line = (name: string, limit: Limit | undefined) => {
    const text = limit && limitText(bounds(limit), 'length', system)
    return (
      text !== undefined &&
      markup`<div>${name} <span class="fig">${text}</span> <span class="told">${standingWord(limit?.standing ?? 'told')}${limit?.source && `, ${limit.source}`}</span></div>`
    )
  }
  return markup`${line('new', limitNew)}${line('worn', limitWorn)}${!limitNew && !limitWorn && markup`<span class="told">none told</span>`}`
}

function unmeasuredTable(unmeasured: readonly Unmeasured[], system: System): Markup | undefined {
  if (unmeasured.length === 0) return undefined
  const rows = unmeasured.map(
    ({ part, feature, what, limitNew, limitWorn }) =>
      markup`<tr><td><b>${part}</b> ${feature}</td><td class="told">${what}</td><td>${limitsText(limitNew, limitWorn, system)}</td><td style="width:30mm"></td></tr>`,
  )
  return markup`<h3>Still unmeasured</h3><table><thead><tr><th>Feature</th><th>What it is for</th><th>Limits</th><th>Reads</th></tr></thead><tbody>${rows}</tbody></table>`
}

/** Every source that anything in the book rests on, with what rests on it. */
export function sourcesTable({ work, settings, kit, verdicts, result }: JobBookInput): Markup {
  const { unit } = work
  const uses = new Map<string, Set<string>>()
  const note = (source: string | undefined, use: string) => {
    if (source) uses.set(source, (uses.get(source) ?? new Set()).add(use))
  }
  note(unit.sizesSource, 'sizes of the unit file')
  for (const part of unit.parts.values())
    for (const { id, limitNew, limitWorn } of part.features)
      for (const limit of [limitNew, limitWorn]) note(limit?.source, `limits of ${part.id}, ${id}`)
  for (const check of unit.checks.values()) note(check.limit?.source, `limit of ${check.id}`)
  for (const setting of settings)
    for (const figure of setting.figures) {
      note(figure.source, `${setting.connection}: ${figure.label}`)
      note(figure.limit?.source, `${setting.connection}: limit of ${figure.label}`)
    }
  for (const line of kit) for (const { source } of line.why) note(source, `buying list: ${line.what}`)
  for (const { reason } of [...work.problem.lags, ...result.assumptions]) note(reason.source, reason.says)
  for (const { reading } of verdicts?.readings ?? [])
    note(reading.with, `reading of ${reading.part}, ${reading.feature}`)
  const rows = [...uses].map(
    ([source, on]) => markup`<tr><td>${source}</td><td class="told">${shortList([...on])}</td></tr>`,
  )
  return markup`<section id="sources"><h2>Sources</h2><p>The maker's manual, the local code and licensed practice come before anything in this book.</p>${rows.length > 0 && markup`<table><thead><tr><th style="width:50%">Source</th><th>What rests on it</th></tr></thead><tbody>${rows}</tbody></table>`}</section>`
}

const MOST_USES = 5
const shortList = (uses: readonly string[]): string =>
  uses.slice(0, MOST_USES).join('; ') + (uses.length > MOST_USES ? `; and ${uses.length - MOST_USES} more` : '')
