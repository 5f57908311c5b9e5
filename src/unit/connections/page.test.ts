import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { printProblem } from '../../problem/problem.ts'
import { connectionsOf } from './connectionsOf.ts'
import { KINDS } from './kinds.ts'
import { SHORTHAND } from './shorthand.ts'
import { winchUnit } from './winchBox.example.ts'

const page = readFileSync('docs/reference/connections.md', 'utf8')
const sections = new Map(page.split('\n## ').map((section) => [section.split('\n')[0], section]))
const sizes = { lengthUnit: 'mm', sizesStanding: 'seen' } as const
const examples = [...page.matchAll(/```yaml\nconnections:\n([\s\S]*?)```/g)].map(([, body]) => body ?? '')

test.each([...KINDS])('the page tells what a %s is, and every key of it', (name, kind) => {
  const section = sections.get(name) ?? ''
  expect(section).toContain(kind.about)
  const { properties } = z.toJSONSchema(kind.given(sizes), { io: 'input' })
  for (const key of Object.keys(properties ?? {})) {
    if (key !== 'source') expect(section).toContain(`\`${key}\``)
  }
  const rows = [...section.matchAll(/^\| (`.*?) \|/gm)].flatMap(([, keys]) => keys?.match(/(?<=`)[a-z ]+(?=`)/g) ?? [])
  expect(rows.filter((key) => key.trim() && !Object.hasOwn(properties ?? {}, key.trim()))).toEqual([])
})

test('the page names every word of a part', () => {
  const section = sections.get('In one word') ?? ''
  expect([...SHORTHAND.keys()].filter((word) => !section.includes(`\`${word}\``))).toEqual([])
})

test('every example of the page is read by its kind, and all together stand in one unit without a fault', () => {
  expect(examples).toHaveLength(KINDS.size)
  for (const body of examples) {
    for (const { kind: name, ...given } of Object.values(parse(body) as Record<string, Record<string, unknown>>)) {
      expect(KINDS.get(String(name))?.given(sizes).safeParse(given).error?.issues).toBeUndefined()
    }
  }
  const { connections, faults } = connectionsOf(winchUnit(examples.join('')))
  expect(faults.map(printProblem)).toEqual([])
  expect(new Set(connections.map(({ kind }) => kind.name))).toEqual(new Set(KINDS.keys()))
})

test('every kind of the examples gives its words, marks and settings without a NaN', () => {
  const unit = winchUnit(examples.join(''))
  const shop = { shims: [], roomTemperature_K: 293.15, measured: new Set<string>() }
  for (const { connection, kind, given } of connectionsOf(unit).connections) {
    const texts = [
      ...kind.checks(connection, given),
      ...kind.cautions(connection, given),
      ...kind.warnings(connection, given, unit),
      ...kind.renewals(connection, given, unit).map(({ why }) => why),
      ...kind.asks(connection, given, unit).map(({ asks }) => asks),
      ...kind.drawing(connection, given, unit).marks.map(({ text }) => text),
      ...kind
        .settings(connection, given, unit, shop)
        .flatMap(({ says, missing, title }) => [...says, ...missing, title]),
      ...kind.steps(connection, given, unit).within.map(({ does }) => does),
    ]
    for (const text of texts) expect(text).not.toMatch(/undefined|NaN|\[object/)
    for (const { figures } of kind.settings(connection, given, unit, shop)) {
      for (const { low, high, label } of figures) expect(Number.isFinite(low + high), label).toBe(true)
    }
  }
})
