import { expect, test } from 'vitest'
import { readUnit } from '../unit/file/readUnit.ts'
import { readJob } from './file/readJob.ts'
import { verdictsOf } from './verdicts.ts'

/** A shaft of 40 with limits for new and worn, read with a micrometer of the given uncertainty. */
function judged(reads: string, { limits = 'new: 40.002..40.018, worn: 39.995..', uncertainty = '0.001 mm' } = {}) {
  const { unit } = readUnit(
    `matchmark: unit/1\nunit: x\nhousing: box\nsizes: {in: mm}\nparts: {box: {}, shaft: {features: {seat: {size: 40.01, ${limits}, source: sheet 1}, track: {size: 38, new: 37.9..38}}}}`,
    'x.unit.yaml',
  )
  const { job } = readJob(
    `matchmark: job/1\njob: J1\nunit: x.unit.yaml\nsizes: {in: mm}\nreadings:\n  - {part: shaft, feature: seat, reads: ${reads}, with: mic}\nplant: {instruments: {mic: {uncertainty: ${uncertainty}}}}`,
    'x.job.yaml',
  )
  if (!unit || !job) throw new Error('files')
  return verdictsOf(unit, job)
}

test.each([
  ['40.010', 'within'],
  ['40.017', 'within'],
  ['39.998', 'worn, usable'],
  ['39.990', 'out'],
  ['40.030', 'out'],
])('%s against 40.002..40.018 new, from 39.995 worn, is %s', (reads, is) => {
  expect(judged(reads).readings[0]?.is).toBe(is)
})

// ISO 14253-1: within the uncertainty of a limit neither conformity nor non-conformity is proven (rule from memory).
test('nearer to the worn limit than the uncertainty proves nothing', () => {
  expect(judged('39.9955').readings[0]).toMatchObject({
    is: 'not known',
    because: 'Nearer to the limit for worn than the uncertainty of the reading.',
  })
  expect(judged('39.9955', { uncertainty: '0.0002 mm' }).readings[0]?.is).toBe('worn, usable')
})

test('nearer to the limit for new than the uncertainty, it is at least usable', () => {
  expect(judged('40.0025').readings[0]).toMatchObject({ is: 'worn, usable' })
})

test('outside new without a worn limit is not known, and says why', () => {
  expect(judged('39.99', { limits: 'new: 40.002..40.018' }).readings[0]).toMatchObject({
    is: 'not known',
    because: 'Outside the limits for new; how far it may wear was not told.',
  })
})

test('a worn limit alone parts good from out', () => {
  expect(judged('39.998', { limits: 'worn: 39.995..' }).readings[0]?.is).toBe('within')
  expect(judged('39.99', { limits: 'worn: 39.995..' }).readings[0]?.is).toBe('out')
})

test('what could not be read is not known, and its feature counts as unmeasured', () => {
  const { readings, unmeasured } = judged("'?'")
  expect(readings[0]).toMatchObject({ is: 'not known', because: 'It was tried and could not be read.' })
  expect(unmeasured.map(({ feature }) => feature)).toEqual(['seat', 'track'])
})

test('the limit keeps its source', () => {
  expect(judged('40.01').readings[0]?.limitWorn?.source).toBe('sheet 1')
})
