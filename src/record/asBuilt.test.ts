import { expect, test } from 'vitest'
import { Writer } from '../stores/testing/writer.ts'
import { asBuilt } from './asBuilt.ts'
import { fold } from './fold.ts'

const [ONE, TWO] = ['a'.repeat(64), 'b'.repeat(64)]

test('who signed each step, who looked at it too, and its photos, in the order of the building', () => {
  const [ashdown, tarn] = [new Writer('tablet', 'J41', 'M. Ashdown'), new Writer('laptop', 'J41', 'J. Tarn')]
  const photo = (file: string, about: { step?: string; part?: string }) =>
    ashdown.write('photo', { file, type: 'image/jpeg', size: 9, about })
  const entries = [
    photo(ONE, { part: 'spindle' }),
    ashdown.write('step-signed', { step: 'lock' }),
    photo(ONE, { step: 'lock' }),
    ashdown.write('step-signed', { step: 'cap' }),
    photo(TWO, { step: 'closing' }),
    ashdown.write('step-signed', { step: 'cap', as: 'recheck', method: 'feeler', says: 'none enters', photo: ONE }),
    ashdown.write('step-signed', { step: 'tab' }),
    ashdown.write('step-signed', { step: 'tab', as: 'undone' }),
  ]
  for (const entry of entries) tarn.see(entry)
  const second = tarn.write('step-signed', { step: 'lock', as: 'second' })
  const { state } = fold('J41', [...entries, second])
  const at = (index: number) => ({ person: 'M. Ashdown', ms: entries[index]!.at.ms })
  expect(asBuilt(state)).toEqual({
    steps: [
      {
        step: 'lock',
        signed: [at(1)],
        second: { person: 'J. Tarn', ms: second.at.ms, how: 'second person' },
        photos: [{ ...at(2), sha256: ONE }],
      },
      {
        step: 'cap',
        signed: [at(3)],
        second: { ...at(5), how: 'one person, checked again', method: 'feeler', found: 'none enters' },
        photos: [],
      },
      { step: 'closing', signed: [], photos: [{ ...at(4), sha256: TWO }] },
    ],
    otherPhotos: [{ ...at(0), sha256: ONE, of: 'spindle' }],
  })
})

test('what was taken back is not in the book', () => {
  const ashdown = new Writer('tablet', 'J41', 'M. Ashdown')
  const photo = ashdown.write('photo', { file: ONE, type: 'image/jpeg', size: 9, about: { step: 'lock' } })
  expect(asBuilt(fold('J41', [photo, ashdown.write('withdrawn', { of: photo.id })]).state)).toEqual({
    steps: [],
    otherPhotos: [],
  })
})
