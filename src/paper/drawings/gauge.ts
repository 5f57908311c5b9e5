// The limit scale: a gap gauge. What lies between the jaws is good.

import type { Judgement } from '../../job/model/verdict.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { FigureDimension } from '../../unit/connections/kind.ts'
import { figureText, limitText } from '../figureText.ts'
import { type Markup, markup } from '../markup.ts'
import { type Drawing, drawing, px, run } from './drawing.ts'
import { hatch, type Slope } from './hatch.ts'

interface Bounds {
  readonly low?: number
  readonly high?: number
}

export interface GaugeReading {
  readonly low: number
  readonly high: number
  readonly uncertainty?: number
  /** Said by whoever judged it; the gauge only shows it. */
  readonly is: Judgement
}

export interface GaugeInput {
  readonly title: string
  readonly dimension: FigureDimension
  readonly limit: Bounds
  /** Beyond the limits for new, up to here, it is worn but usable. */
  readonly worn?: Bounds
  /** One is a pointer, several are numbered discs; a range is a bar. */
  readonly readings: readonly GaugeReading[]
  readonly system: System
  /** Where the scale begins and ends; left out: round what stands on it. */
  readonly scale?: { readonly from: number; readonly to: number }
  readonly width?: number
}

const JAW = { top: 26, height: 26 }
const RULE = JAW.top + JAW.height + 9
const HEIGHT = RULE + 30
const MARGIN = 26

const COLOUR: Readonly<Record<Judgement, string>> = {
  within: 'good',
  'worn, usable': 'look',
  out: 'stop',
  'not known': 'dot',
}

/**
 * Limits as two jaws of cut material, a rule beneath, readings in the gap. Values in SI.
 *
 * @example gauge({ title: 'End float', dimension: 'length', limit: { low: 5e-5, high: 2e-4 }, readings: [{ low: 1.1e-4, high: 1.1e-4, is: 'within' }], system: 'metric' })
 */
export function gauge(input: GaugeInput): Drawing {
  const { title, dimension, limit, worn, readings, system, width = 320 } = input
  const values = [limit.low, limit.high, worn?.low, worn?.high, ...readings.flatMap(({ low, high }) => [low, high])]
  const known = values.filter((value) => value !== undefined)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  const spread = most - least || Math.abs(most) || 1
  const { from, to } = input.scale ?? { from: least - spread * 0.25, to: most + spread * 0.25 }
  const x = (value: number) => MARGIN + ((value - from) / (to - from)) * (width - 2 * MARGIN)
  const text = (value: number) => figureText({ low: value, high: value }, dimension, system)
  const hard = { ...limit, ...worn }

  const jaws = [
    ...(hard.low === undefined ? [] : [jaw({ left: MARGIN - 12, right: x(hard.low), slope: 45, inner: 'right' })]),
    ...(hard.high === undefined
      ? []
      : [jaw({ left: x(hard.high), right: width - MARGIN + 12, slope: 135, inner: 'left' })]),
  ]
  const wornZones = worn
    ? [
        ...(worn.low !== undefined && limit.low !== undefined ? [zone(x(worn.low), x(limit.low))] : []),
        ...(worn.high !== undefined && limit.high !== undefined ? [zone(x(limit.high), x(worn.high))] : []),
      ]
    : []
  const marks = readings.map((reading, index) =>
    mark({
      left: x(reading.low),
      right: x(reading.high),
      spread: reading.uncertainty ? x(from + reading.uncertainty) - x(from) : 0,
      kind: COLOUR[reading.is],
      number: readings.length > 1 ? index + 1 : undefined,
    }),
  )
  const single = readings.length === 1 ? readings[0] : undefined
  const above = single
    ? [label((x(single.low) + x(single.high)) / 2, 15, figureText(single, dimension, system), width, 'figure strong')]
    : []
  return drawing({
    title,
    says: saysOf(input),
    width,
    height: HEIGHT,
    inner: [
      ...wornZones,
      ...jaws,
      rule(from, to, x),
      ...figures([limit.low, limit.high, worn?.low, worn?.high], x, text, width),
      ...marks,
      ...above,
    ],
  })
}

