import { expect, test } from 'vitest'
import { nextEntry, type Tail } from './chain.ts'
import { checkChains } from './checkChains.ts'
import type { At, Entry } from './entry.ts'
import { readEntry, type SealedEntry } from './readEntry.ts'

const ID = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`

function chain(count: number, device = 'tablet', from = 0): readonly SealedEntry[] {
  let tail: Tail | undefined
  let clock: At | undefined
  return Array.from({ length: count }, (_, index) => {
    const says = `note ${index + 1}`
    const said = {
      id: ID(from + index + 1),
      stream: 'J41',
      kind: 'note',
      body: { says },
      person: 'M. Ashdown',
      device,
    } as const
    const next = nextEntry(said, { tail, clock, now_ms: 1_795_000_000_000 + index })
    tail = next.tail
    clock = next.clock
    return next
  })
}
const faultsOf = (entries: readonly SealedEntry[]) =>
  checkChains(entries).flatMap(({ faults }) =>
    faults.map(({ what, seq, count }) => [what, seq, ...(count ? [count] : [])]),
  )
const changed = (sealed: SealedEntry, change: Partial<Entry>) => readEntry({ ...sealed.entry, ...change })

test('chains that are whole have one head each and no fault, in any order', () => {
  const all = [...chain(5), ...chain(3, 'laptop', 100)]
  const reports = checkChains([...all].reverse())
  expect(
    reports.map(({ device, entries, heads, faults }) => [device, entries, heads.map(({ seq }) => seq), faults]),
  ).toEqual([
    ['laptop', 3, [3], []],
    ['tablet', 5, [5], []],
  ])
  expect(reports[1]!.heads[0]!.hash).toBe(all[4]!.hash)
})

test('a word changed anywhere shows at the entry behind it; changed in the last one it shows against a signed head alone', () => {
  const whole = chain(5)
  for (let place = 0; place < 4; place += 1) {
    const spoilt = whole.map((one, index) => (index === place ? changed(one, { body: { says: 'another' } }) : one))
    expect(faultsOf(spoilt)).toEqual([['does not fit', place + 2]])
  }
  const last = whole.map((one, index) => (index === 4 ? changed(one, { person: 'J. Tarn' }) : one))
  expect(faultsOf(last)).toEqual([])
  expect(checkChains(last)[0]!.heads[0]!.hash).not.toBe(whole[4]!.hash)
})

test('what is missing is counted; what comes later may still fill it', () => {
  const whole = chain(6)
  const without = (...seqs: number[]) => whole.filter(({ entry }) => !seqs.includes(entry.seq))
  expect(faultsOf(without(3, 4))).toEqual([['missing', 5, 2]])
  expect(faultsOf(without(1))).toEqual([['missing', 2, 1]])
  expect(checkChains(without(3, 4))[0]!.heads.map(({ seq }) => seq)).toEqual([2, 6])
  expect(faultsOf(whole)).toEqual([])
})

test('a fork is told at its second entry, and both its ends are heads', () => {
  const whole = chain(3)
  const twin = changed(whole[2]!, { id: ID(50), body: { says: 'from the restored tablet' } })
  const [report] = checkChains([...whole, twin])
  expect(report!.faults).toEqual([{ what: 'fork', id: ID(50), seq: 3 }])
  expect(report!.heads.map(({ id }) => id)).toEqual([ID(3), ID(50)])
})

test('a first entry that names one before it, and a time that is not later, do not fit', () => {
  const [first, second] = chain(2)
  expect(faultsOf([changed(first!, { prev: 'a'.repeat(64) })])).toEqual([['does not fit', 1]])
  expect(faultsOf([first!, changed(second!, { at: first!.entry.at })])).toEqual([['clock', 2]])
})
