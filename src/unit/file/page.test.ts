import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readTree } from './tree.ts'

const page = readFileSync(new URL('../../../docs/reference/unit-file.md', import.meta.url), 'utf8')
const examples = [...page.matchAll(/```yaml\n(.*?)```/gs)].map(([, yaml = '']) => yaml)

test('every example of the reference page is readable', () => {
  expect(examples.length).toBeGreaterThan(5)
  // The ways stand one under the other on the page; in a file each has its part.
  const oneEach = examples.flatMap((yaml) => (yaml.startsWith('way:') ? yaml.split('\n') : [yaml])).filter(Boolean)
  expect(oneEach.flatMap((yaml) => readTree(yaml, 'unit-file.md').faults.map(printProblem))).toEqual([])
})
