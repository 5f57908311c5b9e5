import { expect, test } from 'vitest'
import { nextEntry } from './chain.ts'

const ID = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const said = (n: number) =>
  ({
    id: ID(n),
    stream: 'J41',
    kind: 'note',
    body: { says: 'oil drained' },
    person: 'M. Ashdown',
    device: 'tablet',
  }) as const

test('each entry names the one before it, and a clock set back counts on', () => {
  const first = nextEntry(said(1), { tail: undefined, clock: undefined, now_ms: 1000 })
  const second = nextEntry(said(2), { tail: first.tail, clock: first.clock, now_ms: 400 })
  expect(first.entry).toMatchObject({ seq: 1, prev: null, at: { ms: 1000, n: 0 } })
  expect(second.entry).toMatchObject({ seq: 2, prev: first.hash, at: { ms: 1000, n: 1 } })
})
