// The sequence on centre lines: one line for each workpiece, time to the right, in as many bands as paper needs.
import type { Mode, OpId, PlanningProblem } from '../../planning/model/problem.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import { beforeEach } from '../../planning/relations/before.ts'
import { second } from '../../quantity/constructors.ts'
import { printQuantity } from '../../quantity/printQuantity.ts'
import { type Markup, markup } from '../markup.ts'
import { row } from './balloons.ts'
import { type Drawing, drawing, px } from './drawing.ts'

export interface SequenceMapOptions {
  readonly width?: number
  readonly title?: string
  /** Checks: a hold point is drawn through their balloon. */
  readonly holds?: ReadonlySet<OpId>
}

const APART = 'apart'
const LABEL = 118
const LANE = 40
const RADIUS = 10.5
const PITCH = 22.5
const AXIS = 22
const MOST_BANDS = 10
/** A balloon may stand so far from its time. */
const MOST_SHIFT = 24
/** A shorter pause is no wait worth drawing. */
const LEAST_WAIT_S = 60

interface MapStep {
  readonly number: number
  readonly op: OpId
  readonly lane: string
  readonly start: number
  readonly end: number
  readonly turned: boolean
  readonly noReturn: boolean
  readonly wait: number
}

interface Item {
  readonly kind: 'step' | 'turn' | 'rack'
  readonly at: number
  readonly step: MapStep
}

/**
 * Where each step happens and when, with waits, turn-overs, hold points and points of no return; a workpiece that goes
 * home leaves its line with a square corner. Steps carry their numbers in the sequence.
 *
 * @example sequenceMap(plan(problem), problem).title   // 'The sequence, by workpiece'
 */
export function sequenceMap(result: PlanResult, problem: PlanningProblem, options: SequenceMapOptions = {}): Drawing {
  return sequenceMaps(result, problem, { ...options, mostHeight: Infinity })[0] as Drawing
}

/** The same in as many drawings as paper needs: none is higher than `mostHeight`, and none is cut within a band. */
export function sequenceMaps(
  result: PlanResult,
  problem: PlanningProblem,
  options: SequenceMapOptions & { readonly mostHeight: number },
): readonly Drawing[] {
  const { width = 680, title = 'The sequence, by workpiece', holds, mostHeight } = options
  const isHold = (op: OpId) => holds?.has(op) ?? problem.operations.some(({ id, check }) => id === op && check)
  const steps = stepsOf(result, problem)
  if (steps.length === 0) return [drawing({ title, says: 'No sequence.', width, height: 30, inner: [] })]
  const lanes = lanesOf(steps)
  const total = Math.max(...steps.map(({ end }) => end))
  const room = width - LABEL - RADIUS - 6
  const bands = bandsFor(steps, lanes, total, room)
  const says = saysOf(steps, lanes, isHold)

  const drawings: Drawing[] = []
  let [top, pieces]: [number, Markup[]] = [4, []]
  const close = () => {
    pieces.push(legend(top + 6))
    drawings.push(drawing({ title, says, width, height: top + 24, inner: pieces }))
    top = 4
    pieces = []
  }
  for (let band = 0; band < bands; band += 1) {
    const [from, to] = [(band * total) / bands, ((band + 1) * total) / bands]
    const shown = lanes.filter((lane) => touches(lane, from, to))
    const height = shown.length * LANE + AXIS + 16
    if (pieces.length > 0 && top + height + 24 > mostHeight) close()
    pieces.push(bandOf({ steps, shown, from, to, top, room, isHold }))
    top += height
  }
  close()
  return drawings
}

