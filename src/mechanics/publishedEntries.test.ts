// Every entry of the collection of printed values for fits, threads and shafts is held by a check table or a test, or its reason stands there.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const HERE = join(process.cwd(), 'src', 'mechanics')
const HELD = readdirSync(HERE, { recursive: true })
  .map(String)
  .filter((file) => /\.check\.csv$|\.test\.ts$/.test(file) && !file.includes('publishedEntries'))
  .map((file) => readFileSync(join(HERE, file), 'utf8'))
  .join('\n')

/** Numbers of the entries: `2-4` is 2, 3 and 4. */
const ENTRIES = {
  fit: '2-3 5-8 10 12 15-16 18-21 24 26-35 37-43 45-49 52-54 56 58-61 63-74 78-80',
  press: '1-2 4-6 8 10-12 14-15 17-20 22-24 26-28',
  thread: '1-4 6-7 11 13-14 16-25 28 30-32 34 36-45 47-52 55 57-59 61 63-66 68-72',
  skr: '1-2 4 8-17 19-21 24-27 29 31-39 41',
}

test.each(Object.entries(ENTRIES))('every entry of %s is held or has its reason', (name, numbers) => {
  const ids = numbers.split(' ').flatMap((run) => {
    const [from = 0, to = from] = run.split('-').map(Number)
    return Array.from({ length: to - from + 1 }, (_, at) => `${name}-${String(from + at).padStart(3, '0')}`)
  })
  expect(ids.filter((id) => !new RegExp(`${id}(?!\\d)`).test(HELD))).toEqual([])
})
