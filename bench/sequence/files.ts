// The part of the bench that reads sequence files.
import type { Told } from './arguments.ts'

/** Plans each file and prints what came out; the targets that were missed, in words. */
export async function runFiles({ files }: Told): Promise<string[]> {
  return files.map((file) => `${file}: sequence files are not read yet.`)
}