function stepsOf(result: PlanResult, problem: PlanningProblem): readonly MapStep[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const chosen = result.steps.flatMap((step) => {
    const mode = operations.get(step.op)?.modes.find(({ id }) => id === step.mode)
    return mode ? [{ step, mode }] : []
  })
  const before = beforeEach(
    problem,
    chosen.map(({ step, mode }) => ({ ...step, mode })),
  )
  // A workpiece that has gone home is worked on where it went.
  const wentTo = new Map<string, string>()
  const laneNow = (mode: Mode): string => {
    let lane = laneOf(mode)
    for (let next = wentTo.get(lane); next !== undefined; next = wentTo.get(lane)) lane = next
    return lane
  }
  return chosen.map(({ step, mode }, index) => {
    const lane = laneNow(mode)
    if (lane !== APART && lane !== step.op) wentTo.set(step.op, lane)
    const { changes, wait_s } = before[index]!
    return {
      number: index + 1,
      op: step.op,
      lane,
      start: step.start_s,
      end: step.end_s,
      turned: changes.some(({ what }) => what === 'attitude'),
      noReturn: operations.get(step.op)?.noReturn !== undefined,
      wait: wait_s,
    }
  })
}

const laneOf = ({ setup }: Mode): string => (setup.workpiece === 'any' ? APART : setup.workpiece)

interface Lane {
  readonly name: string
  readonly from: number
  readonly to: number
  /** The step that brings this workpiece home, on another line. */
  readonly home: MapStep | undefined
}

/** In the order in which the lines begin; the one that gathers the others, where the last step is done, stands last. */
function lanesOf(steps: readonly MapStep[]): readonly Lane[] {
  const main = steps.at(-1)?.lane
  const names = [...new Set(steps.map(({ lane }) => lane))].sort((a, b) => Number(a === main) - Number(b === main))
  return names.map((name) => {
    const mine = steps.filter(({ lane }) => lane === name)
    const home = steps.find(({ op, lane }) => op === name && lane !== name)
    return {
      name,
      from: Math.min(...mine.map(({ start }) => start)),
      to: Math.max(...mine.map(({ end }) => end), home?.start ?? 0),
      home,
    }
  })
}

const touches = ({ from, to }: Lane, left: number, right: number): boolean => from < right && to >= left

function itemsOf(steps: readonly MapStep[], lane: Lane, from: number, to: number): readonly Item[] {
  return steps
    .filter(({ lane: name, start }) => name === lane.name && start >= from && start < to)
    .flatMap((step) => [
      ...(step.turned ? [{ kind: 'turn' as const, at: step.start, step }] : []),
      { kind: 'step' as const, at: (step.start + Math.min(step.end, to)) / 2, step },
      ...(step.noReturn ? [{ kind: 'rack' as const, at: step.end, step }] : []),
    ])
}

/** The fewest bands in which every balloon stands near its time. */
function bandsFor(steps: readonly MapStep[], lanes: readonly Lane[], total: number, room: number): number {
  for (let bands = 1; bands < MOST_BANDS; bands += 1) {
    const span = total / bands
    const fits = Array.from({ length: bands }, (_, band) => band * span).every((from) =>
      lanes.every((lane) => {
        const anchors = itemsOf(steps, lane, from, from + span).map(({ at }) => ((at - from) / span) * room)
        if (anchors.length * PITCH > room) return false
        return row(anchors, { pitch: PITCH, from: 0, to: room }).every(
          (x, index) => Math.abs(x - (anchors[index] ?? x)) <= MOST_SHIFT,
        )
      }),
    )
    if (fits) return bands
  }
  return MOST_BANDS
}

interface Band {
  readonly steps: readonly MapStep[]
  readonly shown: readonly Lane[]
  readonly from: number
  readonly to: number
  readonly top: number
  readonly room: number
  readonly isHold: (op: OpId) => boolean | undefined
}

