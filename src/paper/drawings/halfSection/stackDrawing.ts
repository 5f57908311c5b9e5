// A line of which nobody took a size: the stacking list on its centre line, every face dashed.
import type { LineId, PartId, Unit } from '../../../unit/model/unit.ts'
import { markup } from '../../markup.ts'
import { type Drawing, drawing, px } from '../drawing.ts'

interface StackOptions {
  readonly width: number
  readonly title: string
  readonly under?: PartId
  readonly home?: ReadonlySet<PartId>
  readonly balloons?: ReadonlyMap<PartId, number>
}

const GAP = 6
const HEIGHT = 150
const BALLOON = 14

/** The parts in their order, all of one size: it says the order and nothing else. */
export function stackDrawing(unit: Unit, line: LineId, { width, title, under, home, balloons }: StackOptions): Drawing {
  const { ends, stack } = unit.lines.get(line) ?? { ends: ['-', '+'] as const, stack: [] }
  const parts = stack.filter((id) => !home || home.has(id) || id === under)
  const each = Math.min(70, (width - 60) / Math.max(1, parts.length))
  const left = (width - each * parts.length) / 2
  const axis = HEIGHT / 2 + 20
  const boxes = parts.map((id, index) => {
    const [x, w] = [left + index * each + GAP / 2, each - GAP]
    const number = balloons?.get(id)
    const hand = id === under ? ' at-hand' : ''
    return markup`<g class="part${id === under && ' work'}" data-part="${id}"><rect class="face" x="${px(x)}" y="${px(axis - 40)}" width="${px(w)}" height="80"/><rect class="open" x="${px(x)}" y="${px(axis - 40)}" width="${px(w)}" height="80"/><text class="asked" x="${px(x + w / 2)}" y="${px(axis - 20)}">?</text></g>${number !== undefined && markup`<circle class="balloon${hand}" cx="${px(x + w / 2)}" cy="${BALLOON + 2}" r="${BALLOON}"/><text class="number${hand}" x="${px(x + w / 2)}" y="${px(BALLOON + 7.5)}">${number}</text>`}`
  })
  const says = parts.length
    ? `Nothing on this line was measured. The order from ${ends[0]} to ${ends[1]}: ${parts.join(', ')}.`
    : 'Nothing on this line was measured, and no stacking list was given.'
  return drawing({
    title,
    says,
    width,
    height: parts.length ? HEIGHT : 40,
    inner: [
      ...boxes,
      markup`<path class="centre" d="M${px(Math.max(6, left - 20))} ${px(parts.length ? axis : 20)}H${px(Math.min(width - 6, width - left + 20))}"/>`,
    ],
    notes: [
      parts.length
        ? 'Only the order was told: no size on this line was measured.'
        : 'Nothing on this line was measured.',
    ],
  })
}
