// Writes into README.md and docs/guide what the commands shown there print now. Read the difference before it is committed.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { root } from './setup.mjs'

const { status } = spawnSync(join(root, 'node_modules', '.bin', 'vitest'), ['run', 'docs/shownCommands.test.ts'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, MATCHMARK_PAGES: 'write' },
})
process.exit(status ?? 1)
