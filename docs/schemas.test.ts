import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

test('the committed JSON Schemas are what the code says (otherwise: npm run schemas)', () => {
  const script = fileURLToPath(new URL('../scripts/schemas.mjs', import.meta.url))
  const { stdout, stderr, status } = spawnSync(process.execPath, [script, '--check'], { encoding: 'utf8' })
  expect(stdout + stderr).toBe('schemas: every file is as the code says\n')
  expect(status).toBe(0)
})
