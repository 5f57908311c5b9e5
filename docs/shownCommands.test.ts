// Every command that the guide and the README show prints what stands there. `npm run pages` writes what they print now.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { firstDifference, runShown, shownCommands, shownFiles, withOutputs } from './shownCommands.ts'

const guide = readdirSync(new URL('guide/', import.meta.url)).map((name) => `docs/guide/${name}`)
for (const page of ['README.md', 'docs/reference/figures.md', ...guide]) {
  const path = new URL(`../${page}`, import.meta.url)
  const text = readFileSync(path, 'utf8')
  if (process.env.MATCHMARK_PAGES === 'write') {
    test(`${page} is written`, async () => writeFileSync(path, await withOutputs(text)))
    continue
  }
  const files = shownFiles(text)
  test.each(shownCommands(text))(`${page}:$line $typed`, async ({ typed, printed }) => {
    expect(firstDifference(printed, await runShown(typed, files))).toBeUndefined()
  })
}

test('a difference is found where it stands', () => {
  const said = ['a', 'b', 'c', 'd']
  expect(firstDifference(['a', 'b', '…'], said)).toBeUndefined()
  expect(firstDifference(['…', 'c', 'd'], said)).toBeUndefined()
  expect(firstDifference(['a', '…', 'd'], said)).toBeUndefined()
  expect(firstDifference(['a', 'b'], said)).toBe("more comes: 'c'; close with a line '…'")
  expect(firstDifference(['a', 'x', '…'], said)).toBe("'x' does not come here; it says 'b'")
  expect(firstDifference(['a', '…', 'x'], said)).toBe("'x' does not come")
  expect(firstDifference(['d', '…'], said)).toContain("'d' does not come")
})

test('a page is read with its commands, their lines and its files', () => {
  const page = [
    '# T',
    '```yaml a.yaml',
    'x: 1',
    '```',
    '```console',
    '$ ./matchmark check a.yaml',
    'one',
    '',
    '$ ./matchmark kit a',
    '```',
    '',
  ].join('\n')
  expect(shownCommands(page)).toEqual([
    { line: 6, typed: './matchmark check a.yaml', printed: ['one'] },
    { line: 9, typed: './matchmark kit a', printed: [] },
  ])
  expect([...shownFiles(page)]).toEqual([['a.yaml', 'x: 1\n']])
})

test('a page keeps its cuts when its output is written anew', async () => {
  const page = (output: string) => `\`\`\`console\n$ ./matchmark --version\n${output}\`\`\`\nafter\n`
  expect(await withOutputs(page('0.0.0\n'))).toBe(page('0.1.0\n'))
  expect(await withOutputs(page('0.0.0\n…\n'))).toBe(page('0.1.0\n…\n'))
})
