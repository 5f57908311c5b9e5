import { expect, test } from 'vitest'
import { inch, metre, minute } from '../../quantity/constructors.ts'
import type { Known, Part, Unit } from '../model/unit.ts'
import { placeOf } from './connections.ts'
import { readUnit } from './readUnit.ts'
import { tailBox } from './tailBox.example.ts'

/** The double nearest to a decimal of millimetres. */
const mm = (value: number) => metre(Number(`${value}e-3`))

function read(text: string): Unit {
  const { unit, faults } = readUnit(text, 'x.unit.yaml')
  expect(faults).toEqual([])
  return unit!
}

const winch = (parts: string, sizes = '{in: mm}'): Unit =>
  read(`matchmark: unit/1\nunit: incline winch\nhousing: frame\nsizes: ${sizes}\nlines:\n  1:\nparts:\n${parts}`)
const drum = (keys: string, sizes?: string): Part => winch(`  pinion:\n  drum: ${keys}\n`, sizes).parts.get('drum')!
const seen = (value: number): Known<never> =>
  ({ low: value, high: value, standing: 'seen', source: 'calipers' }) as never

test('the tail box is read as it was written', () => {
  const unit = read(tailBox)
  expect([unit.name, unit.invented, unit.revision, unit.housing]).toEqual([
    'tail box of the slate mill',
    true,
    '1.10',
    'box',
  ])
  expect([...unit.lines.values()].map(({ id, ends }) => [id, ...ends])).toEqual([
    ['1', 'coupling end', 'wall B end'],
    ['2', '- end of line 2', '+ end of line 2'],
  ])
  const shaft = unit.parts.get('shaft')!
  expect(shaft.number).toBe('0042')
  expect(shaft.rings.get('1')).toHaveLength(11)
  expect(shaft.rings.get('1')![2]!.outside).toEqual(seen(mm(40.012)))
  expect(shaft.rings.get('1')![2]!.inside).toEqual({ low: 0, high: 0, standing: 'seen' })
  expect(shaft.rings.get('1')![6]!.from).toEqual(seen(mm(83.85)))
  const box = unit.parts.get('box')!
  expect(box.mass).toEqual({ low: 41, high: 41, standing: 'supposed' })
  expect(box.rings.get('2')![1]).toMatchObject({ outside: 'endless', inside: { low: 0 } })
  expect(unit.parts.get('wheel')!.rings.get('1')![1]!.teeth).toBe(true)
  expect(unit.parts.get('wheel')!.ways).toMatchObject([
    {
      path: 'by hand',
      through: 'top',
      homeWith: 'shaft',
      heldBy: 'strap',
      clear: [],
      why: 'the shaft passes through it',
    },
  ])
  expect(unit.parts.get('wall ring')!.end).toBe('-')
  expect(unit.parts.get('wheel ring')!.passing.get('1')![0]!.inside).toEqual(seen(mm(46)))
  expect(unit.parts.get('end ring')!.passing.has('1')).toBe(true)
  expect(unit.parts.get('seal')!.tool).toMatchObject({
    name: 'sleeve',
    line: '1',
    rings: [{ inside: { low: mm(30.2) } }],
  })
  expect(unit.parts.get('cap B')!.rings.get('1')![1]!.inside).toBeUndefined()
  expect(unit.parts.get('cap B')!.rings.get('1')![0]!.outside!).toMatchObject({ standing: 'supposed' })
  expect(
    unit.parts.get('cap B')!.columns.map(({ y, z, from }) => [y * 1000, Math.round(z * 1e6) / 1000, from]),
  ).toEqual([[45, 0, '+'], [0, 45, '+'].map((value) => (value === 0 ? expect.closeTo(0, 9) : value))])
  expect(unit.parts.get('bearing A')!.takes).toEqual({ low: minute(10), high: minute(15), standing: 'told' })
  expect(unit.passings).toMatchObject([{ line: '2', mover: 'cartridge', past: 'wheel', passes: false }])
  expect(unit.openings.get('drain')).toMatchObject({ id: 'drain', lines: [] })
  expect(unit.checks.get('float')!.limit).toEqual({
    text: '0.05..0.15 mm',
    low: mm(0.05),
    high: mm(0.15),
    unit: 'm',
    standing: 'told',
    source: 'works sheet',
  })
  expect(unit.checks.get('dry gap')!.limit).toEqual({ text: 'turns freely', unit: '', standing: 'told' })
  expect(unit.fills.get('oil')!.litres).toBe(1.6)
  expect(unit.lies.get('cover A')).toBe('wall A up')
  expect(unit.clocks).toMatchObject([{ from: { step: 'warm bearing A', edge: 'end' }, most: 120 }])
  expect(unit.turning).toEqual({ takes: 240, hazard: 1 })
  expect(unit.variants.map(({ serials }) => serials)).toEqual([{ high: 1204 }, { low: 1205 }])
})

