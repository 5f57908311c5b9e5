// The door of this room: what comes from outside is a planning problem, or it is said what is wrong with it and where.
import type { z } from 'zod'
import { Problem } from '../../problem/problem.ts'
import type { PlanningProblem } from '../model/problem.ts'
import { planningProblemSchema } from '../model/schema.ts'
import { strayNames } from './strayNames.ts'

/** Either the problem or everything that is wrong with it. */
export type ReadProblem = { readonly problem: PlanningProblem } | { readonly problems: readonly Problem[] }

/** Reads a planning problem from parsed JSON. Nothing is thrown: all that is wrong is listed. */
export function readPlanningProblem(json: unknown): ReadProblem {
  const read = planningProblemSchema.safeParse(json)
  if (!read.success) return { problems: read.error.issues.flatMap(oneEach).map((issue) => shapeProblem(issue, json)) }
  const problems = strayNames(read.data)
  return problems.length ? { problems } : { problem: read.data }
}

type Issue = z.core.$ZodIssue

/** Every key that does not belong is a fault of its own. */
function oneEach(issue: Issue): readonly Issue[] {
  return issue.code === 'unrecognized_keys' ? issue.keys.map((key) => ({ ...issue, keys: [key] })) : [issue]
}

function shapeProblem(issue: Issue, json: unknown): Problem {
  const { path, expected } = deepest(issue)
  return new Problem('PLANNING_SHAPE', { where: printPath(path), found: printFound(at(json, path)), expected })
}

interface Expectation {
  readonly path: readonly PropertyKey[]
  readonly expected: string
}

/** Of the kinds allowed at one place: the one that fits until somewhere further in, or else all of them. */
function deepest(issue: Issue): Expectation {
  if (issue.code === 'unrecognized_keys') return { path: [...issue.path, ...issue.keys], expected: 'no such field' }
  if (issue.code !== 'invalid_union') return { path: issue.path, expected: expectedBy(issue) }
  const options = issue.errors.flatMap((issues) => issues.slice(0, 1)).map(deepest)
  const inside = options.find(({ path }) => path.length > 0)
  if (inside) return { path: [...issue.path, ...inside.path], expected: inside.expected }
  return { path: issue.path, expected: options.map(({ expected }) => expected).join(' or ') }
}

const KINDS: Readonly<Record<string, string>> = {
  object: 'an object',
  record: 'an object',
  array: 'a list',
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

function expectedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return KINDS[issue.expected] ?? issue.expected
    case 'invalid_value':
      return issue.values.map((value) => `'${String(value)}'`).join(' or ')
    case 'too_small':
      return issue.origin === 'string' || issue.origin === 'array' ? 'something in it' : `${issue.minimum} or more`
    case 'too_big':
      return `${issue.maximum} or less`
    default:
      return issue.message
  }
}

function at(json: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((inner, key) => (inner as Record<PropertyKey, unknown> | undefined)?.[key], json)
}

function printFound(found: unknown): string {
  if (found === undefined) return 'nothing'
  const text = JSON.stringify(found)
  return text.length <= 60 ? text : `${text.slice(0, 57)}...`
}

/** `operations[0].modes[1].people`, as one would write it in code. */
function printPath(path: readonly PropertyKey[]): string {
  const text = path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`)).join('')
  return text.replace(/^\./, '') || 'its top'
}
