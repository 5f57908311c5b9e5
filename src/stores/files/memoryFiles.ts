// Files that are gone with the process: for tests and for looking around.
import type { FileAbout, Files, FoundFile } from './files.ts'
import { lookAt } from './lookAt.ts'
import { makeSmall } from './makeSmall.ts'

export function memoryFiles(): Files {
  const kept = new Map<string, FoundFile & { readonly about: FileAbout }>()
  return {
    async put(sha256, bytes) {
      const about = lookAt(sha256, bytes)
      if (!kept.has(sha256)) kept.set(sha256, { bytes: bytes.slice(), type: about.type, about })
      return about
    },
    read: async (sha256) => kept.get(sha256) ?? null,
    small: async (sha256) => {
      const whole = kept.get(sha256)
      return whole ? makeSmall(whole) : null
    },
    list: async () => [...kept.values()].map(({ about }) => about).sort((a, b) => (a.sha256 < b.sha256 ? -1 : 1)),
  }
}
