// Writes schemas/*.schema.json from the zod schemas. `--check` writes nothing and fails where a file would change.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { rolldown } from 'rolldown'
import { root } from './setup.mjs'

/** The table is TypeScript: it is bundled in memory and loaded from there, so that no file is left behind. */
async function loadTable() {
  const bundle = await rolldown({
    cwd: root,
    input: 'scripts/schemaFiles.ts',
    platform: 'node',
    logLevel: 'warn',
    transform: { target: 'node20' },
  })
  const { output } = await bundle.generate({ format: 'esm' })
  await bundle.close()
  const { schemaFiles } = await import(`data:text/javascript;base64,${Buffer.from(output[0].code).toString('base64')}`)
  return schemaFiles
}

const checking = process.argv.includes('--check')
const folder = join(root, 'schemas')
const stale = []
for (const [file, text] of await loadTable()) {
  const path = join(folder, file)
  if (existsSync(path) && readFileSync(path, 'utf8') === text) continue
  stale.push(file)
  if (checking) continue
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
}
for (const file of stale) console.log(`schemas/${file}: ${checking ? 'stale; run npm run schemas' : 'written'}`)
if (stale.length === 0) console.log('schemas: every file is as the code says')
process.exit(checking && stale.length ? 1 : 0)
