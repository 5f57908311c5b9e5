// Every JSON block of the reference pages is JSON, and what names a schema of ours is what that schema says.
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readPlanningProblem } from '../src/planning/checker/readPlanningProblem.ts'

/** `schema` field → reader that lists what is wrong. */
const READERS: Readonly<Record<string, (json: unknown) => readonly Error[]>> = {
  'matchmark-planning/1': (json) => {
    const read = readPlanningProblem(json)
    return 'problems' in read ? read.problems : []
  },
}

const folder = new URL('reference/', import.meta.url)
const blocks = readdirSync(folder)
  .filter((page) => page.endsWith('.md'))
  .flatMap((page) => {
    const text = readFileSync(new URL(page, folder), 'utf8')
    return [...text.matchAll(/^```json\n([\s\S]*?)^```/gm)].map(({ 1: json, index }) => ({
      at: `docs/reference/${page}:${text.slice(0, index).split('\n').length}`,
      json: json!,
    }))
  })

test.each(blocks)('$at', ({ at, json }) => {
  const value = JSON.parse(json)
  if (typeof value?.schema !== 'string') return
  const reader = READERS[value.schema]
  if (!reader) expect.fail(`${at}: no reader for the schema '${value.schema}'; known are ${Object.keys(READERS)}`)
  expect(reader(value).map(({ message }) => `${at}: ${message}`)).toEqual([])
})
