import { expect, test } from 'vitest'
import { sampleEntries } from '../../record/testing/quarryRailway.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { isLook, jobOnSheet, looksIn, markOf, stagesOf, stepInHand, timesOf } from './jobOnSheet.ts'

const office = new Writer('office')
const sample = sampleEntries(office)
const bench = new Writer('bench', 'J41', 'M. Ashdown')
bench.now_ms = office.now_ms
const other = new Writer('tablet', 'J41', 'J. Tarn')
other.now_ms = office.now_ms + 500
const adopted = bench.write('sequence-adopted', { steps: [{ step: 'cone A' }, { step: 'cup A' }, { step: 'cup B' }] })
const begun = bench.write('step-started', { step: 'cone A', sequence: adopted.id })
const signed = bench.write('step-signed', { step: 'cone A', sequence: adopted.id })

test('the step in hand is the first that is not signed', () => {
  expect(stepInHand(jobOnSheet('J41', sample))).toBeUndefined()
  expect(stepInHand(jobOnSheet('J41', [...sample, adopted]))).toBe('cone A')
  expect(stepInHand(jobOnSheet('J41', [...sample, adopted, signed]))).toBe('cup A')
})

test('a step is to do, in hand, done; and to be looked at when two people signed it', () => {
  const marks = (...entries: (typeof sample)[number][]) =>
    markOf(jobOnSheet('J41', [...sample, adopted, ...entries]), 'cone A')
  expect([marks(), marks(begun), marks(begun, signed)]).toEqual(['to do', 'in hand', 'done'])
  const both = [begun, signed, other.write('step-signed', { step: 'cone A', sequence: adopted.id })]
  expect(marks(...both)).toBe('look')
  expect(looksIn(jobOnSheet('J41', [...sample, adopted, ...both]))).toBe(1)
})

test('a step that was signed on a bad check is looked at until a good one stands', () => {
  const bad = bench.write('check-result', { check: 'cup A', result: 'bad' })
  const sign = bench.write('step-signed', { step: 'cup A' })
  const good = bench.write('check-result', { check: 'cup A', result: 'good' })
  expect(isLook(jobOnSheet('J41', [...sample, bad, sign]).state, 'cup A')).toBe(true)
  expect(isLook(jobOnSheet('J41', [...sample, bad, sign, good]).state, 'cup A')).toBe(false)
})

test('what was taken back is out of force and stays to be seen', () => {
  const slip = bench.write('withdrawn', { of: signed.id })
  const job = jobOnSheet('J41', [...sample, adopted, begun, signed, slip])
  expect(markOf(job, 'cone A')).toBe('in hand')
  expect(job.slips.get('cone A')).toEqual([
    { entry: signed.id, what: 'step-signed', by: 'M. Ashdown', at_ms: slip.at.ms },
  ])
  expect(timesOf(job, 'cone A')).toEqual({ started_ms: begun.at.ms })
})

test('the key of a job changes with what it is worked out from, not with a signature', () => {
  const key = (...entries: (typeof sample)[number][]) => jobOnSheet('J41', [...sample, ...entries]).key
  expect(key(adopted)).not.toBe(key())
  expect(key(adopted, begun, signed)).toBe(key(adopted))
  const reading = bench.write('reading', {
    part: 'cone A',
    feature: 'bore',
    reads: { low: 0.04, high: 0.04, standing: 'seen' },
  })
  expect(key(adopted, reading)).not.toBe(key(adopted))
})

test('stages have come as far as the journal has them', () => {
  expect(stagesOf(jobOnSheet('J41', sample))).toMatchObject({
    'book in': 'done',
    strip: 'in hand',
    sequence: 'to come',
    build: 'to come',
  })
  expect(stagesOf(jobOnSheet('J41', [...sample, adopted, signed]))).toMatchObject({
    sequence: 'done',
    build: 'in hand',
  })
})