function saysOf({ dimension, limit, worn, readings, system }: GaugeInput): string {
  const limits = limitText(limit, dimension, system)
  const wear = worn && limitText({ ...limit, ...worn }, dimension, system)
  const read = readings.map((reading) => `${figureText(reading, dimension, system)}, ${reading.is}`)
  return `${limits ? `Limit ${limits}` : 'No limit known'}${wear ? `; worn ${wear}` : ''}. ${read.length ? `Read: ${read.join('; ')}.` : 'Not read yet.'}`
}

function jaw({
  left,
  right,
  slope,
  inner,
}: {
  left: number
  right: number
  slope: Slope
  inner: 'left' | 'right'
}): Markup {
  const bottom = JAW.top + JAW.height
  const loop = [
    { x: left, y: JAW.top },
    { x: right, y: JAW.top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]
  const [face, back] = inner === 'right' ? [right, left] : [left, right]
  return markup`<path class="hatch" d="${hatch([loop], { pitch: 6, slope })}"/><path class="edge" d="M${px(back)} ${JAW.top}H${px(face)}V${bottom}H${px(back)}"/>`
}

const zone = (left: number, right: number): Markup =>
  markup`<rect class="worn-zone" x="${px(left)}" y="${JAW.top + 4}" width="${px(right - left)}" height="${JAW.height - 4}"/>`

/** Graduations at a round step; figures stand only at the limits. */
function rule(from: number, to: number, x: (value: number) => number): Markup {
  const rough = (to - from) / 20
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? rough
  let path = `M${px(x(from))} ${RULE}H${px(x(to))}`
  for (let k = Math.ceil(from / step); k * step <= to; k += 1)
    path += `M${px(x(k * step))} ${RULE}v${k % 5 === 0 ? 8 : 5}`
  return markup`<path class="thin" d="${path}"/>`
}

/** Bold figures beneath the limits; where two would touch the later one is left out (it stands in the table beside). */
function figures(
  limits: readonly (number | undefined)[],
  x: (value: number) => number,
  text: (value: number) => string,
  width: number,
): readonly Markup[] {
  const taken: { left: number; right: number }[] = []
  return limits.flatMap((value) => {
    if (value === undefined) return []
    const half = text(value).length * 4.1
    const at = Math.max(half, Math.min(x(value), width - half))
    if (taken.some(({ left, right }) => at - half < right && at + half > left)) return []
    taken.push({ left: at - half, right: at + half })
    return [label(x(value), RULE + 23, text(value), width, 'figure strong')]
  })
}

function label(x: number, y: number, text: string, width: number, kind: string): Markup {
  const half = text.length * 4.1
  return markup`<text class="${kind} mid" x="${px(Math.max(half, Math.min(x, width - half)))}" y="${px(y)}">${text}</text>`
}

interface Mark {
  readonly left: number
  readonly right: number
  readonly spread: number
  readonly kind: string
  readonly number: number | undefined
}

function mark({ left, right, spread, kind, number }: Mark): Markup {
  const [middle, y] = [(left + right) / 2, JAW.top + JAW.height / 2]
  const bar =
    right - left + 2 * spread > 2 && markup`<path class="range" d="M${px(left - spread)} ${y}H${px(right + spread)}"/>`
  if (number === undefined) {
    const pointer = run(
      [
        { x: middle - 7, y: JAW.top - 5 },
        { x: middle + 7, y: JAW.top - 5 },
        { x: middle + 7, y: JAW.top + 15 },
        { x: middle, y: JAW.top + JAW.height + 4 },
        { x: middle - 7, y: JAW.top + 15 },
      ],
      true,
    )
    return markup`${bar}<path class="${kind}" d="${pointer}"/>`
  }
  return markup`${bar}<circle class="${kind}" cx="${px(middle)}" cy="${y}" r="10"/><text class="number small on" x="${px(middle)}" y="${y + 4.5}">${number}</text>`
}
