import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { chooseShims, type Shim, splitShims } from './chooseShims.ts'

const shims = (...thickness: number[]): Shim[] =>
  thickness.map((size, at) => ({ id: `s${at + 1}`, thickness: mm(size) }))
const ids = (chosen: readonly Shim[] | undefined) => chosen?.map(({ id }) => id).join(' ')

test('the window 1.37 to 1.42 mm from 0.10 0.13 0.25 0.50 1.00: three shims, 1.38 mm (worked by hand)', () => {
  const { pack } = chooseShims({
    stock: shims(0.1, 0.13, 0.25, 0.5, 1),
    target: { low: mm(1.37), high: mm(1.42) },
  })
  expect(ids(pack?.shims)).toBe('s2 s3 s5')
  expect(pack?.total).toBeCloseTo(0.00138, 9)
})

test('fewest shims first, then nearest to the middle, then the first listed', () => {
  const target = { low: mm(0.9), high: mm(1.1) }
  expect(ids(chooseShims({ stock: shims(0.5, 0.5, 0.91), target }).pack?.shims)).toBe('s3')
  expect(ids(chooseShims({ stock: shims(0.92, 1.01, 1.05), target }).pack?.shims)).toBe('s2')
  expect(ids(chooseShims({ stock: shims(1, 1, 1), target }).pack?.shims)).toBe('s1')
})

test('measured thickness counts, not the mark: a 0.5 that is 0.53', () => {
  const target = { low: mm(0.99), high: mm(1.01) }
  expect(chooseShims({ stock: shims(0.5, 0.5), target }).pack).toBeDefined()
  expect(chooseShims({ stock: shims(0.5, 0.53), target }).pack).toBeUndefined()
})

test('when none fits it names the nearest below and above', () => {
  const { pack, nearest } = chooseShims({ stock: shims(0.5, 0.7), target: { low: mm(0.55), high: mm(0.6) } })
  expect(pack).toBeUndefined()
  expect(nearest.map(({ total }) => Math.round(total * 1e6))).toEqual([500, 700])
  expect(chooseShims({ stock: shims(0.5), target: { low: mm(1), high: mm(1.1) } }).nearest).toHaveLength(1)
})

test('no shim at all is a pack when the target allows it', () => {
  expect(chooseShims({ stock: shims(0.5), target: { low: mm(-0.02), high: mm(0.05) } }).pack?.shims).toEqual([])
})

test('an inch shim of 0.010 in and its metric neighbour are told apart', () => {
  const stock = [
    { id: 'inch', thickness: inch(0.01) },
    { id: 'metric', thickness: mm(0.25) },
  ]
  expect(ids(chooseShims({ stock, target: { low: mm(0.253), high: mm(0.255) } }).pack?.shims)).toBe('inch')
})

test('ten shims of a thou are ten thou: inch sizes are not rounded to micrometres', () => {
  const stock = Array.from({ length: 10 }, (_, at) => ({ id: `s${at}`, thickness: inch(0.001) }))
  const { pack } = chooseShims({ stock, target: { low: inch(0.0099), high: inch(0.0101) } })
  expect(pack?.shims).toHaveLength(10)
  expect(pack?.total).toBeCloseTo(inch(0.01), 12)
})

