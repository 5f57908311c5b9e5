import { expect, test } from 'vitest'
import { workUp } from '../job/workUp.ts'
import { Writer } from '../stores/testing/writer.ts'
import { fold } from './fold.ts'
import { jobOf } from './jobOf.ts'
import { sample, sampleEntries } from './testing/quarryRailway.ts'

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
