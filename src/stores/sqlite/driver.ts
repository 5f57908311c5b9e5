// The SQLite driver: Node's own where it is there and on by default (22.13 and later), else the package with the same interface.
import type { DatabaseSync } from '@photostructure/sqlite'

export type Database = InstanceType<typeof DatabaseSync>

interface Driver {
  readonly DatabaseSync: new (
    file: string,
    options: { readonly timeout?: number; readonly readOnly?: boolean },
  ) => Database
}

/** Loads the driver once, when a file is first opened. */
export async function sqliteDriver(): Promise<Driver> {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  const own = major > 22 || (major === 22 && minor >= 13)
  // The name in a variable: the types of Node 20 do not know it.
  const name = own ? 'node:sqlite' : '@photostructure/sqlite'
  return (await import(/* @vite-ignore */ name)) as Driver
}

export interface SqliteError extends Error {
  /** Extended result code; the low byte is the kind. @source https://www.sqlite.org/rescode.html */
  readonly errcode: number
}

export const isSqliteError = (error: unknown): error is SqliteError =>
  error instanceof Error && typeof (error as { errcode?: unknown }).errcode === 'number'
