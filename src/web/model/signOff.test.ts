import { expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { jobOnSheet } from './jobOnSheet.ts'
import {
  badBefore,
  markOfStep,
  photoOfRecheck,
  photosOf,
  photoWanted,
  recheckSaying,
  secondOf,
  secondSaying,
  unseenBefore,
  waitsFor,
  whyNotSecond,
} from './signOff.ts'
import type { StepSheetData } from './workedJob.ts'

const FILE = 'a'.repeat(64)
const lock = {
  step: 'lock',
  wants: { secondPerson: true, standing: 'told', shuts: [] },
} as const
const lid = {
  step: 'lid',
  wants: { secondPerson: false, photo: 'the inside', standing: 'usual', shuts: ['top'] },
} as const

const two = () => {
  const [ashdown, tarn] = [new Writer('tablet', 'J41', 'M. Ashdown'), new Writer('laptop', 'J41', 'J. Tarn')]
  tarn.now_ms += 500
  const photo = (step: string, by = ashdown) =>
    by.write('photo', { file: FILE, type: 'image/jpeg', size: 9, about: { step } })
  return { ashdown, tarn, photo }
}
const job = (...entries: readonly Entry[]) => jobOnSheet('J41', entries)
const second = (...entries: readonly Entry[]) => secondOf(lock, job(...entries).state.steps.get('lock'))

test('a second person is wanted once a step is signed, and not where one name is enough', () => {
  const { ashdown, tarn } = two()
  const done = ashdown.write('step-signed', { step: 'lock' })
  expect(second()).toEqual({ is: 'not yet' })
  expect(second(ashdown.write('step-started', { step: 'lock' }))).toEqual({ is: 'not yet' })
  expect(second(done)).toEqual({ is: 'wanted', did: ['M. Ashdown'] })
  expect(secondOf({ step: 'lock' }, job(done).state.steps.get('lock'))).toEqual({ is: 'not yet' })
  const saying = secondSaying(lock, undefined)
  const other = tarn.write('step-signed', saying.body as never)
  expect(second(done, other)).toMatchObject({ is: 'given', how: 'second person', by: { person: 'J. Tarn' } })
  expect(second(done, other, tarn.write('withdrawn', { of: other.id }))).toMatchObject({ is: 'wanted' })
})

test('who did it is told in the words of the catalogue that he cannot be the second one', () => {
  const { ashdown } = two()
  const record = job(ashdown.write('step-signed', { step: 'lock' })).state.steps.get('lock')!
  expect(whyNotSecond(record, 'J. Tarn')).toBeUndefined()
  expect(whyNotSecond(record, 'M. Ashdown')).toMatchObject({
    code: 'SECOND_IS_FIRST',
    message: "M. Ashdown signed 'lock' and cannot be the second person too.",
  })
})

test('alone it is checked again by another method, with a photo that was taken after the signature', () => {
  const { ashdown, tarn, photo } = two()
  const before = photo('lock')
  const done = ashdown.write('step-signed', { step: 'lock' })
  const state = (...entries: readonly Entry[]) => job(before, done, ...entries).state
  expect(photoOfRecheck(state(), 'lock', 'M. Ashdown')).toBeUndefined()
  tarn.see(done)
  expect(photoOfRecheck(state(photo('lock', tarn)), 'lock', 'M. Ashdown')).toBeUndefined()
  const [after, elsewhere] = [photo('lock'), photo('lid')]
  expect(photoOfRecheck(state(after, elsewhere), 'lock', 'M. Ashdown')?.entry).toBe(after.id)
  const slip = ashdown.write('withdrawn', { of: after.id })
  expect(photoOfRecheck(state(after, slip), 'lock', 'M. Ashdown')).toBeUndefined()
  const saying = recheckSaying('lock', { method: 'feeler', found: '', photo: FILE })
  expect(saying.body).toEqual({ step: 'lock', as: 'recheck', method: 'feeler', photo: FILE })
  const again = ashdown.write('step-signed', saying.body as never)
  expect(second(done, after, again)).toMatchObject({ is: 'given', how: 'one person, checked again' })
  expect(recheckSaying('lock', { method: 'feeler', found: 'none enters', photo: FILE }).body).toMatchObject({
    says: 'none enters',
  })
})

test('a photo is wanted until there is one in force', () => {
  const { ashdown, photo } = two()
  const taken = photo('lid')
  expect(photoWanted(job().state, lid)).toBe('the inside')
  expect(photoWanted(job(taken).state, lid)).toBeUndefined()
  expect(photoWanted(job(taken, ashdown.write('withdrawn', { of: taken.id })).state, lid)).toBe('the inside')
  expect(photoWanted(job(photo('lock')).state, lid)).toBe('the inside')
  expect(photoWanted(job().state, lock)).toBeUndefined()
  const undone = [
    ashdown.write('step-signed', { step: 'lid' }),
    ashdown.write('step-signed', { step: 'lid', as: 'undone' }),
  ]
  expect(photoWanted(job(taken, ...undone).state, lid), 'the case was opened again').toBe('the inside')
  expect(photoWanted(job(taken, ...undone, photo('lid')).state, lid)).toBeUndefined()
  expect(photosOf(job(taken, photo('lock')).state, 'lid')).toHaveLength(1)
})

test('what is signed and still waits is to be looked at', () => {
  const { ashdown, tarn, photo } = two()
  const signed = (step: string) => ashdown.write('step-signed', { step })
  const [one, two_] = [signed('lock'), signed('lid')]
  expect(markOfStep(job(), lock)).toBe('to do')
  expect(waitsFor(job(), lid)).toEqual([])
  expect(markOfStep(job(one, two_), lock)).toBe('look')
  expect(waitsFor(job(one, two_), lid)).toEqual(['photo'])
  tarn.see(two_)
  const other = tarn.write('step-signed', { step: 'lock', as: 'second' })
  expect(markOfStep(job(one, two_, other, photo('lid')), lock)).toBe('done')
  expect(markOfStep(job(one, two_, other, photo('lid')), lid)).toBe('done')
})

test('what shuts the case tells which steps nobody else has looked at yet', () => {
  const { ashdown } = two()
  const steps = [
    { ...lock, number: 1 },
    { ...lid, number: 2 },
  ] as unknown as readonly StepSheetData[]
  const [first, last] = steps as [StepSheetData, StepSheetData]
  const one = ashdown.write('step-signed', { step: 'lock' })
  expect(unseenBefore(job(one), last, steps)).toEqual([1])
  expect(unseenBefore(job(one), first, steps)).toEqual([])
  expect(unseenBefore(job(), last, steps)).toEqual([])
  expect(unseenBefore(job(one, ashdown.write('step-signed', { step: 'lid' })), last, steps)).toEqual([])
})

test('what shuts the case tells which checks were last not good', () => {
  const { ashdown } = two()
  const steps = [
    { step: 'dog travel', number: 1 },
    { ...lid, number: 2 },
  ] as unknown as readonly StepSheetData[]
  const last = steps[1]!
  const check = (result: 'good' | 'bad') => ashdown.write('check-result', { check: 'dog travel', result })
  const bad = check('bad')
  expect(badBefore(job(bad), last, steps)).toEqual([1])
  expect(badBefore(job(bad), steps[0]!, steps)).toEqual([])
  expect(badBefore(job(bad, check('good')), last, steps)).toEqual([])
})
