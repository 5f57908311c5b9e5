// The one check: format and lint, types, purity, imports, dead code, schemas, tests and examples in the docs.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { root } from './setup.mjs'

const bin = (name) => join(root, 'node_modules', '.bin', name)
const CHECKS = [
  ['format and lint', bin('biome'), ['check', '--error-on-warnings', '.']],
  ['types', bin('tsc'), ['-p', 'tsconfig.json']],
  ['purity', bin('tsc'), ['-p', 'tsconfig.pure.json']],
  ['imports', process.execPath, ['scripts/check-imports.mjs']],
  ['dead code', bin('knip'), ['--no-progress']],
  ['tests and examples', bin('vitest'), ['run', ...process.argv.slice(2)]],
]

/** Runs every check, prints what failed last, and returns the number of failures. */
export function check() {
  const failed = []
  for (const [name, command, args] of CHECKS) {
    console.log(`\n== ${name}`)
    const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' })
    if (status !== 0) failed.push(name)
  }
  console.log(`\nchecks: ${CHECKS.length - failed.length} passed, ${failed.length} failed`)
  if (failed.length) console.log(`failed: ${failed.join(', ')}`)
  return failed.length
}

if (process.argv[1]?.endsWith('check.mjs')) process.exit(check() ? 1 : 0)
