// What a command is handed of the world; tests hand it something else.

/** A unit, a job, an order: text in, text out; archives as bytes. All throw a Problem that names the file. */
export interface Files {
  readonly readBytes: (path: string) => Promise<Uint8Array>
  readonly writeBytes: (path: string, bytes: Uint8Array) => Promise<void>
  readonly read: (path: string) => Promise<string>
  /** Makes the folders that are missing. `secret`: for its owner alone. */
  readonly write: (path: string, text: string, secret?: 'secret') => Promise<void>
}

export interface Io {
  /** One or more lines of the answer. */
  readonly out: (text: string) => void
  /** One or more lines about the work: faults, progress, what was taken for granted. */
  readonly err: (text: string) => void
  readonly colour: boolean
  /** Letters in a line. */
  readonly width: number
  /** Milliseconds, for progress and for what is said about the time taken. */
  readonly now: () => number
  /** Milliseconds since 1970: when something happened. */
  readonly clock: () => number
  /** The date that a paper carries: 2026-03-14. */
  readonly today: () => string
  readonly files: Files
  /** The value of a variable of the surroundings, such as PORT. */
  readonly env: (name: string) => string | undefined
  /** Fonts that are put into the job book: the file's name → its bytes. */
  readonly font: (file: string) => Promise<Uint8Array>
  /** What scripts/build.mjs lays beside the program: `web`, `worker.js`. */
  readonly beside: (name: string) => URL
  /** Asks for something that is not to be seen on the screen, such as a PIN. */
  readonly secret: (prompt: string) => Promise<string>
  /** Resolves when the person stops the program. */
  readonly stopped: () => Promise<void>
}

/** 0 good · 1 a fault found in the work · 2 wrong use · 70 a fault of this program. */
export type ExitCode = 0 | 1 | 2 | 70
