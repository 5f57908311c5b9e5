// One sheet for one step, as it lies on the bench.
import type { Lag } from '../../planning/model/problem.ts'
import { second } from '../../quantity/constructors.ts'
import { printQuantity } from '../../quantity/printQuantity.ts'
import type { PartId } from '../../unit/model/unit.ts'
import { gauge } from '../drawings/gauge.ts'
import { halfSection } from '../drawings/halfSection/halfSection.ts'
import { holeMap } from '../drawings/holeMap.ts'
import { RACK } from '../drawings/marks.ts'
import { type Markup, markup } from '../markup.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { cautions, drawn, listed, settingOnSheet } from './parts.ts'
import type { StepFacts } from './stepFacts.ts'
import type { Hold } from './whyHere.ts'

const DRAWING_PX = 390
/** A part by itself, away from the workpiece, is drawn small: it is there to be known again. */
const ALONE_PX = 170
/** Two ordinary steps stand on one sheet of paper. */
const TALL_PX = 250
const MOST_BALLOONS = 9
const MOST_REASONS = 2

export const time = (s: number): string => printQuantity(second(s), 'time', { system: 'metric' })

/** `after 12 (spacer): the bearing would bar it`; a step that stood already has no number. */
export const holdText = ({ side, number, op, reason }: Hold): string =>
  `${side} ${number ? `${number}, ` : ''}${op}: ${reason.says}${reason.standing === 'supposed' ? ' (supposed ?)' : ''}`

/** Where the work lies and how. */
export function placeText({ mode }: Pick<StepFacts, 'mode'>): string {
  const { workpiece, attitude, station } = mode.setup
  const words = [workpiece === 'any' ? 'away from the workpiece' : workpiece, attitude, station].filter(
    (word) => word !== 'any',
  )
  return words.join(', ')
}

/** Who is at it, by name where people work beside each other. */
function whoText({ mode, people }: StepFacts): string {
  if (people) return `, ${people.join(' and ') || 'goes on by itself'}`
  return mode.people > 1 ? `, ${mode.people} people` : ''
}

export function stepSheet(step: StepFacts, input: JobBookInput, numbers: ReadonlyMap<PartId, number>): Markup {
  const { operation, mode, number } = step
  const { usual, low, high } = operation.duration_s
  const minutes = (s: number) => String(Math.round(s / 60))
  const drawing = drawingOf(step, input, numbers)
  const maps = step.maps.map((map) => drawn(holeMap(map, 300)))
  const left = [drawing, ...maps].filter((piece) => piece !== undefined)
  const facts = [
    ...(mode.setup.tools === 'any' ? [] : [markup`<h4>Tools</h4><p>${mode.setup.tools.join(', ')}</p>`]),
    listed('Before it', [...step.setUp, ...(step.wait_s >= 60 ? [`wait ${time(step.wait_s)}`] : [])]),
    listed('In this order', step.within),
    listed('Why here', step.why.slice(0, MOST_REASONS).map(holdText)) ??
      markup`<h4>Why here</h4><p>Nothing holds it here: it is quickest.</p>`,
    listed(
      'Clock',
      step.clocks.map((lag) => clockText(lag, operation.id)),
    ),
    checkLimit(step, input),
    listed('Note', step.part?.id === operation.id && step.part.note ? [step.part.note] : []),
  ]
  const after = [listed('Proves it', step.proofs), listed('Done wrongly it shows', step.warnings)]
  const head = markup`<header><span class="number">${number}</span><div><h3>${operation.does}</h3><p>${placeText(step)}${whoText(step)}${mode.id !== 'as told' && ` · ${mode.id}`}</p></div><div class="minutes">${minutes(usual)}<small>min${minutes(low) !== minutes(high) && ` (${minutes(low)} to ${minutes(high)})`}</small></div></header>`
  const noReturn =
    operation.noReturn !== undefined &&
    markup`<p class="no-return">${RACK} <b>Point of no return.</b> ${operation.noReturn}</p>`
  const body = left.length
    ? markup`<div class="two"><div>${left}</div><div>${facts}</div></div>`
    : markup`<div class="columns">${facts}</div>`
  const settings = step.settings.map((setting) => settingOnSheet(setting, input.system))
  return markup`<article class="step" id="step-${number}" data-step="${operation.id}">${head}${noReturn}${cautions(step.cautions)}${body}${settings}<div class="columns">${after}</div><div class="signs"><span>Read, found, changed</span><span>Done by</span><span>Date</span><span>Time</span></div></article>`
}

function drawingOf(
  step: StepFacts,
  { work, system }: JobBookInput,
  numbers: ReadonlyMap<PartId, number>,
): Markup | undefined {
  if (step.line === undefined) return undefined
  const drawing = halfSection(work.unit, step.line, {
    width: DRAWING_PX,
    mostHeight: step.mode.setup.workpiece === 'any' ? ALONE_PX : TALL_PX,
    home: step.home,
    toCome: step.toCome,
    balloons: numbers,
    most: MOST_BALLOONS,
    closeUp: true,
    system,
    ...(step.part && { under: step.part.id }),
    ...(step.from && step.part?.id === step.operation.id && { from: step.from }),
  })
  return drawn(drawing, `Line ${step.line}.`)
}

function clockText({ from, to, min_s, max_s, reason }: Lag, step: string): string {
  const [first, second] = [from, to].map(({ op, edge }) => `the ${edge} of ${op === step ? 'this step' : op}`)
  const bounds = [
    ...(min_s === undefined ? [] : [`at least ${time(min_s)}`]),
    ...(max_s === undefined ? [] : [`at most ${time(max_s)}`]),
  ]
  return `From ${first} to ${second}: ${bounds.join(', ')}. ${reason.says}`
}

/** The limit of a check with an empty gauge, to be marked by hand. */
function checkLimit({ check }: StepFacts, { system }: JobBookInput): Markup | undefined {
  const limit = check?.limit
  if (!check || !limit) return undefined
  const [low, high] = limit.unit === 'm' ? [limit.low, limit.high] : []
  const drawing =
    low === undefined && high === undefined
      ? undefined
      : gauge({
          title: `${check.id}, not read yet`,
          dimension: 'length',
          limit: { ...(low !== undefined && { low }), ...(high !== undefined && { high }) },
          readings: [],
          system,
          width: 260,
        })
  return markup`<h4>Limit</h4><p><span class="fig">${limit.text}</span> <span class="told">${limit.standing}${limit.source && `, ${limit.source}`}</span></p>${drawing && drawn(drawing)}`
}
