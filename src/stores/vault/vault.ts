// What the server keeps to itself: salted hashes of PINs and tokens, one-time codes, keys. Nothing of it is in the journal.

/** A small store of secrets, beside the journal in the same database. */
export interface Vault {
  read(key: string): Promise<string | undefined>
  /**
   * Reads and writes in one go: nobody else, nor another server on the same store, comes between.
   *
   * @param to what is to be kept; undefined takes it out
   * @returns what was there before
   */
  change(key: string, to: (before: string | undefined) => string | undefined): Promise<string | undefined>
  /** Keys that begin so, in order. */
  keys(prefix: string): Promise<readonly string[]>
}
