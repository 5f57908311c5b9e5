// The jobs of this store with what stands on their spines; read on from where it was read to.
import { hourOf } from '../../journal/clock.ts'
import type { Entry, Kind } from '../../journal/entry.ts'
import type { Journal, StoredEntry } from '../../journal/journal.ts'
import { fold } from '../../record/fold.ts'
import { SHOP } from '../shop/shopState.ts'

interface Ruled {
  readonly owner: string | undefined
  readonly serial: string | undefined
  readonly invented: boolean | undefined
  /** The hash of the unit file it goes by, and the name that file had. */
  readonly unit: string | undefined
  readonly file: string | undefined
}

/** A job as the list shows it. */
export interface JobSpine extends Partial<Ruled> {
  readonly job: string
  readonly entries: number
  readonly position: number
  /** Milliseconds since 1970 of the latest entry, by the clocks of the devices. */
  readonly latest_ms?: number
}

/** What of a job decides what stands on its spine. */
const RULING: ReadonlySet<Kind> = new Set(['job-opened', 'unit-adopted', 'withdrawn'])

interface Read {
  readonly ruling: readonly Entry[]
  readonly spine: JobSpine
}

export class JobShelf {
  readonly #journal: Journal
  readonly #read = new Map<string, Read>()
  #turn: Promise<unknown> = Promise.resolve()

  constructor(journal: Journal) {
    this.#journal = journal
  }

  /** One after another: two at once would count what they both read twice. */
  jobs(): Promise<readonly JobSpine[]> {
    const mine = this.#turn.then(() => this.#look())
    this.#turn = mine.catch(() => {})
    return mine
  }

  async #look(): Promise<readonly JobSpine[]> {
    const streams = await this.#journal.streams()
    const spines: JobSpine[] = []
    for (const { stream, position } of streams) if (stream !== SHOP) spines.push(await this.#spine(stream, position))
    return spines.sort((a, b) => (b.latest_ms ?? 0) - (a.latest_ms ?? 0) || (a.job < b.job ? -1 : 1))
  }

  async #spine(stream: string, until: number): Promise<JobSpine> {
    let read = this.#read.get(stream) ?? { ruling: [], spine: { job: stream, entries: 0, position: 0 } }
    while (read.spine.position < until) {
      const { entries, position } = await this.#journal.read(stream, { after: read.spine.position })
      if (entries.length === 0) break
      read = withPage(read, entries, position)
      this.#read.set(stream, read)
    }
    return read.spine
  }
}

function withPage({ ruling, spine }: Read, page: readonly StoredEntry[], position: number): Read {
  const fresh = page.map(({ entry }) => entry).filter(({ kind }) => RULING.has(kind))
  const latest_ms = page.reduce((latest, { entry }) => Math.max(latest, hourOf(entry.at)), spine.latest_ms ?? 0)
  const counted = { ...spine, entries: spine.entries + page.length, position, latest_ms }
  if (fresh.length === 0) return { ruling, spine: counted }
  const all = [...ruling, ...fresh]
  return { ruling: all, spine: { ...counted, ...ruledBy(spine.job, all) } }
}

/** By the same rules as the job itself: what is withdrawn does not count, whatever comes in whatever order. */
function ruledBy(job: string, ruling: readonly Entry[]): Ruled {
  const { opened, unit } = fold(job, ruling).state
  return {
    owner: opened.owner,
    serial: opened.serial,
    invented: opened.invented,
    unit: unit?.unit,
    file: unit?.file,
  }
}
