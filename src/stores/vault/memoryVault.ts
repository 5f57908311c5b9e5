// A vault that is gone with the process: for tests and for looking around.
import type { Vault } from './vault.ts'

export function memoryVault(): Vault {
  const kept = new Map<string, string>()
  return {
    read: async (key) => kept.get(key),
    change: async (key, to) => {
      const before = kept.get(key)
      const after = to(before)
      if (after === undefined) kept.delete(key)
      else kept.set(key, after)
      return before
    },
    keys: async (prefix) => [...kept.keys()].filter((key) => key.startsWith(prefix)).sort(),
  }
}
