// Writes what the commands shown in README.md, docs/guide and docs/reference/figures.md print now, and what figures say of
// themselves from the docstrings. Read the difference before it is committed.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { root } from './setup.mjs'

const { status } = spawnSync(
  join(root, 'node_modules', '.bin', 'vitest'),
  ['run', 'docs/calculationNotes.test.ts', 'docs/shownCommands.test.ts'],
  {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, MATCHMARK_PAGES: 'write' },
  },
)
process.exit(status ?? 1)
