import { expect, test } from 'vitest'
import { degree, inch, mm } from '../../quantity/constructors.ts'
import { printRange } from '../../quantity/printQuantity.ts'
import { connectionsOf } from '../connections/connectionsOf.ts'
import { readUnit } from '../file/readUnit.ts'
import { type NextTry, nextTry, type TryAsked, type TryMade } from './nextTry.ts'
import { trySettings } from './trySettings.ts'

const print: TryAsked['print'] = (range, as) => printRange(range as never, as, { system: 'metric' })
const at = (value: number) => ({ low: mm(value), high: mm(value) })
const made = (pack: number, read: number): TryMade => ({ pack: mm(pack), read: at(read) })
const ask = (tries: readonly TryMade[], more: Partial<TryAsked> = {}): NextTry =>
  nextTry({ tries, wanted: { low: mm(0.05), high: mm(0.1) }, stock: [], isBacklash: false, print, ...more })
const pack = (next: NextTry) => {
  if (next.is !== 'pack') throw new Error(`a pack was wanted: ${JSON.stringify(next)}`)
  return next
}

test('one try with a pack whose sign is told gives the next pack, one for one', () => {
  // 0.626 mm in, 0.03 mm read: 0.02 to 0.07 mm more.
  const next = pack(ask([made(0.626, 0.03)], { sign: 1 }))
  expect(next.wanted.low).toBeCloseTo(0.646e-3, 9)
  expect(next.wanted.high).toBeCloseTo(0.696e-3, 9)
  expect(next).toMatchObject({ isSure: true })
  expect(next.says).toBe('Pack wanted = pack in + wanted − read: in 0.626 mm, read 0.03 mm, wanted 0.05..0.10 mm.')
  expect(pack(ask([made(0.626, 0.15)], { sign: -1 })).wanted.low).toBeCloseTo(0.676e-3, 9)
})

// A gearbox build log gives the gap 1.008 + 0.030 - 0.686 - 0.080 = 0.272 in; with 0.250 in of shim in, 0.022 in of float are read.
test('a published build log comes to its 0.268 in for a float of 0.004 in by way of a trial', () => {
  const four = { low: inch(0.004), high: inch(0.004) }
  const next = pack(
    ask([{ pack: inch(0.25), read: { low: inch(0.022), high: inch(0.022) } }], { sign: -1, wanted: four }),
  )
  expect(next.wanted.low).toBeCloseTo(inch(0.268), 9)
})

test('what the instrument hides makes the pack narrower, or no longer sure', () => {
  const hidden = (by: number) =>
    pack(ask([{ pack: mm(0.6), read: { low: mm(0.03 - by), high: mm(0.03 + by) } }], { sign: 1 }))
  expect(hidden(0.01)).toMatchObject({ isSure: true })
  expect(hidden(0.01).wanted.low).toBeCloseTo(0.63e-3, 9)
  expect(hidden(0.01).wanted.high).toBeCloseTo(0.66e-3, 9)
  expect(hidden(0.03)).toMatchObject({ isSure: false })
})

test('the shims of the shop make up the pack; where none do, the nearest are told', () => {
  const stock = [0.528, 0.098, 0.118, 0.156, 0.047].map((size, index) => ({ id: `S${index + 1}`, thickness: mm(size) }))
  const { choice } = pack(ask([made(0.626, 0.03)], { sign: 1, stock }))
  expect(choice?.pack?.shims.map(({ id }) => id)).toEqual(['S1', 'S4'])
  const none = pack(ask([made(0.2, 0.03)], { sign: 1, stock: stock.slice(0, 1) }))
  expect(none.choice).toMatchObject({ nearest: [{ total: 0 }, { shims: [{ id: 'S1' }] }] })
  expect(none.choice?.pack).toBeUndefined()
})

test('two equal readings after a move give no ratio: seat it and read again', () => {
  for (const sign of [1, -1, undefined] as const) {
    const next = ask([made(0.6, 0.03), made(0.64, 0.03)], sign ? { sign } : {})
    expect(next).toMatchObject({ is: 'seat again' })
    expect(next.is === 'seat again' && next.cautions[0]).toContain('read the same pack once more')
  }
  // A move that no dial could show says nothing.
  expect(ask([made(0.6, 0.03), made(0.608, 0.03)], { sign: 1 }).is).toBe('pack')
  expect(ask([made(0.6, 0.04), made(0.66, 0.0)], { sign: 1 })).toMatchObject({ is: 'seat again' })
})