test('a feature carries its limits, each with its source, and may be only a size', () => {
  const [seatA, seatB] = read(tailBox).parts.get('shaft')!.features
  expect(seatA).toMatchObject({
    what: 'bearing seat',
    size: seen(mm(40.012)),
    limitNew: { low: mm(40.002), high: mm(40.018), standing: 'told', source: 'shop drawing 12' },
    limitWorn: { low: mm(39.99), source: 'shop drawing 12' },
  })
  expect(seatA!.limitWorn!.high).toBeUndefined()
  expect(seatB!.size).toEqual(seen(mm(35.01)))
  expect(drum('{features: {bore: {worn: ≈ ..80.05}}}').features[0]!.limitWorn).toEqual({
    high: mm(80.05),
    standing: 'supposed',
  })
})

test('three lines are enough for a unit', () => {
  const unit = read('matchmark: unit/1\nunit: incline winch\nhousing: frame\n')
  expect([...unit.parts.keys()]).toEqual(['frame'])
  expect([unit.lengthUnit, unit.sizesStanding]).toEqual(['mm', 'told'])
})

test('a bare size takes the unit of the file, a written unit wins, a mark overrides the standing', () => {
  const features = '{features: {a: 2-1/2, b: 1.5 thou, c: ≈ 40 mm, d: "?", e: 39.9..40.1 mm, f: }}'
  const sizes = drum(features, '{in: in, standing: seen}').features.map(({ size }) => size)
  expect(sizes[0]).toEqual({ low: inch(2.5), high: inch(2.5), standing: 'seen' })
  expect(sizes[1]!.low).toBeCloseTo(0.0000381, 12)
  expect(sizes[2]).toEqual({ low: mm(40), high: mm(40), standing: 'supposed' })
  expect([sizes[3], sizes[5]]).toEqual([undefined, undefined])
  expect([sizes[4]!.low, sizes[4]!.high]).toEqual([mm(39.9), mm(40.1)])
})

test('rings in inches may have fractions; only the stroke between two diameters parts them', () => {
  const [ring, other] = drum('{line 1: "-1-1/4..2: 2-1/2/1-1/4, 2..3 1/2: 3 / 2 1/4"}', '{in: in}').rings.get('1')!
  expect([ring!.from!.low, ring!.outside!, ring!.inside!.low]).toEqual([
    inch(-1.25),
    expect.objectContaining({ low: inch(2.5) }),
    inch(1.25),
  ])
  expect([other!.to!.low, other!.inside!.low]).toEqual([inch(3.5), inch(2.25)])
})

test('a diameter that was not measured leaves open whether the ring is solid; with /0 it is', () => {
  const [open, solid, bore] = drum('{line 1: "0..1: ?, 1..2: ?/0, ?..3: ?/30"}').rings.get('1')!
  expect(open).toMatchObject({ from: { low: 0 }, to: { low: mm(1) } })
  expect([open!.outside, open!.inside]).toEqual([undefined, undefined])
  expect(solid!.inside!.high).toBe(0)
  expect([bore!.from, bore!.inside!.low]).toEqual([undefined, mm(30)])
})

test('an empty value is the same as none', () => {
  expect(drum('{mass: , onto: , way: , features: , line 1: }')).toMatchObject({ ways: [], features: [] })
})

test('one way or a list of ways; its path follows from what it names', () => {
  expect(drum('{way: {from: +}}').ways).toMatchObject([{ path: 'along the line', from: '+' }])
  expect(drum('{way: [{path: tilt, clear: pinion}, {path: loop}]}').ways).toMatchObject([
    { path: 'tilt', clear: ['pinion'] },
    { path: 'loop' },
  ])
  const split = read(
    'matchmark: unit/1\nunit: u\nhousing: case\nopenings:\n  joint: {split: true}\nparts:\n  shaft: {way: {through: joint}}\n',
  )
  expect(split.parts.get('shaft')!.ways[0]!.path).toBe('across the split')
})

test('a limit may be of any dimension and open at one end', () => {
  const check = (limit: string) =>
    read(`matchmark: unit/1\nunit: u\nhousing: case\nchecks:\n  it: {limit: ${limit}}\n`).checks.get('it')!.limit!
  expect(check('1.5..2.5 N·m')).toMatchObject({ low: 1.5, high: 2.5, unit: 'N·m' })
  expect(check('..2 bar')).toEqual({ text: '..2 bar', high: 200_000, unit: 'Pa', standing: 'told' })
  expect(check('0.1.. mm')).toEqual({ text: '0.1.. mm', low: mm(0.1), unit: 'm', standing: 'told' })
  expect(check('≈ 0.1')).toMatchObject({ low: mm(0.1), high: mm(0.1), standing: 'supposed' })
})

test('a connection is handed on as it was written, with the place of every value', () => {
  const screws = read(tailBox).connections.get('cap screws')!
  expect([screws.kind, screws.given]).toEqual([
    'fasteners',
    { of: 'cap B', places: { circle: 90, count: 6 }, 'own step': true },
  ])
  const line = tailBox.split('\n').findIndex((text) => text.includes('circle: 90, count')) + 1
  expect(placeOf(screws, ['places', 'count'])).toEqual({ line, column: 33 })
  expect(placeOf(screws, ['places', 'missing'])).toEqual({ line, column: 5 })
  expect(placeOf(screws, ['missing'])).toEqual(screws.at)
})
