// The vault in an SQLite file of its own, which only its owner may read. Several processes may have it open.
import { openVaultFile } from './openVaultFile.ts'
import type { Vault } from './vault.ts'

/** @throws STORE_NOT_OURS · STORE_READ_ONLY · STORE_FULL · STORE_BUSY · STORE_DAMAGED */
export async function sqliteVault(file: string): Promise<Vault & { close(): void }> {
  const { db, use } = await openVaultFile(file)
  const read = db.prepare('select value from kept where key = ?')
  const write = db.prepare('insert into kept (key, value) values (?1, ?2) on conflict (key) do update set value = ?2')
  const remove = db.prepare('delete from kept where key = ?')
  const list = db.prepare('select key from kept where substr(key, 1, length(?1)) = ?1 order by key')
  const keptUnder = (key: string) => (read.get(key) as { value: string } | undefined)?.value
  return {
    read: (key) => use(() => keptUnder(key)),
    change: (key, to) =>
      use(() => {
        db.exec('begin immediate')
        try {
          const before = keptUnder(key)
          const after = to(before)
          if (after === undefined) remove.run(key)
          else if (after !== before) write.run(key, after)
          db.exec('commit')
          return before
        } catch (error) {
          if (db.isTransaction) db.exec('rollback')
          throw error
        }
      }),
    keys: (prefix) => use(() => (list.all(prefix) as { key: string }[]).map(({ key }) => key)),
    close: () => db.close(),
  }
}
