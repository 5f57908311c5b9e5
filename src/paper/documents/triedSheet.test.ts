import { expect, test } from 'vitest'
import type { Tried } from '../../job/model/tried.ts'
import { tailBoxBook } from '../testing/tailBox.ts'
import { jobBook } from './jobBook.ts'

const ms = Date.UTC(2026, 10, 25, 14, 10)
const tried: Tried = {
  checks: [
    { check: 'feed float', read: { low: 0.0009, high: 0.0009, dimension: 'length' }, result: 'bad', person: 'Ada', ms },
    { check: 'dogs', result: 'bad', person: 'Ada', ms },
    {
      check: 'feed float',
      read: { low: 0.0001, high: 0.0001, dimension: 'length' },
      result: 'good',
      person: 'Ben',
      ms,
    },
  ],
  tries: [
    {
      of: 'input setting',
      number: 1,
      tried: 'S1 + S2',
      pack: { low: 0.000626, high: 0.000626 },
      read: { low: 0.00003, high: 0.00003, dimension: 'length' },
      result: 'bad',
      with: 'dial gauge',
      person: 'Ada',
      ms,
    },
    {
      of: 'input setting',
      number: 2,
      tried: '<b>S3</b>',
      result: 'not known',
      person: 'Ada',
      ms,
      takenBack: { person: 'Ben', ms },
    },
  ],
  tightened: [
    {
      step: 'joint bolts',
      person: 'Ada',
      ms,
      stages: [
        { connection: 'joint bolts', stage: 2, says: 'all to 45 N·m', count: 12, of: 12, with: 'click wrench' },
        { connection: 'joint bolts', stage: 3, says: 'all to 65 N·m', count: 3, of: 12, rest: true },
      ],
      uncounted: 'counted on paper',
    },
  ],
}
const words = (html: string) =>
  html
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')

test('the book tells every try and every stage that was counted, by whom and when; what was taken back stays', () => {
  const html = jobBook({ ...tailBoxBook(), tried })
  const text = words(html)
  expect(text).toContain('As checked, set and tightened')
  expect(text).toContain('1 S1 + S2 = 0.626 mm 0.03 mm dial gauge not good Ada, 2026-11-25 14:10 UTC')
  expect(text).toContain('could not be read not known Ada, 2026-11-25 14:10 UTC taken back by Ben')
  expect(text).toContain('12 of 12 at stage 2, all to 45 N·m; with click wrench')
  expect(text).toContain('3 of 12 at stage 3, all to 65 N·m; the rest said all at once')
  expect(text).toContain('Not counted: counted on paper')
  expect(html).not.toContain('<b>S3</b>')
})

test('a book from a file, or of a job without tries, has no such sheet', () => {
  expect(words(jobBook(tailBoxBook()))).not.toContain('As checked, set and tightened')
  expect(words(jobBook({ ...tailBoxBook(), tried: { checks: [], tries: [], tightened: [] } }))).not.toContain(
    'As checked, set and tightened',
  )
})

test('the book tells every result of a check; what goes out not good stands in bold', () => {
  const html = jobBook({ ...tailBoxBook(), tried })
  const text = words(html)
  expect(text).toMatch(/feed float .*0\.9 mm not good Ada.* feed float .*0\.1 mm good Ben.* dogs not good Ada/)
  expect(html.match(/<td><b>not good<\/b><\/td>/g)).toHaveLength(1)
})