test('no pack strays out of its target, inch and metric shims in one drawer, to the ten-thousandth (seed 41)', () => {
  const drawer = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 10, max: 300 })), { minLength: 1, maxLength: 9 })
  const asked = [drawer, fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 40 })] as const
  fc.assert(
    fc.property(...asked, (told, low, width) => {
      // Tenths of a thou are 2540 nm, micrometres 1000.
      const nanometres = told.map(([isInch, size]) => size * (isInch ? 2540 : 1000))
      const stock = told.map(([isInch, size], at) => ({
        id: `s${at}`,
        thickness: isInch ? inch(size / 10_000) : mm(size / 1000),
      }))
      const target = { low: low * 60, high: (low + width) * 60 }
      const all = Array.from({ length: 2 ** stock.length }, (_, mask) => {
        const used = nanometres.filter((_, at) => mask & (1 << at))
        return { count: used.length, total: used.reduce((sum, size) => sum + size, 0) }
      }).filter(({ total }) => total >= target.low && total <= target.high)
      const off = (total: number) => Math.abs(total - (target.low + target.high) / 2)
      const score = ({ count, total }: { count: number; total: number }) => count * 1e9 + off(total)
      const best = all.length ? Math.min(...all.map(score)) : undefined
      const { pack } = chooseShims({ stock, target: { low: mm(target.low / 1e6), high: mm(target.high / 1e6) } })
      const found = pack && score({ count: pack.shims.length, total: Math.round(pack.total * 1e9) })
      expect(found).toEqual(best)
    }),
    { seed: 41, numRuns: 150 },
  )
})

test('agrees with trying every combination, and never takes more shims (seed 40)', () => {
  const sizes = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 9 })
  fc.assert(
    fc.property(sizes, fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 12 }), (stock, low, width) => {
      const all = Array.from({ length: 2 ** stock.length }, (_, mask) => {
        const used = stock.filter((_, at) => mask & (1 << at))
        return { count: used.length, total: used.reduce((sum, size) => sum + size, 0) }
      }).filter(({ total }) => total >= low && total <= low + width)
      const score = ({ count, total }: { count: number; total: number }) =>
        count * 1000 + Math.abs(total - low - width / 2)
      const best = all.length ? Math.min(...all.map(score)) : undefined
      const { pack } = chooseShims({
        stock: shims(...stock.map((size) => size / 100)),
        target: { low: mm(low / 100), high: mm((low + width) / 100) },
      })
      const found = pack && score({ count: pack.shims.length, total: Math.round(pack.total * 1e5) })
      expect(found).toEqual(best)
    }),
    { seed: 40 },
  )
})

test('forty measured shims for one micrometre of window take less than a second', () => {
  const stock = Array.from({ length: 40 }, (_, at) => ({ id: `s${at}`, thickness: mm(0.101 + ((at * 37) % 83) / 100) }))
  const start = performance.now()
  const choice = chooseShims({ stock, target: { low: mm(7.777), high: mm(7.778) } })
  expect(performance.now() - start).toBeLessThan(1000)
  expect(choice.pack).toBeDefined()
})

test('a split keeps the total and uses every shim', () => {
  const pack = shims(0.5, 0.3, 0.2, 0.13)
  const { side, otherSide } = splitShims({ pack, side: { low: mm(0.6), high: mm(0.65) } })
  expect(ids(side?.shims)).toBe('s1 s4')
  expect(ids(otherSide?.shims)).toBe('s2 s3')
  expect((side?.total ?? 0) + (otherSide?.total ?? 0)).toBeCloseTo(0.00113, 9)
  expect(splitShims({ pack, side: { low: mm(2), high: mm(3) } }).nearest).toHaveLength(1)
})

test('refuses a target below zero, a shim of nothing and a stock without end', () => {
  const target = { low: mm(0.1), high: mm(0.2) }
  expect(() => chooseShims({ stock: [], target: { low: mm(-0.2), high: mm(-0.1) } })).toThrow('no room for any shim')
  expect(() => chooseShims({ stock: shims(0), target })).toThrow('the shim s1 has to be')
  expect(() => chooseShims({ stock: Array.from({ length: 201 }, () => shims(1)[0] as Shim), target })).toThrow(
    '201 shims',
  )
  // Sizes to the nanometre that share no step, in a thick pack: too many sums to look at.
  const odd = Array.from({ length: 150 }, (_, at) => ({ id: `s${at}`, thickness: mm(1 + at / 1e6) }))
  expect(() => chooseShims({ stock: odd, target: { low: mm(90), high: mm(95) } })).toThrow('at most 1 can be searched')
  expect(() => chooseShims({ stock: shims(1), target: { low: mm(200), high: mm(300) } })).toThrow('the shim pack')
})
