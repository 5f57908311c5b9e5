import { expect, test } from 'vitest'
import { readJob } from '../job/file/readJob.ts'
import { workUp } from '../job/workUp.ts'
import { printProblem } from '../problem/problem.ts'
import { Writer } from '../stores/testing/writer.ts'
import { entriesOfJob } from './entriesOfJob.ts'
import { fold } from './fold.ts'
import { jobOf } from './jobOf.ts'
import { sample, sampleEntries } from './testing/quarryRailway.ts'
import { writeJobFile } from './writeJobFile.ts'

/** Where a thing stood in its file is not part of what it says. */
const withoutPlaces = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, inner) => {
      if (['at', 'variantAt', 'file'].includes(key)) return undefined
      return inner instanceof Map ? [...inner] : inner instanceof Set ? [...inner] : inner
    }),
  )

test('the sample job, written as entries and folded, is the job of its file', () => {
  const { job } = sample()
  const folded = jobOf(fold('J41', sampleEntries()).state)
  expect(withoutPlaces(folded)).toEqual(withoutPlaces(job))
})

test('and works up to the same: problem, settings, faults and questions', () => {
  const { job, unit } = sample()
  const done = ['cluster', 'spindle'].map((step) => ({ step, at: { line: 1, column: 1 } }))
  const writer = new Writer('office')
  const entries = [...sampleEntries(writer), ...done.map(({ step }) => writer.write('step-signed', { step }))]
  const fromFile = workUp({ unit, job: { ...job, done } })
  const fromEntries = workUp({ unit, job: jobOf(fold('J41', entries).state) })
  expect(withoutPlaces(fromEntries)).toEqual(withoutPlaces(fromFile))
  expect(fromEntries.problem.operations.length).toBeGreaterThan(20)
})

test('written as a job file and read again it is the same job, and what the file has no place for is told', () => {
  const { job } = sample()
  const writer = new Writer('office')
  const sampled = sampleEntries(writer)
  const stage = { connection: 'cap A nuts', stage: 1, says: 'all to 55 N·m', count: 2, of: 2 }
  const counted = writer.write('step-signed', { step: 'cluster', tightened: [stage] })
  const entries = [...sampled, counted, writer.note('howls')]
  const { text, left } = writeJobFile(fold('J41', entries).state)
  const again = readJob(text, 'J41.job.yaml')
  expect(again.faults.map(printProblem)).toEqual([])
  expect(withoutPlaces(again.job)).toEqual(withoutPlaces({ ...job, done: [{ step: 'cluster' }] }))
  expect(left).toEqual(['1 note.', '1 step with its bolts counted.'])
})

test('people by name go into the record and come back, in entries and as a file', () => {
  const people = ['  people:', '    - {name: M. Ashdown, skills: [fitter, press]}', '    - {name: "J: Tarn"}']
  const named = `matchmark: job/1\njob: J41\nunit: x.unit.yaml\nplant:\n${people.join('\n')}\n`
  const { job } = readJob(named, 'J41.job.yaml')
  const writer = new Writer('office')
  const entries = entriesOfJob(job!, '0'.repeat(64)).map(({ kind, body }) => writer.write(kind, body))
  const { state } = fold('J41', entries)
  expect(jobOf(state).plant).toMatchObject({
    people: 2,
    crew: [
      { name: 'M. Ashdown', skills: ['fitter', 'press'] },
      { name: 'J: Tarn', skills: [] },
    ],
  })
  const { text, left } = writeJobFile(state)
  expect(left).toEqual([])
  expect(withoutPlaces(readJob(text, 'J41.job.yaml').job)).toEqual(withoutPlaces(job))
})

test('a job that does not say how many people there are comes back without saying so', () => {
  const { job } = readJob('matchmark: job/1\njob: J41\nunit: x.unit.yaml\n', 'J41.job.yaml')
  const writer = new Writer('office')
  const { state } = fold(
    'J41',
    entriesOfJob(job!, '0'.repeat(64)).map(({ kind, body }) => writer.write(kind, body)),
  )
  expect(jobOf(state).plant).not.toHaveProperty('people')
  expect(withoutPlaces(readJob(writeJobFile(state).text, 'J41.job.yaml').job)).toEqual(withoutPlaces(job))
})

test('awkward sizes come back to the last bit, in millimetres and in inches', () => {
  const values = [1 / 3, 0.1 + 0.2, 1e-7, 0.0000381, 25.4 / 64 / 1000, 12.3456789, -0.000012]
  for (const unit of ['mm', 'in'] as const) {
    const writer = new Writer('office')
    const entries = [
      writer.write('job-opened', { sizes: { in: unit, standing: 'seen' } }),
      writer.write('unit-adopted', { unit: '0'.repeat(64), file: 'x.unit.yaml' }),
      ...values.map((low, index) =>
        writer.write('reading', {
          part: `p: ${index} #`,
          feature: "it's",
          reads: { low, high: index % 2 ? low + 0.001 : low, standing: index % 3 ? 'seen' : 'supposed' },
          by: null,
          date: null,
        }),
      ),
      writer.write('reading', { part: 'yes', feature: '12', reads: null, by: 'null', date: '2026-11-20' }),
    ]
    const { state } = fold('J 7', entries)
    const { text, left } = writeJobFile(state)
    const { job, faults } = readJob(text, 'J7')
    expect(faults.map(printProblem)).toEqual([])
    expect(left).toEqual([])
    expect(withoutPlaces(job)).toEqual(withoutPlaces(jobOf(state)))
  }
})
