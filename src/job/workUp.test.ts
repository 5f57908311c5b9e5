import { expect, test } from 'vitest'
import { printProblem } from '../problem/problem.ts'
import { readUnit } from '../unit/file/readUnit.ts'
import { readJob } from './file/readJob.ts'
import { workUp } from './workUp.ts'

const UNIT = `matchmark: unit/1
unit: idler of the incline winch
housing: box
parts: {shaft: {}, cover: {}}`

const workOf = (done: string) => {
  const { unit } = readUnit(UNIT, 'idler.unit.yaml')
  const { job } = readJob(`matchmark: job/1\njob: J7\nunit: idler.unit.yaml\ndone: [${done}]`, 'J7.job.yaml')
  if (!unit || !job) throw new Error('the files of the test are not readable')
  return workUp({ unit, job })
}

test('steps that stand already are left out of the plan', () => {
  const work = workOf('shaft')
  expect(work.faults).toEqual([])
  expect(work.problem.operations.map(({ id }) => id)).toEqual(['cover'])
})

test('a step that stands already and is none is told, with the nearest name', () => {
  const [fault] = workOf('shaff').faults
  expect(fault && printProblem(fault)).toContain("J7.job.yaml:4:8: 'done' names 'shaff'")
  expect(fault && printProblem(fault)).toContain('shaft')
})
