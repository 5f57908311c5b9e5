// The job book: everything about one job on paper, in the order in which it is wanted.
import type { PartId } from '../../unit/model/unit.ts'
import { halfSection } from '../drawings/halfSection/halfSection.ts'
import { holeMap } from '../drawings/holeMap.ts'
import { itemNumbers } from '../items.ts'
import { type Markup, markup } from '../markup.ts'
import { asBuiltSheet } from './asBuiltSheet.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { type Fields, page, titleBlock } from './page.ts'
import { drawn } from './parts.ts'
import { readingsSheet } from './readings.ts'
import { proofLine, sequenceSheet } from './sequenceSheet.ts'
import { sourcesOf } from './sources.ts'
import { type StepFacts, stepFacts } from './stepFacts.ts'
import { stepSheet } from './stepSheet.ts'
import { kitTable, questionsTable, settingsTable } from './tables.ts'
import { hasTried, TRIED_TITLE, triedSheet } from './triedSheet.ts'

const WIDE_PX = 685
/** A shorter parts list is kept on one page. */
const MOST_TOGETHER = 60

/**
 * One self-contained HTML file: no script, nothing from a network. Prints on A4 and letter; nothing that a person wrote can break it.
 *
 * @example jobBook({ work, result: sequenceOf(work), settings: settingsOf(work), kit: kitOf(unit, job, renewalsOf(work)), system: 'metric', date: '25 November 2026' })
 */
export function jobBook(input: JobBookInput): string {
  const { work, fonts, sheet } = input
  const sources = sourcesOf(input)
  const numbers = itemNumbers(work.unit)
  const steps = stepFacts(input)
  const fields = fieldsOf(input)
  const readings = readingsSheet(input, sources)
  const built = asBuiltSheet(input)
  return page({
    fields,
    ...(fonts && { fonts }),
    ...(sheet && { sheet }),
    body: [
      cover(input, fields, { hasReadings: readings !== undefined, hasBuilt: built !== undefined }, steps),
      sequenceSheet(steps, input),
      halfSections(input, numbers),
      stepSheets(steps, input, numbers),
      holeMaps(input),
      settingsTable(input, sources),
      triedSheet(input),
      kitTable(input, numbers, sources),
      questionsTable(work.questions),
      readings,
      built,
      sources.table,
    ],
  })
}

function fieldsOf({ work, date, person }: JobBookInput): Fields {
  const { unit, job, variant } = work
  const serial = job?.serial
  const words = [variant, serial && `serial ${serial}`].filter(Boolean).join(', ')
  return {
    title: `Job book${job ? ` ${job.id}` : ''}: ${unit.name}`,
    unit: unit.name,
    ...(job?.owner && { owner: job.owner }),
    ...(job && { job: job.id }),
    ...(unit.revision && { revision: unit.revision }),
    ...(words && { variant: words }),
    date,
    ...(person && { person }),
  }
}

function cover(
  { work, result, kit, verdicts, tried }: JobBookInput,
  fields: Fields,
  { hasReadings, hasBuilt }: { readonly hasReadings: boolean; readonly hasBuilt: boolean },
  steps: readonly StepFacts[],
): Markup {
  const { unit, taken, questions, faults } = work
  const first = questions.filter(({ rank }) => rank === 1).length
  const out = verdicts?.readings.filter(({ is }) => is === 'out').length ?? 0
  const noReturns = steps.filter(({ operation }) => operation.noReturn !== undefined).length
  const glance = [
    `${steps.length} steps${noReturns ? `, ${noReturns} of them points of no return` : ''}.`,
    `${kit.length} lines to buy.`,
    ...(verdicts
      ? [
          `${verdicts.readings.length} readings, ${out} out of limits; ${verdicts.unmeasured.length} sizes with limits still unmeasured.`,
        ]
      : []),
    `${questions.length} questions open${first ? `, ${first} of rank 1 (holds up the sequence or a setting)` : ''}.`,
  ]
  const contents = [
    ['sequence', 'The sequence'],
    ['half-sections', 'Half sections and parts list'],
    ['steps', 'Step sheets'],
    ['maps', 'Tightening maps'],
    ['settings', 'Settings'],
    ...(hasTried(tried) ? [['as-set', TRIED_TITLE]] : []),
    ['kit', 'Buying list'],
    ['not-known', 'What was not known'],
    ...(hasReadings ? [['readings', 'As found, and readings']] : []),
    ...(hasBuilt ? [['as-built', 'As built: signatures and photos']] : []),
    ['sources', 'Sources'],
  ] as const
  return markup`<main><h1>Job book</h1>${titleBlock(fields)}${unit.invented && markup`<p><b>Invented data:</b> the machine and its sizes belong to no machine that ever ran.</p>`}${unit.about && markup`<p>${unit.about}</p>`}${!result.value && taken.map((text) => markup`<p class="told">${text}</p>`)}${faults.length > 0 && markup`<div class="stop"><h3>Stop: this cannot all be true</h3><ul>${faults.map((fault) => markup`<li>${fault.message} ${fault.next}</li>`)}</ul></div>`}<h3>At a glance</h3>${proofLine(result, work)}<ul>${glance.map((text) => markup`<li>${text}</li>`)}</ul><h3>In this book</h3><ul class="contents">${contents.map(([id, name]) => markup`<li><a href="#${id ?? ''}">${name}</a></li>`)}</ul></main>`
}

function halfSections({ work, system }: JobBookInput, numbers: ReadonlyMap<PartId, number>): Markup {
  const { unit } = work
  const drawings = [...unit.lines.keys()].map(
    (line) =>
      markup`<h3>Line ${line}</h3>${drawn(halfSection(unit, line, { width: WIDE_PX, mostHeight: 390, balloons: numbers, system }))}`,
  )
  const items = [...numbers].map(([id, number]) => {
    const part = unit.parts.get(id)
    const told = [part && part.pieces > 1 ? `${part.pieces} off` : undefined, part?.material, part?.number].filter(
      (text) => text !== undefined,
    )
    return markup`<li><b>${number}</b><span>${id}${told.length > 0 && markup` <span class="told">${told.join(', ')}</span>`}</span></li>`
  })
  return markup`<section id="half-sections"><h2>Half sections</h2>${drawings}<h3>Parts list</h3><ol class="items${items.length < MOST_TOGETHER && ' short'}">${items}</ol></section>`
}

function stepSheets(
  steps: readonly StepFacts[],
  input: JobBookInput,
  numbers: ReadonlyMap<PartId, number>,
): Markup | undefined {
  if (steps.length === 0) return undefined
  return markup`<section id="steps"><h2>Step sheets</h2>${steps.map((step) => stepSheet(step, input, numbers))}</section>`
}

function holeMaps({ work }: JobBookInput): Markup | undefined {
  const maps = work.connections.connections.flatMap(
    ({ connection, kind, given }) => kind.drawing(connection, given, work.unit).maps,
  )
  if (maps.length === 0) return undefined
  return markup`<section id="maps"><h2>Tightening maps</h2><p class="told">Looking along the line from its − end to its + end. Fill in one punch place for each stage as it is reached.</p>${maps.map((map) => markup`<h3>${map.connection}</h3>${drawn(holeMap(map, 460))}`)}</section>`
}
