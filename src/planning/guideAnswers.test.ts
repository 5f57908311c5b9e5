import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { PlanningProblem } from './model/problem.ts'
import { plan } from './plan.ts'

test('the example of the page of answers takes what the page says', () => {
  const page = readFileSync(new URL('../../docs/reference/guide-answers.md', import.meta.url), 'utf8')
  const problem: PlanningProblem = JSON.parse(/```json\n([\s\S]*?)```/.exec(page)![1]!)
  const { value, tries } = plan(problem)
  const words = (seconds: number) => seconds.toLocaleString('en')
  expect(page).toContain(`Done once this takes ${words(value![1])} s.`)
  expect(page).toContain(`reads again (300 s): ${words(tries!.loops[0]!.try_s)} s.`)
  expect(page).toContain(
    `With the usual three tries it takes ${words(tries!.usual[1])} s, at worst ${words(tries!.high[1])} s.`,
  )
})
