// The fonts inside a job book.

/** The files that scripts/build.mjs lays beside the program. */
const FILES = {
  words: 'atkinson-hyperlegible-next-latin-wght-normal.woff2',
  figures: 'atkinson-hyperlegible-mono-latin-wght-normal.woff2',
} as const

/** Both fonts as base64. @param read gives the bytes of such a file, as base64 */
export async function bookFonts(read: (file: string) => Promise<string>): Promise<{ words: string; figures: string }> {
  const [words, figures] = await Promise.all([read(FILES.words), read(FILES.figures)])
  return { words, figures }
}
