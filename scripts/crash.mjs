// `npm run crash`: all rounds of the crash tests (300 kills on SQLite, 100 on PostgreSQL) and 2,000 merges on every store. `npm test` runs a part of them.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { root, setUp } from './setup.mjs'

await setUp()
const vitest = join(root, 'node_modules', '.bin', 'vitest')
const env = { ...process.env, MATCHMARK_CRASH: 'all' }
process.exit(spawnSync(vitest, ['run', 'crash', 'Journal.test'], { cwd: root, stdio: 'inherit', env }).status ?? 1)
