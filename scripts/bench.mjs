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
const { build } = await import('rolldown')
const file = join(root, 'dist', 'bench', `${name}.mjs`)
await build({ cwd: root, input, platform: 'node', logLevel: 'warn', output: { file, format: 'esm' } })
process.exit(spawnSync(process.execPath, [file, ...rest], { stdio: 'inherit' }).status ?? 1)
