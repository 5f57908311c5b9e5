// Every source that anything in the book rests on, numbered once, so that tables can point at it.
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'

export interface Sources {
  /** `[3]`; nothing where nothing was told. */
  readonly mark: (source: string | undefined) => Markup | undefined
  readonly table: Markup
}

const MOST_USES = 5

export function sourcesOf({ work, settings, kit, verdicts, result }: JobBookInput): Sources {
  const { unit } = work
  const uses = new Map<string, Set<string>>()
  const note = (source: string | undefined, use: string) => {
    if (source) uses.set(source, (uses.get(source) ?? new Set()).add(use))
  }
  note(unit.sizesSource, 'sizes of the unit file')
  for (const part of unit.parts.values()) {
    for (const { id, limitNew, limitWorn } of part.features)
      for (const limit of [limitNew, limitWorn]) note(limit?.source, `limits of ${part.id}, ${id}`)
  }
  for (const check of unit.checks.values()) note(check.limit?.source, `limit of ${check.id}`)
  for (const { connection, figures } of settings) {
    for (const figure of figures) {
      note(figure.source, `${connection}: ${figure.label}`)
      note(figure.limit?.source, `${connection}: limit of ${figure.label}`)
    }
  }
  for (const line of kit) for (const { source } of line.why) note(source, `buying list: ${line.what}`)
  for (const { reason } of [...work.problem.lags, ...result.assumptions]) note(reason.source, reason.says)
  for (const { reading } of verdicts?.readings ?? [])
    note(reading.with, `reading of ${reading.part}, ${reading.feature}`)

  const numbers = new Map([...uses.keys()].map((source, index) => [source, index + 1]))
  const rows = [...uses].map(
    ([source, on], index) =>
      markup`<tr id="source-${index + 1}"><td class="fig">[${index + 1}]</td><td>${source}</td><td class="told">${shortList([...on])}</td></tr>`,
  )
  return {
    mark: (source) => {
      const number = numbers.get(source ?? '')
      return number === undefined ? undefined : markup`<a class="source" href="#source-${number}">[${number}]</a>`
    },
    table: markup`<section id="sources"><h2>Sources</h2><p>The maker's manual, the local code and licensed practice come before anything in this book.</p>${rows.length > 0 && markup`<table><colgroup><col style="width:10mm"><col style="width:96mm"><col></colgroup><thead><tr><th></th><th>Source</th><th>What rests on it</th></tr></thead><tbody>${rows}</tbody></table>`}</section>`,
  }
}

const shortList = (uses: readonly string[]): string =>
  uses.slice(0, MOST_USES).join('; ') + (uses.length > MOST_USES ? `; and ${uses.length - MOST_USES} more` : '')
