import { expect, test } from 'vitest'
import { materialOf } from '../../../mechanics/materials.ts'
import { celsius, psi } from '../../../quantity/constructors.ts'
import { readUnit } from '../../file/readUnit.ts'
import { connectionsOf } from '../connectionsOf.ts'
import type { Setting, ShopFacts } from '../kind.ts'
import { connected, setting, winchUnit } from '../winchBox.example.ts'

const WHEEL =
  '  seat: {kind: cylindrical fit, fit: press, shaft: shaft.seat W, bore: wheel.bore, hub outside: 80, length: 40, surfaces: dry}'
const BEARING =
  '  seat: {kind: cylindrical fit, fit: hot, shaft: shaft.seat A, bore: bearing A.bore, hub outside: 60, length: 20, heated part: "bearing, metal cage"}'
const figure = ({ figures }: Setting, label: string) => {
  const found = figures.find((each) => each.label === label)
  if (!found) throw new Error(`no figure ${label}: ${figures.map((each) => each.label).join(', ')}`)
  return found
}

// Norton, Machine Design, 4th ed., Example 10-5 (worksheet EX1005): 0.781 in steel shaft, class 30 iron hub 3 in by 1.5 in,
// 0.0015 in tight: 15 265 psi. He takes one modulus (14 000 000 psi); the file knows the iron only by its class.
test("the pressure of Norton's example lies in the range that the class of the iron allows", () => {
  const { unit } = readUnit(
    `matchmark: unit/1
unit: press fit of a published example
sizes: {in: in, standing: told}
housing: bed
parts:
  bed:
  shaft: {material: steel, features: {seat: 0.7815}}
  hub: {onto: shaft, material: grey iron class 30, features: {bore: 0.78}}
connections:
  seat: {kind: cylindrical fit, fit: press, shaft: shaft.seat, bore: hub.bore, hub outside: 3, length: 1.5}
`,
    'example.unit.yaml',
  )
  const [seat] = connectionsOf(unit!).connections
  const shop = { shims: [], roomTemperature_K: celsius(20), measured: new Set<string>() }
  const [found] = seat!.kind.settings(seat!.connection, seat!.given, unit!, shop)
  const { low, high } = figure(found!, 'pressure in the joint')
  expect(low).toBeLessThan(psi(15_265))
  expect(high).toBeGreaterThan(psi(15_265))
  expect(high / low).toBeLessThan(1.35)
})

// Thick-cylinder check: 50 mm shaft, 80 mm hub, 40 mm long, 0.04 mm tight, steel on steel, mu 0.15: 48.75 MPa, 45.9 kN, hoop 111 MPa
// (worked by hand from the textbook formula with E 206 GPa; the file knows the steels by name, so it gives ranges).
test('the press fit worked by hand lies in the ranges of its setting', () => {
  const found = setting(WHEEL)
  const around = (label: string) => figure(found, label)
  expect(around('pressure in the joint').low).toBeLessThan(48.75e6 * 1.03)
  expect(around('pressure in the joint').high).toBeGreaterThan(48.75e6)
  expect(around('press load').high).toBeGreaterThan(45_900)
  expect(around('press load').low).toBeLessThan(45_900)
  expect(around('hoop stress of the hub').high).toBeGreaterThan(111e6)
  expect(around('interference').low).toBeCloseTo(40e-6, 12)
})

test('a press load is judged by the press and by the load at which to stop', () => {
  expect(setting(WHEEL).missing).toContain('Give the rating of the press under `plant`: whether it reaches the load.')
  // Mild steel at its weakest and friction at its least: the stop load comes inside the expected range.
  const strong = setting(WHEEL, { pressRating_N: 100_000 })
  expect(figure(strong, 'press load')).toMatchObject({
    verdict: 'not known',
    limit: { source: 'the load at which to stop' },
  })
  expect(figure(strong, 'stop at this load')).toMatchObject({ verdict: 'within', standing: 'usual' })
  expect(figure(strong, 'stop at this load').note).toContain('Stop: ')
  expect(strong.cautions.join(' ')).toContain('The stop load may come before the part is home.')
  const weak = figure(setting(WHEEL, { pressRating_N: 20_000 }), 'press load')
  expect(weak).toMatchObject({ verdict: 'out', limit: { high: 20_000 } })
})

test('a light fit is within, and stops a quarter above the greatest load that it can need', () => {
  const light = setting(BEARING.replace('fit: hot', 'fit: press, surfaces: dry'), { pressRating_N: 100_000 })
  const load = figure(light, 'press load')
  expect(load.verdict).toBe('within')
  expect(figure(light, 'stop at this load').low).toBeCloseTo(1.25 * load.high, 3)
})

test('what rests on a handbook material is usual, what rests on an unknown one supposed', () => {
  expect(figure(setting(WHEEL), 'interference').standing).toBe('seen')
  expect(figure(setting(WHEEL), 'pressure in the joint').standing).toBe('usual')
  const bush = setting(
    '  bush: {kind: press fit, moves: bush, shaft: bush.outside, bore: sliding dog.bore, hub outside: 60, length: 20}',
  )
  expect(figure(bush, 'pressure in the joint').standing).toBe('supposed')
  expect(bush.missing).toContain('Give `material` of sliding dog: it is taken at its worst.')
})

test('the basis says whether the sizes were read in the job', () => {
  const basis = (...measured: string[]) => figure(setting(WHEEL, { measured: new Set(measured) }), 'interference').basis
  expect([basis(), basis('shaft.seat W'), basis('shaft.seat W', 'wheel.bore')]).toEqual([
    'nominal',
    'mixed',
    'readings',
  ])
})

