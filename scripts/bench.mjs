// `node scripts/bench.mjs NAME [arguments]`: bundles bench/NAME.bench.ts into dist/bench and runs it.
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(fileURLToPath(import.meta.url), '..', '..')
const [name, ...rest] = process.argv.slice(2)
const input = join(root, 'bench', `${name}.bench.ts`)
if (!name || !existsSync(input)) {
  console.error(`There is no bench/${name ?? 'NAME'}.bench.ts. Name one of the files in bench/, such as 'sequence'.`)
  process.exit(2)
}
/** Binaries, and what finds its own files by where it stands. */
const PACKAGES = ['@photostructure/sqlite', 'node:sqlite', 'pg', 'sharp', 'graphile-worker', 'tinypool', 'highs']
const { build } = await import('rolldown')
const dir = join(root, 'dist', 'bench')
const file = join(dir, `${name}.mjs`)
await build({
  cwd: root,
  input: { [name]: input },
  platform: 'node',
  logLevel: 'warn',
  external: PACKAGES,
  output: { dir, format: 'esm', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
})
process.exit(spawnSync(process.execPath, [file, ...rest], { stdio: 'inherit' }).status ?? 1)
