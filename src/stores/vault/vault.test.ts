// One contract for every vault.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { postgresPool } from '../postgres/postgresPool.ts'
import { postgresServer } from '../testing/postgresServer.ts'
import { memoryVault } from './memoryVault.ts'
import { postgresVault } from './postgresVault.ts'
import { sqliteVault } from './sqliteVault.ts'
import type { Vault } from './vault.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-vault-'))
const database = await postgresServer()
const pool = postgresPool(database.url)
afterAll(async () => {
  await pool.pool.end()
  await database.stop()
  rmSync(home, { recursive: true })
})

const VAULTS: readonly (readonly [string, () => Promise<Vault>])[] = [
  ['memory', async () => memoryVault()],
  ['an SQLite file', () => sqliteVault(join(home, 'keys.db'))],
  ['PostgreSQL', () => postgresVault(pool)],
]

test.each(VAULTS)('%s gives back what was kept, and what was there before', async (_what, open) => {
  const vault = await open()
  expect(await vault.change('code/a', () => 'one')).toBeUndefined()
  expect(await vault.change('code/a', (before) => `${before} two`)).toBe('one')
  expect(await vault.read('code/a')).toBe('one two')
  expect(await vault.change('code/a', () => undefined)).toBe('one two')
  expect(await vault.read('code/a')).toBeUndefined()
})

test.each(VAULTS)('%s lists keys that begin so, and only those', async (_what, open) => {
  const vault = await open()
  for (const key of ['list/b', 'list/a', 'list%', 'liszt/c']) await vault.change(key, () => 'x')
  expect(await vault.keys('list/')).toEqual(['list/a', 'list/b'])
})

test.each(VAULTS)('%s lets one of many take a thing, also through another door', async (_what, open) => {
  const [one, two] = [await open(), await open()]
  await one.change('count', () => '0')
  await Promise.all(
    Array.from({ length: 40 }, (_, go) =>
      (go % 2 ? one : two).change('count', (kept) => String(Number(kept ?? 0) + 1)),
    ),
  )
  // Two memories are two vaults.
  expect([await one.read('count'), await two.read('count')]).toEqual(_what === 'memory' ? ['20', '20'] : ['40', '40'])
})
