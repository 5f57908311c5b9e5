// Work that takes longer than an answer may: done beside the server, with its progress, an end in time, and a way to stop it.

export type WorkKind = 'plan' | 'book'

/** What a piece of work is given: the job's unit file and entries, as text; everything else it finds in them. */
export interface WorkInput {
  readonly job: string
  readonly unit: string
  /** JSON of the job's entries. */
  readonly entries: string
  /** For a book: its photos made small, JPEG in base64, by hash. */
  readonly pictures?: Readonly<Record<string, string>>
  /** States the search may look at. */
  readonly effort?: number
  readonly seconds?: number
}

export type WorkStatus =
  | { readonly state: 'waiting' }
  | { readonly state: 'running'; readonly progress: unknown }
  | { readonly state: 'done'; readonly result: unknown }
  | { readonly state: 'failed'; readonly says: string }
  | { readonly state: 'stopped' }

export interface Work {
  /**
   * @returns the name to ask for it by
   * @throws TOO_MANY_ASKED while too much waits
   */
  start(kind: WorkKind, input: WorkInput): Promise<string>
  status(id: string): Promise<WorkStatus | null>
  /** True when there was something to stop. */
  stop(id: string): Promise<boolean>
  close(): Promise<void>
}
