import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readUnit } from '../../../unit/file/readUnit.ts'
import { placed } from '../../../unit/lines/placed.ts'
import type { Unit } from '../../../unit/model/unit.ts'
import { itemNumbers } from '../../items.ts'
import { tailBox } from '../../testing/tailBox.ts'
import { xmlFault } from '../../testing/xmlFault.ts'
import { cross } from '../balloons.ts'
import { svgFile } from '../drawing.ts'
import { halfSection } from './halfSection.ts'

function fromFile(name: string): Unit {
  const { unit } = readUnit(readFileSync(new URL(`../../../unit/housings/${name}`, import.meta.url), 'utf8'), name)
  if (!unit) throw new Error(`${name} has faults`)
  return placed(unit).unit
}

const units = [tailBox(), fromFile('tail-box.unit.yaml'), fromFile('yard-shunter.unit.yaml')]

const leaders = (svg: string) =>
  [...svg.matchAll(/class="leader" d="M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)"/g)].map((match) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = match.slice(1).map(Number)
    return [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ] as const
  })
const balloonNumbers = (svg: string) =>
  [...svg.matchAll(/class="number[^"]*"[^>]*>(\d+)</g)].map((match) => Number(match[1]))
/** The drawing of one part: its group, up to the next. */
const groups = (svg: string, part: string) =>
  [...svg.matchAll(new RegExp(`<g class="part[^"]*" data-part="${part}">(.*?)</g>`, 'g'))]
    .map(([text]) => text)
    .join('')

test('every line of every described unit becomes well-formed SVG with name and text equivalent', () => {
  for (const unit of units)
    for (const line of unit.lines.keys()) {
      const drawing = halfSection(unit, line, { balloons: itemNumbers(unit) })
      expect(drawing.svg).not.toMatch(/NaN|Infinity/)
      expect(xmlFault(drawing.svg)).toBeUndefined()
      expect(xmlFault(svgFile(drawing))).toBeUndefined()
      expect(drawing.svg).toContain(`<desc>${drawing.says.replaceAll("'", '&#39;')}</desc>`)
      expect(drawing.title).toContain(`line ${line}`)
    }
})

test('no two leaders cross, at any width', () => {
  for (const unit of units)
    for (const line of unit.lines.keys())
      for (const width of [390, 640, 685]) {
        const found = leaders(halfSection(unit, line, { width, balloons: itemNumbers(unit) }).svg)
        found.forEach(([a, b], i) => {
          for (const [c, d] of found.slice(i + 1)) expect(cross(a, b, c, d)).toBe(false)
        })
      }
})

test('every part of the line has a balloon, all in one row, in the order of their dots along the axis', () => {
  const unit = tailBox()
  const { svg } = halfSection(unit, '1', { balloons: itemNumbers(unit) })
  const numbers = balloonNumbers(svg)
  expect(new Set([...svg.matchAll(/class="balloon" cx="[\d.]+" cy="([\d.]+)"/g)].map((match) => match[1])).size).toBe(1)
  const dots = leaders(svg).map(([, dot]) => dot.x)
  expect(dots).toEqual([...dots].sort((a, b) => a - b))
  expect(numbers).toHaveLength([...unit.parts.values()].filter((part) => part.rings.has('1')).length)
})

test('a step sheet has nine balloons at most, the part under work among them', () => {
  const unit = tailBox()
  const numbers = itemNumbers(unit)
  const { svg } = halfSection(unit, '1', { under: 'cap B', balloons: numbers, most: 9 })
  expect(balloonNumbers(svg)).toHaveLength(9)
  expect(svg).toContain(`class="number at-hand"`)
  expect(balloonNumbers(svg)).toContain(numbers.get('cap B'))
})

test('the part under work is blue, and an arrow shows the end it comes from', () => {
  const unit = tailBox()
  const { svg, says } = halfSection(unit, '1', { under: 'bearing A', from: '-' })
  expect(svg.match(/class="part work"/g)?.length).toBeGreaterThan(0)
  expect(svg).toMatch(/class="part work" data-part="bearing A"/)
  expect(svg).not.toMatch(/class="part work" data-part="shaft"/)
  expect(svg).toContain('class="way-head"')
  expect(says).toContain('Under work: bearing A, coming from outside A.')
})

test('what is not there is not drawn; what comes next is a ghost', () => {
  const unit = tailBox()
  const { svg, says } = halfSection(unit, '1', {
    home: new Set(['shaft']),
    toCome: new Set(['bearing B']),
    under: 'wheel key',
  })
  expect(groups(svg, 'shaft')).not.toBe('')
  for (const absent of ['box', 'cover A', 'bearing B']) expect(groups(svg, absent)).toBe('')
  expect(svg).toContain('class="to-come"')
  expect(says).toContain('Next to come: bearing B.')
})

test('shaft and key are never hatched, castings and wheels are, teeth are not', () => {
  const { svg } = halfSection(tailBox(), '1')
  for (const whole of ['shaft', 'wheel key', 'coupling key']) expect(groups(svg, whole)).not.toContain('class="hatch"')
  for (const cut of ['box', 'wheel', 'cover A', 'cap B', 'bearing A'])
    expect(groups(svg, cut)).toContain('class="hatch"')
  const wheel = groups(svg, 'wheel')
  const highest = Math.min(...[...wheel.matchAll(/class="edge" d="M[\d.]+ ([\d.]+)/g)].map((match) => Number(match[1])))
  const hatchTop = Math.min(
    ...[...(/class="hatch" d="([^"]+)"/.exec(wheel)?.[1] ?? '').matchAll(/[ML][\d.]+ ([\d.]+)/g)].map((match) =>
      Number(match[1]),
    ),
  )
  expect(hatchTop).toBeGreaterThan(highest)
})

test('the pitch of the hatching follows the look: casting 7, cover 5.5, ring 4', () => {
  const { svg } = halfSection(
    tailBox((text) => text.replace('material: gasket paper, ', '')),
    '1',
    { width: 1600, mostHeight: 1600 },
  )
  const pitch = (part: string) => {
    const across = [
      ...(/class="hatch" d="([^"]+)"/.exec(groups(svg, part))?.[1] ?? '').matchAll(
        /M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g,
      ),
    ].map((match) => {
      const [x1 = 0, y1 = 0, , y2 = 0] = match.slice(1).map(Number)
      return (x1 + (y2 < y1 ? 1 : -1) * y1) / Math.SQRT2
    })
    const gaps = across.slice(1).map((at, index) => Math.abs(at - (across[index] ?? 0)))
    return gaps.sort((a, b) => a - b)[Math.floor(gaps.length / 2)]
  }
  expect(pitch('box')).toBeCloseTo(7, 0)
  expect(pitch('cap B')).toBeCloseTo(5.5, 1)
  expect(pitch('bearing A')).toBeCloseTo(4, 0)
})

test('a size that nobody took is a stub with a question mark, and is said', () => {
  const unit = tailBox((text) =>
    text.replace('line 1: "172.4..176.4: 72/50, 176.4..190: 110"', 'line 1: "172.4..176.4: 72/50, 176.4..?: ?/50"'),
  )
  const { svg, notes, says } = halfSection(unit, '1')
  expect(groups(svg, 'cap B')).toContain('class="open"')
  expect(groups(svg, 'cap B').match(/>\?</g)).toHaveLength(2)
  const [, y1 = 0, y2 = 0] = (/class="open" d="M([\d.]+) ([\d.]+)L\1 ([\d.]+)"/.exec(groups(svg, 'cap B')) ?? [])
    .slice(1)
    .map(Number)
  expect(Math.abs(y1 - y2)).toBeGreaterThan(10)
  expect(Math.abs(y1 - y2)).toBeLessThan(20)
  expect(notes.join(' ')).toContain('Not measured, drawn as a stub with ?: cap B.')
  expect(says).toContain('cap B at 172.4')
})

test('a supposed size is drawn thin and said; what has no place is named', () => {
  const supposed = tailBox((text) => text.replace('176.4..190: 110"', '176.4..190: ≈ 110"'))
  const drawing = halfSection(supposed, '1')
  expect(groups(drawing.svg, 'cap B')).toContain('class="doubt"')
  expect(drawing.notes.join(' ')).toContain('Drawn thin, for a size is supposed or only bounded: cap B.')
  const nowhere = tailBox((text) => text.replace('line 1: "170..171.5: 50/33"', 'line 1: "?..?: 50/33"'))
  expect(halfSection(nowhere, '1').notes.join(' ')).toContain('Not drawn, place not measured: end ring.')
})

test('what is drawn by convention is said', () => {
  const { notes } = halfSection(tailBox(), '1')
  expect(notes.join(' ')).toMatch(/By convention, not measured: depth of teeth, rolling elements \(cross\), seals/)
})

test('a line of which only the order was told says so and draws nothing to scale', () => {
  const unit = readUnit(
    'matchmark: unit/1\nunit: pump\nhousing: body\nlines:\n  1: {ends: [drive end, far end], stack: [gland, shaft, bush]}\nparts: {body: {}, gland: {}, shaft: {}, bush: {}}',
    'pump.unit.yaml',
  ).unit
  if (!unit) throw new Error('unit')
  const drawing = halfSection(unit, '1', { balloons: itemNumbers(unit) })
  expect(drawing.says).toBe(
    'Nothing on this line was measured. The order from drive end to far end: gland, shaft, bush.',
  )
  expect(drawing.svg).not.toContain('class="hatch"')
  expect(balloonNumbers(drawing.svg)).toEqual([1, 2, 3])
  expect(xmlFault(drawing.svg)).toBeUndefined()
})

test('geometry scales with the width, line widths do not', () => {
  const [narrow, wide] = [320, 640].map((width) => halfSection(tailBox(), '1', { width, mostHeight: 2000 }).svg)
  const span = (svg = '') => {
    const [, from = 0, to = 0] = (/class="centre" d="M([\d.]+) [\d.]+H([\d.]+)"/.exec(svg) ?? []).map(Number)
    return to - from
  }
  expect(span(wide) / span(narrow)).toBeGreaterThan(1.9)
  expect(narrow).not.toContain('stroke-width=')
  expect(wide).not.toContain('transform=')
})

test('names of parts cannot break the drawing', () => {
  const hostile = `<script>alert(1)</script> & "x"`
  const unit = tailBox((text) =>
    text
      .replaceAll('bearing B', JSON.stringify(hostile))
      .replaceAll(`seat of ${JSON.stringify(hostile)}`, 'seat of bearing two')
      .replaceAll(`${JSON.stringify(hostile)}.bore`, '"?"'),
  )
  const drawing = halfSection(unit, '1', { under: hostile, balloons: itemNumbers(unit) })
  expect(xmlFault(drawing.svg)).toBeUndefined()
  expect(drawing.svg).not.toContain('<script')
  expect(drawing.svg).toContain('data-part="&lt;script&gt;')
})

test('a close-up shows the part under work larger, breaks the rest off and says so', () => {
  const unit = tailBox()
  const options = { width: 390, mostHeight: 400, under: 'end ring', balloons: itemNumbers(unit), most: 9 } as const
  const [far, near] = [halfSection(unit, '1', options), halfSection(unit, '1', { ...options, closeUp: true })]
  const width = (svg: string) => {
    const xs = [...groups(svg, 'end ring').matchAll(/[ML]([\d.]+) /g)].map((match) => Number(match[1]))
    return Math.max(...xs) - Math.min(...xs)
  }
  expect(width(near.svg)).toBeGreaterThan(1.5 * width(far.svg))
  expect(groups(near.svg, 'cover A')).toBe('')
  expect(near.notes[0]).toBe('Close-up: the line goes on beyond the breaks.')
  expect(near.says).toBe(far.says)
  expect(xmlFault(near.svg)).toBeUndefined()
  const found = leaders(near.svg)
  found.forEach(([a, b], i) => {
    for (const [c, d] of found.slice(i + 1)) expect(cross(a, b, c, d)).toBe(false)
  })
})

test('what towers over the part under work is broken off above', () => {
  const drawing = halfSection(tailBox(), '1', {
    under: 'seal',
    closeUp: true,
    home: new Set(['shaft', 'wheel', 'cover A']),
  })
  expect(groups(drawing.svg, 'cover A')).toContain('class="thin"')
  expect(drawing.svg).not.toContain('Infinity')
  expect(drawing.svg).not.toContain('NaN')
  expect(xmlFault(drawing.svg)).toBeUndefined()
})

test('a part that is nearly everything is shown whole', () => {
  const drawing = halfSection(tailBox(), '2', { under: 'cartridge', closeUp: true, home: new Set() })
  expect(drawing.notes.join(' ')).not.toContain('Close-up')
})