function bandOf({ steps, shown, from, to, top, room, isHold }: Band): Markup {
  const x = (at: number) => LABEL + ((Math.max(from, Math.min(at, to)) - from) / (to - from)) * room
  const y = (index: number) => top + index * LANE + LANE / 2
  const bottom = top + shown.length * LANE
  const placed = shown.map((lane) => {
    const items = itemsOf(steps, lane, from, to)
    const places = row(
      items.map(({ at }) => x(at)),
      { pitch: PITCH, from: LABEL + RADIUS, to: LABEL + room },
    )
    return items.map((item, index) => ({ ...item, x: places[index] ?? x(item.at) }))
  })
  const placeOf = (step: MapStep) =>
    placed
      .flatMap((items, index) => items.map((item) => ({ ...item, y: y(index) })))
      .find((item) => item.kind === 'step' && item.step === step)
  const lines = shown.map((lane, index) =>
    laneLine({ lane, index, steps, from, to, x, y: y(index), isMain: !lane.home && index === shown.length - 1 }),
  )
  const homes = shown.flatMap((lane, index) => {
    const target = lane.home && lane.home.start >= from && lane.home.start < to ? placeOf(lane.home) : undefined
    if (!target) return []
    const sign = target.y > y(index) ? 1 : -1
    const tip = target.y - sign * (RADIUS + 2)
    return [
      markup`<path class="thin heavy" d="M${px(x(lane.home?.start ?? 0))} ${px(y(index))}H${px(target.x)}V${px(tip - sign * 7)}"/><path class="arrow-head" d="M${px(target.x)} ${px(tip)}l-4 ${-sign * 8}h8Z"/>`,
    ]
  })
  const marks = placed.flatMap((items, index) =>
    items.map((item) => markOf(item, item.x, y(index), isHold(item.step.op) === true)),
  )
  return markup`<g>${axis({ from, to, x, bottom, top })}${lines}${homes}${marks}</g>`
}

interface LaneLine {
  readonly lane: Lane
  readonly index: number
  readonly steps: readonly MapStep[]
  readonly from: number
  readonly to: number
  readonly x: (at: number) => number
  readonly y: number
  readonly isMain: boolean
}

function laneLine({ lane, steps, from, to, x, y, isMain }: LaneLine): Markup {
  const waits = steps.filter(
    (step) => step.lane === lane.name && step.wait >= LEAST_WAIT_S && step.start > from && step.start - step.wait < to,
  )
  let at = Math.max(lane.from, from)
  const end = Math.min(lane.to, to)
  let path = ''
  for (const { start, wait } of waits) {
    path += `M${px(x(at))} ${px(y)}H${px(x(start - wait))}`
    at = Math.min(start, end)
  }
  path += `M${px(x(at))} ${px(y)}H${px(x(end))}`
  const dots = waits.map(({ start, wait }) => `M${px(x(start - wait) + 3)} ${px(y)}H${px(x(start))}`).join('')
  const texts = waits.map(({ start, wait }) => {
    const words = `waits ${printQuantity(second(wait), 'time', { system: 'metric' })}`
    return (
      x(start) - x(start - wait) > words.length * 6.2 &&
      markup`<text class="told mid" x="${px((x(start) + x(start - wait)) / 2)}" y="${px(y - 8)}">${words}</text>`
    )
  })
  return markup`${nameOf(lane.name, y)}<path class="${isMain ? 'bar' : 'thin heavy'}" d="${path}"/><path class="waits" d="${dots}"/>${texts}`
}

const WIDEST = 17

/** The name in one or two lines, left of its line. */
function nameOf(name: string, y: number): Markup {
  if (name.length <= WIDEST) return markup`<text class="words" x="0" y="${px(y + 5)}">${name}</text>`
  const cut = name.lastIndexOf(' ', WIDEST)
  const [first, rest] =
    cut > 0 ? [name.slice(0, cut), name.slice(cut + 1)] : [name.slice(0, WIDEST), name.slice(WIDEST)]
  const second = rest.length > WIDEST ? `${rest.slice(0, WIDEST - 1)}…` : rest
  return markup`<text class="words" x="0" y="${px(y - 3)}">${first}</text><text class="words" x="0" y="${px(y + 13)}">${second}</text>`
}

