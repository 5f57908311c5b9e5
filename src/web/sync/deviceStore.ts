// What this device keeps beside the journal: who it is, how far it is in step, and files under their hash.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

interface Kept extends DBSchema {
  facts: { key: string; value: unknown }
  files: { key: string; value: Blob }
}

export interface DeviceStore {
  fact<T>(key: string): Promise<T | undefined>
  keepFact(key: string, value: unknown): Promise<void>
  file(hash: string): Promise<Blob | undefined>
  keepFile(hash: string, file: Blob): Promise<void>
}

export async function openDeviceStore(name: string): Promise<DeviceStore> {
  const db: IDBPDatabase<Kept> = await openDB<Kept>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('facts')
      fresh.createObjectStore('files')
    },
  })
  return {
    fact: async <T>(key: string) => (await db.get('facts', key)) as T | undefined,
    async keepFact(key, value) {
      await db.put('facts', value, key)
    },
    file: (hash) => db.get('files', hash),
    async keepFile(hash, file) {
      await db.put('files', file, hash)
    },
  }
}
