import { expect, test } from 'vitest'
import { checkSequence } from '../planning/checker/checkSequence.ts'
import { printProblem } from '../problem/problem.ts'
import { readUnit } from '../unit/file/readUnit.ts'
import { readJob } from './file/readJob.ts'
import { sequenceOf, workUp } from './workUp.ts'

const work = ({ hands, plant }: { hands: string; plant: string }) => {
  const { unit, faults } = readUnit(
    `matchmark: unit/1\nunit: idler of the incline winch\nhousing: box\nparts: {shaft: {}, cover: {}}\nhands: ${hands}`,
    'idler.unit.yaml',
  )
  const { job } = readJob(`matchmark: job/1\njob: J7\nunit: idler.unit.yaml\nplant: ${plant}`, 'J7.job.yaml')
  if (!unit || !job) throw new Error(faults.map(printProblem).join('\n'))
  const worked = workUp({ unit, job })
  const result = sequenceOf(worked)
  const { steps, value } = result
  if (value) expect(checkSequence(worked.problem, { steps, value })).toMatchObject({ right: true })
  return { worked, result, who: Object.fromEntries(steps.map(({ op, people }) => [op, people])) }
}

const modesOf = (worked: ReturnType<typeof workUp>, step: string) =>
  worked.problem.operations.find(({ id }) => id === step)!.modes.map(({ people, skills }) => ({ people, skills }))

test('where nobody says how many there are, as many as the steps want are taken to be there', () => {
  const { worked, result } = work({ hands: '{cover: 3}', plant: '{}' })
  expect(worked.problem.people).toBe(3)
  expect(modesOf(worked, 'cover')).toEqual([{ people: 3, skills: undefined }])
  expect(modesOf(worked, 'shaft')).toEqual([{ people: 1, skills: undefined }])
  expect(result).toMatchObject({ proven: true })
})

test('too few people is a conflict that says so', () => {
  const { result } = work({ hands: '{cover: 2}', plant: '{people: 1}' })
  expect(result.steps).toEqual([])
  expect(JSON.stringify(result.conflict)).toContain('2 people where there are 1')
})

test('of people by name, those with the skill are among them', () => {
  const plant = '{people: [{name: Ada}, {name: Ben, skills: [press]}]}'
  const { who } = work({ hands: '{cover: {hands: 2}, shaft: {skills: [press]}}', plant })
  expect(who.shaft).toEqual(['Ben'])
  expect(who.cover?.toSorted()).toEqual(['Ada', 'Ben'])
})

test('one person by name is asked for the skill', () => {
  const hands = '{shaft: {skills: press}}'
  expect(work({ hands, plant: '{people: [{name: Ben, skills: [press]}]}' }).result).toMatchObject({ proven: true })
  const { result } = work({ hands, plant: '{people: [{name: Ada}]}' })
  expect(JSON.stringify(result.conflict)).toContain("the skill 'press', which nobody of the crew has")
})

test('hands for a step that is not there are told at their place, with the nearest name', () => {
  const [fault] = work({ hands: '{lower the cover: 2}', plant: '{}' }).worked.faults
  expect(fault && printProblem(fault)).toContain(
    "idler.unit.yaml:5:9: 'hands' names 'lower the cover', which is no step",
  )
})
