// The jobs of this store with what stands on their spines; read on from where it was read to.
import { compareAt } from '../../journal/clock.ts'
import type { At, Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { SHOP } from '../shop/shopState.ts'

/** A job as the list shows it. */
export interface JobSpine {
  readonly job: string
  readonly owner?: string
  readonly serial?: string
  readonly invented?: boolean
  /** The hash of the unit file it goes by, and the name that file had. */
  readonly unit?: string
  readonly file?: string
  readonly entries: number
  readonly position: number
  /** Milliseconds since 1970 of the latest entry, by the clocks of the devices. */
  readonly latest_ms?: number
}

interface Read {
  spine: JobSpine
  openedAt: At | undefined
  adoptedAt: At | undefined
}

export class JobShelf {
  readonly #journal: Journal
  readonly #read = new Map<string, Read>()

  constructor(journal: Journal) {
    this.#journal = journal
  }

  async jobs(): Promise<readonly JobSpine[]> {
    const streams = await this.#journal.streams()
    const spines: JobSpine[] = []
    for (const { stream, position } of streams) if (stream !== SHOP) spines.push(await this.#spine(stream, position))
    return spines.sort((a, b) => (b.latest_ms ?? 0) - (a.latest_ms ?? 0) || (a.job < b.job ? -1 : 1))
  }

  async #spine(stream: string, until: number): Promise<JobSpine> {
    const fresh: Read = { spine: { job: stream, entries: 0, position: 0 }, openedAt: undefined, adoptedAt: undefined }
    const read = this.#read.get(stream) ?? fresh
    while (read.spine.position < until) {
      const { entries, position } = await this.#journal.read(stream, { after: read.spine.position })
      for (const { entry } of entries) take(read, entry)
      read.spine = { ...read.spine, position }
      if (entries.length === 0) break
    }
    this.#read.set(stream, read)
    return read.spine
  }
}

/** The latest of its kind rules, in whatever order they come. */
function take(read: Read, { kind, body, at }: Entry): void {
  const latest_ms = Math.max(read.spine.latest_ms ?? 0, at.ms)
  read.spine = { ...read.spine, entries: read.spine.entries + 1, latest_ms }
  const isLater = (known: At | undefined) => !known || compareAt(at, known) > 0
  if (kind === 'job-opened' && isLater(read.openedAt)) {
    const { owner, serial, invented } = body
    read.openedAt = at
    read.spine = { ...read.spine, ...(owner && { owner }), ...(serial && { serial }), ...(invented && { invented }) }
  }
  if (kind === 'unit-adopted' && isLater(read.adoptedAt)) {
    read.adoptedAt = at
    read.spine = { ...read.spine, unit: body.unit, file: body.file }
  }
}
