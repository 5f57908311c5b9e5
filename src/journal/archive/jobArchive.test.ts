import { expect, test } from 'vitest'
import { hashOfBytes } from '../canonicalForm.ts'
import { nextEntry, type Tail } from '../chain.ts'
import type { Entry } from '../entry.ts'
import { sealJob, verifyJob } from './jobArchive.ts'
import { newSealKey, openSealed, publicKeyOf, seal } from './sealed.ts'

const KEY = newSealKey()
const UNIT = new TextEncoder().encode('matchmark: unit\nname: Winch\n')

/** Two devices' entries, and a unit file. */
function entriesOf(count: number): Entry[] {
  const tails = new Map<string, Tail>()
  return Array.from({ length: count }, (_, index) => {
    const device = index % 2 === 0 ? 'tablet' : 'laptop'
    const id = `00000000-0000-4000-8000-${String(index).padStart(12, '0')}`
    const said = { id, stream: 'J41', kind: 'note', body: { says: `note ${index}` }, person: 'Ada', device } as const
    const made = nextEntry(said, {
      tail: tails.get(device),
      clock: undefined,
      now_ms: 1_773_000_000_000 + 1_000 * index,
    })
    tails.set(device, made.tail)
    return made.entry
  })
}

const archiveOf = (count: number, secret = KEY): Uint8Array =>
  sealJob(
    {
      job: 'J41',
      sealed_ms: 1_773_478_800_000,
      entries: entriesOf(count),
      files: [{ sha256: hashOfBytes(UNIT), ending: 'yaml', bytes: UNIT }],
    },
    secret,
  )

const flipped = (bytes: Uint8Array, bit: number): Uint8Array => {
  const changed = bytes.slice()
  changed[bit >> 3]! ^= 1 << (bit & 7)
  return changed
}

test('[J22] [J23] an archive says whose it is, what it holds, and that it is whole', () => {
  const { about, key, entries, files, chains, faults } = verifyJob(archiveOf(10))
  expect(faults).toEqual([])
  expect(key).toBe(publicKeyOf(KEY))
  expect(about).toMatchObject({ job: 'J41', entries: 10 })
  expect(about!.heads.map(({ device, seq }) => [device, seq])).toEqual([
    ['laptop', 5],
    ['tablet', 5],
  ])
  expect(entries).toHaveLength(10)
  expect(files).toEqual([{ sha256: hashOfBytes(UNIT), bytes: UNIT }])
  expect(chains.every((chain) => chain.faults.length === 0)).toBe(true)
})

test('[J24] the same job gives the same bytes', () => {
  const entries = entriesOf(6)
  const once = (list: Entry[]) => sealJob({ job: 'J41', sealed_ms: 1, entries: list, files: [] }, KEY)
  expect(once(entries)).toEqual(once([...entries].reverse()))
})

test('[J24] every changed bit of a small archive is found', () => {
  const bytes = archiveOf(2)
  const missed: number[] = []
  for (let bit = 0; bit < bytes.length * 8; bit++)
    if (verifyJob(flipped(bytes, bit)).faults.length === 0) missed.push(bit)
  expect(missed).toEqual([])
}, 240_000)

test('every cut of a small archive is found', () => {
  const bytes = archiveOf(2)
  const missed: number[] = []
  for (let end = 0; end < bytes.length; end++) if (verifyJob(bytes.slice(0, end)).faults.length === 0) missed.push(end)
  expect(missed).toEqual([])
  const longer = new Uint8Array(bytes.length + 1)
  longer.set(bytes)
  expect(verifyJob(longer).faults).not.toEqual([])
}, 60_000)

