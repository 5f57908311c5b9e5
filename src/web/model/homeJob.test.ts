import { expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import { sampleEntries } from '../../record/testing/quarryRailway.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { goOnWith, homeJob } from './homeJob.ts'
import { jobOnSheet } from './jobOnSheet.ts'

const home = (...more: readonly Entry[]) => homeJob(jobOnSheet('J41', [...sampleEntries(), ...more]))
const hand = (device: string, person: string) => new Writer(device, 'J41', person)

test('without a sequence nothing is next, and what the job waits for is said all the same', () => {
  const job = home()
  expect(job).toMatchObject({ unit: 'Reversing gearcase', stage: 'sequence', of: 0, isInvented: true })
  expect(job.next).toBeUndefined()
  expect(job.about).toEqual(['1187', 'Hollinscar Quarry Railway'])
  expect(job.toGet).toContain('cluster washer B')
  expect(job.lost).toEqual(['tensioner spring'])
})

test('what has come in is no longer to get', () => {
  expect(home(hand('a', 'M. Ashdown').write('part-in', { part: 'cluster washer B' })).toGet).not.toContain(
    'cluster washer B',
  )
})

test('the step in hand is the first that is not signed; who has begun one is told', () => {
  const one = hand('a', 'M. Ashdown')
  const job = home(
    one.write('sequence-adopted', { steps: [{ step: 'x' }, { step: 'y' }, { step: 'z' }] }),
    one.write('step-signed', { step: 'x', as: 'done' }),
    one.write('step-started', { step: 'z' }),
  )
  expect(job).toMatchObject({ signed: 1, of: 3, next: { step: 'y', number: 2 } })
  expect(job.begun).toEqual([{ step: 'z', person: 'M. Ashdown' }])
})

test('what somebody should look at is named once, with its people and its step', () => {
  const one = hand('a', 'M. Ashdown')
  const job = home(
    one.write('sequence-adopted', { steps: [{ step: 'x' }, { step: 'y' }] }),
    one.write('step-signed', { step: 'x', as: 'done' }),
    hand('b', 'J. Tarn').write('step-signed', { step: 'x', as: 'done' }),
    one.write('check-result', { check: 'y', result: 'bad' }),
    one.write('step-signed', { step: 'y', as: 'done' }),
  )
  expect(job.looks).toMatchObject([
    { what: 'signed twice', about: 'x', step: 'x' },
    { what: 'signed on a bad check', about: 'y', step: 'y', people: ['M. Ashdown'] },
  ])
})

test('a clock that runs says with which step to go on: the begun one, else the one it runs towards, else the step in hand', () => {
  const one = hand('a', 'M. Ashdown')
  const adopted = one.write('sequence-adopted', { steps: [{ step: 'x' }, { step: 'y' }, { step: 'z' }] })
  const begun = one.write('step-started', { step: 'y' })
  const clock = { from: { op: 'y', edge: 'start' }, to: { op: 'z', edge: 'end' } } as const
  expect(goOnWith(home(adopted, begun), clock)).toEqual({ step: 'y', hasClock: true })
  const signed = one.write('step-signed', { step: 'y', as: 'done' })
  expect(goOnWith(home(adopted, begun, signed), clock)).toEqual({ step: 'z', hasClock: true })
  expect(goOnWith(home(adopted, begun), undefined)).toEqual({ step: 'x', number: 1, hasClock: false })
})
