import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { printProblem } from '../../problem/problem.ts'
import { bareLag, bareNeed, bareOperation, bareProblem } from './bareProblem.ts'
import { readPlanningProblem } from './readPlanningProblem.ts'

const wholeProblem = () =>
  bareProblem(
    [
      bareOperation('warm', 600, {
        needs: [bareNeed('clean first', [{ done: ['clean'] }])],
        undo: { duration_s: { low: 1, usual: 2, high: 3 }, needs: [], renews: ['ring'], voids: ['clean'] },
        check: { faultChance: 0.1, cost: 1, lateCost: 20 },
        noReturn: 'The ring is spoilt.',
      }),
      bareOperation('clean', 300),
    ],
    { lags: [bareLag('soon', 'clean', 'warm', { max_s: 900 })] },
  )

/** The problem as JSON with one place changed; `undefined` takes the place out. */
function changed(path: readonly (string | number)[], value: unknown): unknown {
  const json = JSON.parse(JSON.stringify(wholeProblem()))
  const owner = path.slice(0, -1).reduce((inner, key) => inner[key], json)
  owner[path.at(-1)!] = value
  return JSON.parse(JSON.stringify(json))
}

const sentences = (json: unknown): readonly string[] => {
  const read = readPlanningProblem(json)
  return 'problems' in read ? read.problems.map(({ message }) => message) : []
}

test('what has every field is read as it is', () => {
  expect(readPlanningProblem(JSON.parse(JSON.stringify(wholeProblem())))).toEqual({ problem: wholeProblem() })
})

const HAS = 'The planning problem has'
test.each([
  [['people'], '2', `${HAS} "2" at people; expected was a number.`],
  [['people'], 0, `${HAS} 0 at people; expected was 1 or more.`],
  [['people'], 1.5, `${HAS} 1.5 at people; expected was a whole number.`],
  [['operations'], undefined, `${HAS} nothing at operations; expected was a list.`],
  [['operations', 0, 'modes'], [], `${HAS} [] at operations[0].modes; expected was something in it.`],
  [['operations', 1, 'id'], '', `${HAS} "" at operations[1].id; expected was something in it.`],
  [
    ['operations', 0, 'duration_s', 'low'],
    700,
    `${HAS} {"low":700,"usual":600,"high":600} at operations[0].duration_s; expected was low ≤ usual ≤ high.`,
  ],
  [
    ['operations', 0, 'check', 'faultChance'],
    1.1,
    `${HAS} 1.1 at operations[0].check.faultChance; expected was 1 or less.`,
  ],
  [
    ['operations', 0, 'needs', 0, 'giveUp'],
    'sometimes',
    `${HAS} "sometimes" at operations[0].needs[0].giveUp; expected was a number or 'never'.`,
  ],
  [
    ['operations', 0, 'modes', 0, 'setup', 'tools'],
    ['bar', 7],
    `${HAS} 7 at operations[0].modes[0].setup.tools[1]; expected was a text.`,
  ],
  [
    ['lags', 0, 'reason', 'standing'],
    'sure',
    `${HAS} "sure" at lags[0].reason.standing; expected was 'seen' or 'told' or 'usual' or 'supposed'.`,
  ],
  [['lags', 0, 'max'], 30, `${HAS} 30 at lags[0].max; expected was no such field.`],
  [
    ['start', 'station'],
    'any',
    `${HAS} "any" at start.station; expected was a name, or nothing where it is not known.`,
  ],
  [['schema'], 'matchmark-planning/9', `${HAS} "matchmark-planning/9" at schema; expected was 'matchmark-planning/1'.`],
  [
    ['operations', 0, 'needs', 0, 'anyOf', 0, 'done', 0],
    'cleen',
    "The need 'clean first' of 'warm' names the operation 'cleen', which is not in the problem.",
  ],
  [
    ['operations', 0, 'undo', 'voids', 0],
    'cleen',
    "The undoing of 'warm' names the operation 'cleen', which is not in the problem.",
  ],
  [['lags', 0, 'to', 'op'], 'worm', "The lag 'soon' names the operation 'worm', which is not in the problem."],
  [['lags', 1], bareLag('soon', 'warm', 'clean', {}), "lags[1] has the id 'soon', which another one has already."],
  [['operations', 2], bareOperation('clean', 1), "operations[2] has the id 'clean', which another one has already."],
  [
    ['operations', 1, 'needs', 0],
    bareNeed('clean first', []),
    "A need of 'clean' has the id 'clean first', which another one has already.",
  ],
  [
    ['operations', 1, 'modes', 1],
    bareOperation('x', 1).modes[0],
    "A mode of 'clean' has the id 'plain', which another one has already.",
  ],
])('at %j the value %j is refused', (path, value, sentence) => {
  expect(sentences(changed(path, value))).toEqual([sentence])
})

test('everything that is wrong is listed, each with what to do', () => {
  const json = { ...wholeProblem(), people: 'two', lags: 'none', hands: 2, notes: 'x' }
  const read = readPlanningProblem(json)
  expect('problems' in read && read.problems.map(printProblem)).toEqual([
    `${HAS} "none" at lags; expected was a list. Mend it there; docs/reference/contract.md says what each place means.`,
    `${HAS} "two" at people; expected was a number. Mend it there; docs/reference/contract.md says what each place means.`,
    `${HAS} 2 at hands; expected was no such field. Mend it there; docs/reference/contract.md says what each place means.`,
    `${HAS} "x" at notes; expected was no such field. Mend it there; docs/reference/contract.md says what each place means.`,
  ])
  expect(sentences(null)).toEqual([`${HAS} null at its top; expected was an object.`])
})

test('the JSON Schema that is handed out takes the same and refuses what has another shape', () => {
  const file = new URL('../../../schemas/planning-problem.schema.json', import.meta.url)
  const schema = z.fromJSONSchema(JSON.parse(readFileSync(file, 'utf8')))
  expect(schema.safeParse(JSON.parse(JSON.stringify(wholeProblem()))).success).toBe(true)
  expect(schema.safeParse(changed(['lags', 0, 'max'], 30)).success).toBe(false)
  expect(schema.safeParse(changed(['people'], 1.5)).success).toBe(false)
  expect(schema.safeParse(changed(['operations', 0, 'does'], undefined)).success).toBe(false)
})
