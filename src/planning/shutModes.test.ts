import { expect, test } from 'vitest'
import { plan } from './plan.ts'
import { shutModes } from './shutModes.ts'
import { mode, operation, problemOf } from './testing/examples.ts'

test('every way that nobody can take is told with what it lacks, and no schedule takes it', () => {
  const modes = [
    mode({}, { id: 'by three', people: 3 }),
    mode({}, { id: 'by a turner', skills: ['turner'] }),
    mode({}, { id: 'by one who is both', skills: ['fitter', 'rigger'] }),
    mode({}, { id: 'on two presses', machines: { press: 2 } }),
    mode({}, { id: 'by both of them', people: 2, skills: ['fitter', 'rigger'], hazard: 5 }),
  ]
  const problem = problemOf([operation('a', [], { modes })], {
    people: 2,
    crew: [
      { id: 'Ada', skills: ['fitter'] },
      { id: 'Ben', skills: ['rigger'] },
    ],
    machines: { press: 1 },
  })
  expect(shutModes(problem).map(({ says }) => says)).toEqual([
    "“Do a” in the way 'by three' wants 3 people where there are 2.",
    "“Do a” in the way 'by a turner' wants the skill 'turner', which nobody of the crew has.",
    "“Do a” in the way 'by one who is both' wants the skills 'fitter' and 'rigger' among 1 of the crew.",
    "“Do a” in the way 'on two presses' wants 2 of the machine 'press' where there are 1.",
  ])
  expect(plan(problem).steps).toEqual([
    { op: 'a', mode: 'by both of them', start_s: 0, end_s: 10, people: ['Ada', 'Ben'] },
  ])
})
