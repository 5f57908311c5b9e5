// One job, whole, in one file: its entries, its unit files and photos, sealed by the shop.
import { utf8ToBytes } from '@noble/hashes/utils.js'
import { strFromU8 } from 'fflate'
import { z } from 'zod'
import { hashOfBytes } from '../canonicalForm.ts'
import { type ChainReport, checkChains, type Hashed, headsOf } from '../checkChains.ts'
import { type Entry, MS, STREAM } from '../entry.ts'
import { compareEntries } from '../foldOrder.ts'
import type { Head } from '../journal.ts'
import { readEntry } from '../readEntry.ts'
import { type Member, type Opened, openSealed, type SealFault, seal } from './sealed.ts'

const SCHEMA = 'matchmark-archive/1'
const ENTRIES = 'entries.jsonl'

export interface JobAbout {
  readonly job: string
  /** When it was sealed, milliseconds since 1970. */
  readonly sealed_ms: number
  readonly entries: number
  /** The end of every device's chain: a tail that is cut off is missed. */
  readonly heads: readonly Head[]
}

export interface JobFile {
  readonly sha256: string
  readonly ending: string
  readonly bytes: Uint8Array
}

/** @param secret the shop's key */
export function sealJob(
  {
    job,
    sealed_ms,
    entries,
    files,
  }: { job: string; sealed_ms: number; entries: readonly Entry[]; files: readonly JobFile[] },
  secret: string,
): Uint8Array {
  const sorted = [...entries].sort(compareEntries).map(readEntry)
  const text = sorted.map((one) => `${one.text}\n`).join('')
  const about: JobAbout = { job, sealed_ms, entries: sorted.length, heads: headsOf(sorted) }
  const members: Member[] = [
    { name: ENTRIES, bytes: utf8ToBytes(text) },
    ...[...files]
      .sort((a, b) => (a.sha256 < b.sha256 ? -1 : 1))
      .map(({ sha256, ending, bytes }) => ({ name: `files/${sha256}.${ending}`, bytes })),
  ]
  return seal({ schema: SCHEMA, about, members }, secret)
}

/** Whoever seals one writes what he likes: it is read as what comes from strangers. */
const ABOUT = z.object({
  job: STREAM,
  sealed_ms: MS,
  entries: z.int(),
  heads: z.array(z.object({ device: STREAM, seq: z.int(), id: z.string(), hash: z.string() })),
})

export interface Verified {
  readonly about: JobAbout | null
  /** Who sealed it: the shop's public key. */
  readonly key: string | null
  readonly entries: readonly Hashed[]
  readonly files: readonly { readonly sha256: string; readonly bytes: Uint8Array }[]
  /** One for each device, also one that is gone altogether. */
  readonly chains: readonly ChainReport[]
  /** None: it is as it was sealed. */
  readonly faults: readonly SealFault[]
  /** Where a chain did not hang together when it was sealed: an entry that had not come in yet, a device that was copied, an entry written anew. */
  readonly doubts: readonly string[]
}

/** Says what an archive holds and all that is wrong with it; needs nothing but its bytes. */
export function verifyJob(bytes: Uint8Array): Verified {
  const opened = openSealed<unknown>(bytes, SCHEMA)
  const { entries, faults: lineFaults } = entriesIn(opened)
  const chains = checkChains(entries)
  const read = ABOUT.safeParse(opened.manifest?.about)
  const about = read.success ? read.data : null
  const files = filesIn(opened)
  const faults = about ? [...ofOther(about, entries), ...tailFaults(about, entries)] : []
  return {
    about,
    key: opened.manifest?.key ?? null,
    entries,
    files,
    chains,
    faults: [
      ...opened.faults,
      ...(opened.manifest && !about ? [says('Its manifest does not say what job it is of.')] : []),
      ...lineFaults,
      ...faults,
      ...misnamed(files),
    ],
    doubts: chains.flatMap(chainDoubts),
  }
}

const says = (text: string): SealFault => ({ what: 'member', says: text })

function entriesIn({ members }: Opened<unknown>): { entries: Hashed[]; faults: SealFault[] } {
  const entries: Hashed[] = []
  const faults: SealFault[] = []
  const text = members.get(ENTRIES)
  if (!text) return { entries, faults }
  for (const [index, line] of strFromU8(text).split('\n').entries()) {
    if (line === '') continue
    try {
      const { entry, text: written, hash } = readEntry(JSON.parse(line))
      if (written !== line) faults.push(says(`Line ${index + 1} of ${ENTRIES} is not in the form that is hashed.`))
      entries.push({ entry, hash })
    } catch {
      faults.push(says(`Line ${index + 1} of ${ENTRIES} is no entry.`))
    }
  }
  return { entries, faults }
}

const filesIn = ({ members }: Opened<unknown>) =>
  [...members].flatMap(([name, bytes]) => {
    const sha256 = /^files\/([0-9a-f]{64})\.\w+$/.exec(name)?.[1]
    return sha256 ? [{ sha256, bytes }] : []
  })

const WORDS = {
  missing: 'entries before it are missing',
  'does not fit': 'it names another entry before it than the one that stands there',
  fork: 'this device gave its number twice',
} as const

const chainDoubts = ({ device, faults }: ChainReport): string[] => {
  // A device whose clock was set back has told the truth all the same.
  const first = faults.find(({ what }) => what !== 'clock')
  if (!first || first.what === 'clock') return []
  return [`${device}: entry ${first.seq} (${first.id}) is the first that does not fit: ${WORDS[first.what]}.`]
}

/** An archive is of one job. What it brings for another, or for the shop itself, would come in under this one's name. */
const ofOther = ({ job }: JobAbout, entries: readonly Hashed[]): SealFault[] =>
  [...new Set(entries.map(({ entry }) => entry.stream))]
    .filter((stream) => stream !== job)
    .map((stream) => says(`It holds entries of '${stream}', which is not the job that it is of.`))

/** A file is known by its hash; one under another's would be refused when the rest has come in. */
const misnamed = (files: Verified['files']): SealFault[] =>
  files
    .filter(({ sha256, bytes }) => hashOfBytes(bytes) !== sha256)
    .map(({ sha256 }) => says(`The file under the name ${sha256} is another one.`))

function tailFaults({ heads }: JobAbout, entries: readonly Hashed[]): SealFault[] {
  const here = new Set(entries.map(({ hash }) => hash))
  return heads
    .filter(({ hash }) => !here.has(hash))
    .map(({ device, seq }) => says(`${device}: its last entry, number ${seq}, is missing or was changed.`))
}