test('a reading that did not follow one for one is told, and the pack all the same', () => {
  const next = pack(ask([made(0.6, 0.0), made(0.66, 0.03)], { sign: 1 }))
  expect(next.cautions[0]).toContain('one of them was not seated')
  expect(pack(ask([made(0.6, -0.02), made(0.66, 0.04)], { sign: 1 })).cautions[0]).not.toContain('was not seated')
})

test('without a sign the ratio is learnt from two tries; one gives none', () => {
  const wanted = { low: mm(0.13), high: mm(0.18) }
  expect(ask([made(1, 0.4)], { wanted })).toMatchObject({
    is: 'not known',
    next: 'Change the pack by a measured amount, seat it, read again: then the two tries give the ratio.',
  })
  // The worked example of nextBevelShim: 1.00 mm reads 0.40, 1.20 mm reads 0.26; the middle of 0.13 to 0.18 lies at 1.35 mm.
  const next = pack(ask([made(1, 0.4), made(1.2, 0.26)], { wanted, isBacklash: true }))
  expect(next.says).toContain('middle 1.35 mm')
  expect(next.cautions.join(' ')).toContain('contact pattern')
  expect(pack(ask([made(1, 0.4), made(1.2, 0.26)], { wanted })).cautions.join(' ')).not.toContain('gear')
})

test('a nut is turned by its lead, or by what its own tries show', () => {
  const tight: TryMade = { turned: degree(0), read: at(0.02) }
  const next = ask([tight], { lead: mm(1.5) })
  // 0.03 to 0.08 mm of travel at 1.5 mm a turn: 7.2 to 19.2 degrees.
  expect(next).toMatchObject({ is: 'turn', isSure: true })
  expect(next.is === 'turn' && next.wanted.low).toBeCloseTo(degree(7.2), 9)
  expect(next.is === 'turn' && next.wanted.high).toBeCloseTo(degree(19.2), 9)
  expect(ask([tight])).toMatchObject({ is: 'not known', says: 'How far the nut moves for a turn is not known.' })
  const learnt = ask([
    { turned: degree(0), read: at(0.3) },
    { turned: degree(-36), read: at(0.15) },
  ])
  expect(learnt.is === 'turn' && learnt.wanted.low).toBeCloseTo(degree(-24), 6)
  expect(learnt.is === 'turn' && learnt.wanted.high).toBeCloseTo(degree(-12), 6)
  expect(
    ask([
      { turned: degree(0), read: at(0.3) },
      { turned: degree(36), read: at(0.3) },
    ]),
  ).toMatchObject({ is: 'not known' })
})

test('what nobody said is not known, and what is within is right', () => {
  expect(ask([])).toMatchObject({ is: 'not known' })
  expect(ask([{ read: at(0.03) }])).toMatchObject({ is: 'not known', says: 'It was not said what was in at this try.' })
  expect(ask([made(0.6, 0.03)], { wanted: { high: mm(0.1) } })).toMatchObject({ is: 'not known' })
  expect(ask([made(0.6, 0.07)]).is).toBe('right')
  // More preload than any pack takes away.
  expect(ask([made(0.1, 0.5)], { sign: 1 })).toMatchObject({ is: 'not known' })
})

test('a pack of bearing shims and whatever else a check settles are set by tries', () => {
  const told = readUnit(
    `matchmark: unit/1
unit: two checks
sizes: {in: mm, standing: seen}
housing: case
parts: {shaft: {}, cover: {}, nut: {}}
connections:
  float: {kind: bearing shims, under: cover, float: 0.05..0.10, loop: case.depth - shims}
checks:
  end float: {wants: [shaft, cover], settles: float of the shaft, limit: 0.05..0.10 mm}
  nut float: {wants: [nut], settles: float by the nut, limit: 0.05..0.10 mm}
  slack: {wants: [nut], limit: 1..2 mm}
`,
    'two.unit.yaml',
  ).unit!
  expect(trySettings(told, connectionsOf(told).connections)).toEqual([
    { check: 'end float', of: 'float', first: 'cover', sign: -1, isShims: true, shimsFor: ['float'] },
    { check: 'nut float', of: 'float by the nut', isShims: false, shimsFor: ['nut float', 'float by the nut'] },
  ])
})
