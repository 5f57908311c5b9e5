import { expect, test } from 'vitest'
import { inch, mm } from '../../../quantity/constructors.ts'
import { readUnit } from '../../file/readUnit.ts'
import { connectionsOf } from '../connectionsOf.ts'
import type { Setting, ShopFacts } from '../kind.ts'
import { contribution, setting, winchUnit } from '../winchBox.example.ts'

const LOOP = 'loop: box.depth A - bearing A.width + cover gasket.squeezed - cover A.spigot + shims'
const float = (rest: string, more = '') =>
  `  float: {kind: bearing shims, under: cover A, shims: cover shims, ${rest}}\n${more}`
const GASKET = '  cover joint: {kind: gasket, gasket: cover gasket, squeezed by: cover A, squeezed: 0.40}\n'
const stock = (...sizes: number[]): ShopFacts['shims'] =>
  sizes.map((size, index) => ({
    id: `S${index + 1}`,
    thickness: { low: mm(size), high: mm(size), standing: 'seen' as const },
  }))
const figure = ({ figures }: Setting, label: string) => figures.find((each) => each.label === label)

// A gearbox build log: 1.008 + 0.030 - 0.686 - 0.080 = 0.272 in; with a float of 0.004 in the shim is 0.268 in.
test('the shim of the build log comes out of its loop, in inches', () => {
  const { unit } = readUnit(
    `matchmark: unit/1
unit: shim of a published build log
sizes: {in: in, standing: seen}
housing: case
parts:
  case: {features: {depth: 1.008}}
  gasket: {features: {squeezed: 0.030}}
  bearing: {features: {width: 0.686}}
  cover: {features: {spigot: 0.080}}
connections:
  float: {kind: bearing shims, under: cover, float: 0.004, loop: case.depth + gasket.squeezed - bearing.width - cover.spigot - shims}
`,
    'log.unit.yaml',
  )
  const [shims] = connectionsOf(unit!).connections
  const shop = { shims: [], roomTemperature_K: 293.15, measured: new Set<string>() }
  const [found] = shims!.kind.settings(shims!.connection, shims!.given, unit!, shop)
  expect(figure(found!, 'float without shims')?.low).toBeCloseTo(inch(0.272), 9)
  expect(figure(found!, 'pack wanted')?.low).toBeCloseTo(inch(0.268), 9)
})

test('loop, gasket as squeezed, and the pack out of the measured shims', () => {
  const text = float(`float: 0.05..0.15, ${LOOP.replace('+ cover gasket.squeezed ', '')}, source: works sheet 7`)
  // 24.60 - 20.00 - 5.02 = -0.42; a float of 0.05 to 0.15 wants 0.47 to 0.57.
  const found = setting(text, { shims: stock(0.102, 0.31, 0.51) })
  expect(figure(found, 'float without shims')?.low).toBeCloseTo(-0.42e-3, 12)
  expect(figure(found, 'pack wanted')).toMatchObject({ basis: 'nominal', standing: 'seen' })
  expect(figure(found, 'pack wanted')?.low).toBeCloseTo(0.47e-3, 12)
  expect(found.says).toEqual(['Fit pack S3 = 0.51 mm (0.0201 in).'])
  expect(figure(found, 'float with this pack (below zero: preload)')).toMatchObject({
    verdict: 'within',
    limit: { source: 'works sheet 7' },
  })
  expect(figure(found, 'float with this pack (below zero: preload)')?.high).toBeCloseTo(0.09e-3, 12)
})

test('the gasket given by its own connection counts as squeezed', () => {
  const found = setting(
    float(
      `float: 0.05..0.15, ${LOOP.replace('cover gasket', 'lid gasket')}`,
      GASKET.replaceAll('cover', 'lid').replace('lid A', 'lid'),
    ),
  )
  expect(figure(found, 'float without shims')?.low).toBeCloseTo(-0.02e-3, 12)
})

test('preload is float below zero, and the sign of the shims turns the pack round', () => {
  const found = setting(float('preload: 0.05..0.10, loop: box.depth A - bearing A.width - shims'))
  // 4.60 of room; float -0.10 to -0.05 wants 4.65 to 4.70.
  expect(figure(found, 'pack wanted')?.low).toBeCloseTo(4.65e-3, 12)
  expect(found.cautions.join(' ')).toContain('rolling torque')
  expect(found.missing).toEqual(['Measure the shims in stock: for the pack.'])
})

test('without the sign of the shims nothing is worked out, and it is not guessed', () => {
  const { figures, missing } = setting(
    float(`float: 0.05..0.15, ${LOOP.replace(' + shims', '').replace('+ cover gasket.squeezed ', '')}`),
  )
  expect(figures).toEqual([])
  expect(missing[0]).toContain('Put `shims` into the loop: + where a thicker pack opens the float')
})

test('what is not measured, not wanted or not in stock is said', () => {
  expect(setting(float(`float: 0.05..0.15, ${LOOP}`)).missing).toEqual(['Measure cover gasket.squeezed.'])
  expect(setting(float('loop: box.depth A - bearing A.width + shims')).missing).toEqual([
    'Give `float` or `preload`, with its `source`.',
  ])
  const none = setting(float('float: 0.05..0.15, loop: box.depth A - bearing A.width - shims'), {
    shims: stock(4, 0.3),
  })
  expect(none.says).toEqual(['No pack of the shims in stock reaches it; nearest: S1 + S2 = 4.3 mm (0.1693 in).'])
})

test('shims that are kept for another place are left there', () => {
  const [one] = stock(4.5)
  const kept = { ...one!, for: 'other shims' }
  const text = float('float: 0.05..0.15, loop: box.depth A - bearing A.width - shims')
  expect(setting(text, { shims: [kept] }).missing).toEqual(['Measure the shims in stock: for the pack.'])
  expect(setting(text, { shims: [{ ...kept, for: 'cover shims' }] }).says).toEqual([
    'Fit pack S1 = 4.5 mm (0.1772 in).',
  ])
})

test('shims go in with the part that squeezes them', () => {
  const { steps, carried, within } = contribution(float('float: 0.1'))
  expect(steps).toEqual([])
  expect(carried).toEqual([{ part: 'cover shims', withPart: 'cover A' }])
  expect(within.map(({ part }) => part)).toEqual(['cover A'])
})

test('a term of the loop that is no feature, and shims that stand twice, are told', () => {
  const fault = (loop: string) =>
    connectionsOf(winchUnit(float(`float: 0.1, loop: ${loop}`))).faults.map(({ message }) => message)
  expect(fault('box.depth A - width + shims')[0]).toContain("'width' is no term of a loop: write part.feature")
  expect(fault('box.depth A + shims - shims')).toHaveLength(1)
  expect(fault('[box.depth A, "- bearing A.width", + shims]')).toEqual([])
})
