// What this device keeps beside the journal: who it is, how far it is in step, and files under their hash.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { browserProblem } from '../../stores/browser/browserProblem.ts'

interface Kept extends DBSchema {
  facts: { key: string; value: unknown }
  files: { key: string; value: Blob }
}

export interface DeviceStore {
  fact<T>(key: string): Promise<T | undefined>
  keepFact(key: string, value: unknown): Promise<void>
  file(key: string): Promise<Blob | undefined>
  /**
   * All of them or none; when it is done they would survive a pulled plug.
   *
   * @throws STORE_FULL and the other problems of stores
   */
  keepFiles(files: ReadonlyMap<string, Blob>): Promise<void>
  dropFiles(keys: readonly string[]): Promise<void>
}

const FORM = 1

export async function openDeviceStore(name: string): Promise<DeviceStore> {
  const db: IDBPDatabase<Kept> = await openDB<Kept>(name, FORM, {
    upgrade(fresh) {
      fresh.createObjectStore('facts')
      fresh.createObjectStore('files')
    },
  })
  const inFiles = async (
    change: (files: { put(key: string, file: Blob): unknown; drop(key: string): unknown }) => void,
  ) => {
    try {
      const work = db.transaction('files', 'readwrite', { durability: 'strict' })
      const all: unknown[] = []
      change({
        put: (key, file) => all.push(work.store.put(file, key)),
        drop: (key) => all.push(work.store.delete(key)),
      })
      await Promise.all([...all, work.done])
    } catch (error) {
      throw browserProblem(error, { store: 'this device', form: FORM })
    }
  }
  // Facts can be found again: where there is no room for one it lasts as long as the page, and nothing that can still be sent waits for it.
  const withoutRoom = new Map<string, unknown>()
  return {
    fact: async <T>(key: string) => (withoutRoom.get(key) ?? (await db.get('facts', key))) as T | undefined,
    async keepFact(key, value) {
      try {
        await db.put('facts', value, key)
        withoutRoom.delete(key)
      } catch (error) {
        if (!(error instanceof DOMException) || error.name !== 'QuotaExceededError') throw error
        withoutRoom.set(key, value)
      }
    },
    file: (key) => db.get('files', key),
    keepFiles: (files) =>
      inFiles(({ put }) => {
        for (const [key, file] of files) put(key, file)
      }),
    dropFiles: (keys) => inFiles(({ drop }) => keys.forEach(drop)),
  }
}
