import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { booksIn } from './booksIn.ts'
import { indexSheet } from './indexSheet.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-books-'))
afterAll(() => rmSync(home, { recursive: true }))

test('a page from elsewhere that lies among the books puts nothing of its own into their list', async () => {
  const description = '<form action=https://evil.example><input name=pin></form>'
  writeFileSync(join(home, 'gift.html'), `<title>A "gift"</title><meta name="description" content="${description}">`)
  const sheet = indexSheet(await booksIn(home))
  expect(sheet).toContain('A "gift"')
  expect(sheet).not.toMatch(/<form|<input|evil/)
})