test('a size that was not measured is asked for by name, and nothing is worked out', () => {
  const { figures, missing } = setting(
    '  seat: {kind: cylindrical fit, fit: press, shaft: shaft.seat Z, bore: wheel.bore}',
  )
  expect(figures).toEqual([])
  expect(missing).toEqual(['Measure shaft.seat Z.'])
})

test('a press fit that turns out loose says so, without a load', () => {
  const { says, figures } = setting(
    '  seat: {kind: cylindrical fit, fit: press, shaft: shaft.seal track, bore: wheel.bore}',
  )
  expect(says[0]).toContain('Loose by 12 mm (0.4724 in): nothing grips.')
  expect(figures).toHaveLength(1)
})

test('a wanted interference judges the sizes', () => {
  const judged = (wanted: string) =>
    figure(setting(`${WHEEL.slice(0, -1)}, wanted: ${wanted}}`), 'interference').verdict
  expect([judged('0.03..0.05'), judged('0.01..0.02')]).toEqual(['within', 'out'])
})

test('a bearing is warmed within the limit of its kind, and the slip that is left is shown', () => {
  const found = setting(BEARING)
  const heat = figure(found, 'warm it to')
  expect(heat.limit?.high).toBeCloseTo(celsius(121), 9)
  expect(heat.verdict).toBe('within')
  expect(figure(found, 'slip left at that heat')).toMatchObject({ verdict: 'within', dimension: 'length' })
  expect(found.cautions.join(' ')).toContain('No flame, ever')
})

test('a kind of bearing that is not told is held to the narrowest limit, 66 °C', () => {
  const found = setting(BEARING.replace(', heated part: "bearing, metal cage"', ''))
  expect(figure(found, 'warm it to').limit?.high).toBeCloseTo(celsius(66), 9)
  expect(figure(found, 'warm it to').note).toContain('Warming alone would need')
  expect(found.missing).toContain('Give `heated part`: its limit is taken at the narrowest.')
})

test("the maker's ceiling caps the heat, and the slip that is left is that of the lower heat", () => {
  const heat = figure(setting(BEARING), 'warm it to')
  const found = setting(`${BEARING.slice(0, -1)}, not above: 60 °C, source: maker's leaflet}`)
  const capped = figure(found, 'warm it to')
  expect(capped).toMatchObject({ verdict: 'within', limit: { source: "maker's leaflet" } })
  expect(capped.high).toBeCloseTo(celsius(60), 9)
  expect(heat.high).toBeGreaterThan(capped.high)
  expect(capped.note).toContain('Warming alone would need')
  expect(figure(found, 'slip left at that heat').low).toBeLessThan(
    figure(setting(BEARING), 'slip left at that heat').low,
  )
})

test('how long it may stay so hot is told as a time', () => {
  expect(figure(setting(BEARING), 'warm it to').note).toMatch(/At most (8|24) h at that heat/)
})

test('a bush is chilled as far as it needs, and not below its limit', () => {
  const found = setting(
    '  bush: {kind: cylindrical fit, fit: cold, shaft: bush.outside, bore: box.bush bore, heated part: plain part}',
  )
  const cold = figure(found, 'chill it to')
  expect(cold.high).toBeLessThan(celsius(-60))
  expect(cold.limit?.low).toBeCloseTo(celsius(-78), 9)
  expect(figure(found, 'slip left at that cold').verdict).toBe('within')
  expect(found.cautions.join(' ')).toContain('oxygen alarm')
})

// Linear expansion worked here apart from mechanics: cold counts 0.93 of the expansion near room temperature (from memory).
test('chilling counts on less shrinking in the cold, so that the part is not left too warm to drop in', () => {
  const text =
    '  bush: {kind: cylindrical fit, fit: cold, shaft: bush.outside, bore: box.bush bore, heated part: plain part, slip: 0.005 mm}'
  const found = setting(text)
  const { parts } = winchUnit(text)
  const size = (part: string, id: string) => parts.get(part)!.features.find((each) => each.id === id)!.size!
  const [bush, bore] = [size('bush', 'outside'), size('box', 'bush bore')]
  const expansion = 0.93 * materialOf(parts.get('bush')!.material!).expansion.low
  const colder = (bush.high - bore.low + 5e-6) / (expansion * ((bush.low + bush.high + bore.low + bore.high) / 4))
  const cold = figure(found, 'chill it to')
  expect(cold.high).toBeGreaterThan(celsius(-78))
  expect(celsius(20) - cold.high).toBeCloseTo(colder, 0)
  // With the whole expansion it would stop some degrees short.
  expect(celsius(20) - cold.high).toBeGreaterThan(colder * 0.93 + 1)
  expect(figure(found, 'slip left at that cold').low).toBeCloseTo(5e-6, 7)
  expect(found.cautions.join(' ')).toContain('Frost on a chilled part')
})

test('a room that is too cold for the formula leaves a gap instead of a figure', () => {
  const { missing, figures } = setting(BEARING, { roomTemperature_K: celsius(-5) } as Partial<ShopFacts>)
  expect(missing.join(' ')).toContain('the room temperature')
  expect(figures.map(({ label }) => label)).not.toContain('warm it to')
})

test('it asks what it would like to know, and nothing that it knows', () => {
  const asked = (text: string) => {
    const unit = winchUnit(text)
    const { connection, kind, given } = connected(unit, 'seat')
    return kind.asks(connection, given, unit).map(({ asks }) => asks)
  }
  expect(asked(BEARING)).toEqual([])
  expect(asked(BEARING.replace('bearing A.bore', 'sliding dog.bore'))).toContain(
    'What are both parts made of? Give `material` at the parts.',
  )
  expect(asked('  seat: {kind: cylindrical fit}')).toEqual([
    'Which part goes on, and onto what? Give `moves` and `onto`.',
    'Is it loose, pressed, fitted hot or fitted cold? Give `fit`.',
  ])
})
