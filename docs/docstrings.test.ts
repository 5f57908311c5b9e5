// Runs every `@example call   // result` of the rooms below. A call may use whatever its room exports and the
// constructors of quantities; in the planning room `problem` is the example of the contract's page.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { differs, evaluate, readExamples } from './docstringExamples.ts'

const ROOMS = ['quantity', 'mechanics', 'planning']
const src = fileURLToPath(new URL('../src/', import.meta.url))
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (file) => ROOMS.includes(roomOf(file)) && file.endsWith('.ts') && !file.endsWith('.test.ts'),
)

function roomOf(file: string): string {
  return file.split(/[\\/]/)[0]!
}

/** Everything that an example in this file may name; what the file itself exports goes before its namesakes. */
async function scopeOf(file: string): Promise<Record<string, unknown>> {
  const room = files.filter((other) => roomOf(other) === roomOf(file))
  const modules = ['quantity/constructors.ts', ...room, file].map((path) => import(/* @vite-ignore */ join(src, path)))
  return Object.assign({ problem }, ...(await Promise.all(modules)))
}

const page = readFileSync(fileURLToPath(new URL('reference/contract.md', import.meta.url)), 'utf8')
const problem = JSON.parse(/```json\n([\s\S]*?)```/.exec(page)?.[1] ?? 'null')

const examples = files.flatMap((file) =>
  readExamples(readFileSync(join(src, file), 'utf8')).map((example) => ({
    ...example,
    file,
    at: `src/${file}:${example.line}`,
  })),
)

for (const { at, file, call, printed } of examples) {
  test(`${at} ${call}`, async () => {
    if (printed === undefined) expect.fail(`${at}: the example has no result; write '${call}   // result'`)
    const difference = differs(evaluate(call, await scopeOf(file)), printed)
    if (difference) expect.fail(`${at}: ${call}: ${difference}`)
  })
}
