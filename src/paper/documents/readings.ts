// As found, and what was read: each reading against its limits, and what nobody has measured yet.
import type { ReadingVerdict, Unmeasured } from '../../job/model/verdict.ts'
import { printKnown } from '../../quantity/known.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Limit } from '../../unit/model/unit.ts'
import { gauge } from '../drawings/gauge.ts'
import { judgementMark } from '../drawings/marks.ts'
import { limitText } from '../figureText.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { drawn, standingWord } from './parts.ts'
import type { Sources } from './sources.ts'

const SCALE_PX = 236

interface Printing {
  readonly system: System
  readonly sources: Sources
}

export function readingsSheet({ verdicts, work, system }: JobBookInput, sources: Sources): Markup | undefined {
  if (!verdicts) return undefined
  const printing = { system, sources }
  const byFeature = new Map<string, ReadingVerdict[]>()
  for (const each of verdicts.readings) {
    const key = JSON.stringify([each.part, each.feature])
    byFeature.set(key, [...(byFeature.get(key) ?? []), each])
  }
  const rows = [...byFeature.values()].map((readings) => featureRow(readings, printing))
  return markup`<section id="readings"><h2>As found, and readings</h2>${foundTable(work)}${rows.length > 0 && markup`<h3>Readings against limits</h3><table><colgroup><col style="width:36mm"><col style="width:48mm"><col style="width:34mm"><col></colgroup><thead><tr><th>Feature</th><th>Read</th><th>Limits</th><th>On the scale</th></tr></thead><tbody>${rows}</tbody></table>`}${unmeasuredTable(verdicts.unmeasured, printing)}</section>`
}

function foundTable({ job }: JobBookInput['work']): Markup | undefined {
  const rows = [...(job?.asFound.values() ?? [])].map(
    ({ part, where, condition, decision }) =>
      markup`<tr><td><b>${part}</b></td><td>${where}</td><td>${condition}</td><td>${decision ?? markup`<span class="told">not decided</span>`}</td></tr>`,
  )
  if (rows.length === 0) return undefined
  return markup`<table><colgroup><col style="width:42mm"><col style="width:40mm"><col><col style="width:28mm"></colgroup><thead><tr><th>Part</th><th>Where it is</th><th>Condition</th><th>Decision</th></tr></thead><tbody>${rows}</tbody></table>`
}

const bounds = ({ low, high }: Limit) => ({ ...(low !== undefined && { low }), ...(high !== undefined && { high }) })

function featureRow(readings: readonly ReadingVerdict[], printing: Printing): Markup {
  const { part, feature, what, limitNew, limitWorn } = readings[0] as ReadingVerdict
  const { system } = printing
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
      ? gauge({
          title: `${part}, ${feature}`,
          dimension: 'length',
          limit: bounds(limit),
          ...(limitNew && limitWorn && { worn: bounds(limitWorn) }),
          readings: onScale,
          system,
          width: SCALE_PX,
        })
      : undefined
  return markup`<tr><td><b>${part}</b><br>${feature}${what && markup`<br><span class="told">${what}</span>`}</td><td>${readings.map((one) => readingText(one, printing))}</td><td>${limitTexts(limitNew, limitWorn, printing)}</td><td>${scale && drawn(scale)}</td></tr>`
}

function readingText({ reading, uncertainty, is, because }: ReadingVerdict, { system, sources }: Printing): Markup {
  const size = reading.reads ? printKnown(reading.reads, 'length', { system }) : 'not read'
  const other =
    reading.reads && printKnown(reading.reads, 'length', { system: system === 'metric' ? 'inch' : 'metric' })
  const how = [
    reading.where,
    reading.with,
    uncertainty && `± ${printKnown(uncertainty, 'length', { system })}`,
    reading.temperature && `at ${printKnown(reading.temperature, 'temperature', { system })}`,
    reading.by,
    reading.date,
  ]
  return markup`<div class="one"><span class="fig">${size}</span> <span class="told">${other}</span> ${judgementMark(is)}<div class="told">${because} ${how.filter(Boolean).join(', ')} ${sources.mark(reading.with)}</div></div>`
}

function limitTexts(limitNew: Limit | undefined, limitWorn: Limit | undefined, { system, sources }: Printing): Markup {
  const line = (name: string, limit: Limit | undefined) => {
    const text = limit && limitText(bounds(limit), 'length', system)
    return (
      text !== undefined &&
      markup`<div>${name} <b>${text}</b> <span class="told">${standingWord(limit?.standing ?? 'told')}</span> ${sources.mark(limit?.source)}</div>`
    )
  }
  return markup`${line('new', limitNew)}${line('worn', limitWorn)}${!limitNew && !limitWorn && markup`<span class="told">none told</span>`}`
}

function unmeasuredTable(unmeasured: readonly Unmeasured[], printing: Printing): Markup | undefined {
  if (unmeasured.length === 0) return undefined
  const rows = unmeasured.map(
    ({ part, feature, what, limitNew, limitWorn }) =>
      markup`<tr><td><b>${part}</b> ${feature}</td><td class="told">${what}</td><td>${limitTexts(limitNew, limitWorn, printing)}</td><td></td></tr>`,
  )
  return markup`<h3>Still unmeasured</h3><table><colgroup><col style="width:45mm"><col style="width:45mm"><col><col style="width:32mm"></colgroup><thead><tr><th>Feature</th><th>What it is for</th><th>Limits</th><th>Reads</th></tr></thead><tbody>${rows}</tbody></table>`
}