test('1,000 changed bits of a large archive, by a seeded hand, are found', () => {
  const bytes = archiveOf(300)
  let state = 7
  const next = (below: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
  const missed: number[] = []
  for (let go = 0; go < 1_000; go++) {
    const bit = next(bytes.length * 8)
    // What is looked at here is the container and the hashes: the chains are read elsewhere.
    if (openSealed(flipped(bytes, bit), 'matchmark-archive/1').faults.length === 0) missed.push(bit)
  }
  expect(missed).toEqual([])
}, 240_000)

test('1,000 cuts of a large archive, by a seeded hand, are found', () => {
  const bytes = archiveOf(300)
  let state = 11
  const missed: number[] = []
  for (let go = 0; go < 1_000; go++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const end = Math.floor((state / 2 ** 32) * bytes.length)
    if (verifyJob(bytes.subarray(0, end)).faults.length === 0) missed.push(end)
  }
  expect(missed).toEqual([])
}, 240_000)

/** Seals other entries, as somebody with a key of his own could. */
function forged(entries: readonly Entry[], heads: readonly Entry[]): Uint8Array {
  const honest = openSealed<{ heads: unknown }>(archiveOf(10), 'matchmark-archive/1').manifest!
  const whole = openSealed<object>(
    sealJob({ job: 'J41', sealed_ms: 1, entries, files: [] }, KEY),
    'matchmark-archive/1',
  )
  const about = {
    ...honest.about,
    heads: openSealed<{ heads: unknown }>(
      sealJob({ job: 'J41', sealed_ms: 1, entries: heads, files: [] }, KEY),
      'matchmark-archive/1',
    ).manifest!.about.heads,
  }
  const members = [{ name: 'entries.jsonl', bytes: whole.members.get('entries.jsonl')! }]
  return seal({ schema: 'matchmark-archive/1', about, members }, newSealKey())
}

test('[J23] [J26] a tail that was cut off is missed, device by device', () => {
  const all = entriesOf(10)
  const { faults } = verifyJob(forged(all.slice(0, 8), all))
  expect(faults.map(({ says }) => says)).toEqual([
    'laptop: its last entry, number 5, is missing or was changed.',
    'tablet: its last entry, number 5, is missing or was changed.',
  ])
})

test('an entry that was written anew, even by who can seal, is the first that does not fit', () => {
  const all = entriesOf(10)
  const changed = all.map((entry) =>
    entry.id === all[2]!.id ? ({ ...entry, body: { says: 'never happened' } } as Entry) : entry,
  )
  const { faults, doubts, key } = verifyJob(forged(changed, all))
  expect(key).not.toBe(publicKeyOf(KEY))
  expect(faults).toEqual([])
  expect(doubts).toEqual([
    `tablet: entry 3 (${all[4]!.id}) is the first that does not fit: it names another entry before it than the one that stands there.`,
  ])
})

test('[J26] what had not come in when it was sealed is a doubt, and no fault of the archive', () => {
  const [first, ...later] = entriesOf(6)
  const { faults, doubts } = verifyJob(sealJob({ job: 'J41', sealed_ms: 1, entries: later, files: [] }, KEY))
  expect(first!.device).toBe('tablet')
  expect(faults).toEqual([])
  expect(doubts).toEqual([
    `tablet: entry 2 (${later[1]!.id}) is the first that does not fit: entries before it are missing.`,
  ])
})

test('what was never an archive, or one of another form, is told', () => {
  expect(verifyJob(new Uint8Array([1, 2, 3])).faults[0]).toEqual({
    what: 'container',
    says: 'It is no archive, or so damaged or cut that it cannot be opened.',
  })
  const other = seal({ schema: 'another/1', about: {}, members: [] }, KEY)
  expect(verifyJob(other).faults[0]!.says).toBe('It has no manifest of the form matchmark-archive/1.')
})

test('[J25] a member that would unfold to something huge is not unfolded', async () => {
  const { zipSync } = await import('fflate')
  const bomb = zipSync({ 'manifest.json': [new Uint8Array(50 * 2 ** 20), { level: 9 }] })
  expect(bomb.length).toBeLessThan(100_000)
  expect(verifyJob(bomb).faults[0]!.what).toBe('container')
})

/** What somebody with a key of his own can seal, rules or no rules. */
function sealedByHand({ entries = entriesOf(2), about = {}, files = [] as { name: string; bytes: Uint8Array }[] }) {
  const honest = openSealed<object>(
    sealJob({ job: 'J41', sealed_ms: 1, entries, files: [] }, KEY),
    'matchmark-archive/1',
  )
  const members = [{ name: 'entries.jsonl', bytes: honest.members.get('entries.jsonl')! }, ...files]
  return seal({ schema: 'matchmark-archive/1', about: { ...honest.manifest!.about, ...about }, members }, newSealKey())
}

test('an archive of one job brings nothing for another, nor for the shop itself', () => {
  const entries = entriesOf(2)
  const said = { id: entries[0]!.id.replace('8000', '9000'), kind: 'note', person: 'Ada', device: 'tablet' } as const
  const body = { says: 'Ben is keeper from now on.', topic: 'person changed', facts: { person: 'Ben', role: 'keeper' } }
  const { entry } = nextEntry({ ...said, stream: 'shop', body }, { tail: undefined, clock: undefined, now_ms: 1 })
  expect(verifyJob(sealedByHand({ entries: [...entries, entry] })).faults.map(({ says }) => says)).toEqual([
    "It holds entries of 'shop', which is not the job that it is of.",
  ])
})

test('a file that lies under the hash of another is told', () => {
  const name = `files/${'0'.repeat(64)}.yaml`
  const { faults } = verifyJob(sealedByHand({ files: [{ name, bytes: UNIT }] }))
  expect(faults.map(({ says }) => says)).toEqual([`The file under the name ${'0'.repeat(64)} is another one.`])
})

test.each([
  ['a date that is none', { sealed_ms: 1e20 }],
  ['heads that are no list', { heads: 7 }],
  ['heads that are nothing', { heads: [null] }],
  ['a job that rings the bell', { job: 'J41\u0007' }],
  ['a device that clears the screen', { heads: [{ device: '\u001b[2J', seq: 1, id: 'x', hash: 'y' }] }],
])('a manifest with %s is told, and nothing falls over', (_what, about) => {
  const { faults, about: read } = verifyJob(sealedByHand({ about }))
  expect([read, faults.map(({ says }) => says)]).toEqual([null, ['Its manifest does not say what job it is of.']])
})

test.each(['\u001b]0;owned\u0007', '../entries.jsonl', '/etc/passwd', 'a b'])(
  'a member called %j makes no archive',
  (name) => {
    const { faults } = verifyJob(sealedByHand({ files: [{ name, bytes: UNIT }] }))
    expect(faults.map(({ what }) => what)).toEqual(['manifest'])
  },
)
