// Photos and unit files, kept beside the journal: each known by the SHA-256 of its bytes, put once and never changed.

/** What is kept, and how the names of such files end. */
export const ENDINGS = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp', 'text/yaml': 'yaml' } as const

export type FileType = keyof typeof ENDINGS

export interface FileAbout {
  readonly sha256: string
  readonly type: FileType
  /** Bytes. */
  readonly size: number
}

export interface FoundFile {
  readonly bytes: Uint8Array
  readonly type: FileType
}

export interface Files {
  /**
   * Keeps a file; answers when it would survive a pulled plug. The same file again changes nothing.
   *
   * @throws STORED_FILE_HASH · STORED_FILE_OTHER · STORED_FILE_TYPE · STORED_FILE_TOO_LARGE · the problems of stores
   */
  put(sha256: string, bytes: Uint8Array): Promise<FileAbout>
  read(sha256: string): Promise<FoundFile | null>
  /** A picture made small for lists; null where there is no such file or it is no picture. */
  small(sha256: string): Promise<FoundFile | null>
  /** In order of their hashes. */
  list(): Promise<readonly FileAbout[]>
}