function markOf({ kind, step }: Item, x: number, y: number, isHold: boolean): Markup {
  if (kind === 'turn')
    return markup`<path class="turn" d="M${px(x + 3)} ${px(y - 13)}A5 14 0 1 0 ${px(x + 4)} ${px(y + 11)}"/><path class="arrow-head" d="M${px(x + 8)} ${px(y + 4)}l-7 2l4 7Z"/>`
  if (kind === 'rack')
    return markup`<path class="stop" d="M${px(x - 10)} ${px(y + 4)}v-3h20v3ZM${px(x - 10)} ${px(y + 1)}l6.6 -8v8l6.7 -8v8l6.7 -8v8Z"/>`
  const bar =
    isHold &&
    markup`<path class="hold" d="M${px(x)} ${px(y - 17)}V${px(y + 17)}M${px(x - 4)} ${px(y - 17)}h8M${px(x - 4)} ${px(y + 17)}h8"/>`
  return markup`<g data-step="${step.op}">${bar}<circle class="balloon" cx="${px(x)}" cy="${px(y)}" r="${RADIUS}"/><text class="number small" x="${px(x)}" y="${px(y + 4.3)}">${step.number}</text></g>`
}

const HOUR = 3600
const STEPS_S = [300, 600, 900, 1800, HOUR, 2 * HOUR, 4 * HOUR, 8 * HOUR]

function axis({
  from,
  to,
  x,
  top,
  bottom,
}: {
  from: number
  to: number
  x: (at: number) => number
  top: number
  bottom: number
}): Markup {
  const step = STEPS_S.find((each) => x(from + each) - x(from) >= 62) ?? 24 * HOUR
  const times = []
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) times.push(at)
  const clock = (at: number) => `${Math.floor(at / HOUR)}:${String(Math.round(at / 60) % 60).padStart(2, '0')}`
  return markup`${times.map((at) => markup`<path class="hour" d="M${px(x(at))} ${top}V${bottom}"/><text class="figure mid" x="${px(x(at))}" y="${bottom + 14}">${clock(at)}</text>`)}`
}

function legend(y: number): Markup {
  const none = { number: 1, op: '', lane: '', start: 0, end: 0, turned: false, noReturn: false, wait: 0 }
  const rack = markOf({ kind: 'rack', at: 0, step: none }, 12, y, false)
  const turn = markOf({ kind: 'turn', at: 0, step: none }, 168, y, false)
  const hold = markup`<path class="hold" d="M250 ${y - 12}v24M246 ${y - 12}h8M246 ${y + 12}h8"/>`
  const waits = markup`<path class="waits" d="M404 ${y}h30"/>`
  const home = markup`<path class="thin heavy" d="M486 ${y - 6}h14v6"/><path class="arrow-head" d="M500 ${y + 8}l-4 -8h8Z"/>`
  const words = [
    [30, 'point of no return'],
    [182, 'turn over'],
    [262, 'hold point: a check'],
    [442, 'waits'],
    [512, 'goes home onto'],
  ] as const
  return markup`<g>${rack}${turn}${hold}${waits}${home}${words.map(([x, text]) => markup`<text class="told" x="${x}" y="${y + 5}">${text}</text>`)}</g>`
}

function saysOf(steps: readonly MapStep[], lanes: readonly Lane[], isHold: (op: OpId) => boolean | undefined): string {
  return lanes
    .map((lane) => {
      const mine = steps.filter((step) => step.lane === lane.name)
      const told = mine.map((step) => {
        const marks = [
          ...(step.turned ? ['turned over first'] : []),
          ...(step.wait >= LEAST_WAIT_S
            ? [`waits ${printQuantity(second(step.wait), 'time', { system: 'metric' })} first`]
            : []),
          ...(isHold(step.op) ? ['hold point'] : []),
          ...(step.noReturn ? ['point of no return'] : []),
        ]
        return `${step.number}${marks.length ? ` (${marks.join(', ')})` : ''}`
      })
      const home = lane.home ? `; goes home in step ${lane.home.number}` : ''
      return `${lane.name}: steps ${told.join(', ')}${home}.`
    })
    .join(' ')
}
