import { expect, test } from 'vitest'
import type { Entry } from '../journal/entry.ts'
import { V1 } from '../journal/testing/entriesOfVersion1.ts'
import { Writer } from '../stores/testing/writer.ts'
import { fold } from './fold.ts'
import { settingTries, tryEntry } from './settingTries.ts'

const triesOf = (entries: readonly Entry[]) => settingTries(entries, fold('J41', entries).state)
const read = (low: number) => ({ what: 'float', of: 'length' as const, low, high: low, standing: 'seen' as const })
const say = (writer: Writer, size: number, fitted: Parameters<typeof tryEntry>[0]['fitted']) => {
  const said = tryEntry({
    of: 'input setting',
    check: 'input float',
    read: read(size),
    result: 'bad',
    instrument: 'dial gauge',
    fitted,
  })
  return writer.write('setting-try', said.body)
}

test('tries stand in their order with what was in, what was read, by whom; each with the result entered with it', () => {
  const [ben, ada] = [new Writer('tablet', 'J41', 'Ben'), new Writer('laptop', 'J41', 'Ada')]
  ada.now_ms += 500
  const first = say(ben, 0.00003, { tried: 'S1 + S2', shims: ['S1', 'S2'], pack_m: 0.000626 })
  const other = ada.note('meanwhile')
  const result = ben.write('check-result', { check: 'input float', result: 'bad' })
  const second = say(ben, 0.00006, { tried: 'nut', turned_rad: 0.1, lead_m: 0.0015 })
  const tries = triesOf([second, result, other, first])
  expect(tries).toMatchObject([
    {
      entry: first.id,
      number: 1,
      of: 'input setting',
      check: 'input float',
      with: 'dial gauge',
      person: 'Ben',
      shims: ['S1', 'S2'],
      read: { low: 0.00003 },
      pack: { low: 0.000626, of: 'length', standing: 'seen' },
      resultEntry: result.id,
    },
    { number: 2, shims: [], turned: { low: 0.1, of: 'angle' }, lead: { low: 0.0015, standing: 'told' } },
  ])
  expect(tries[1]).not.toHaveProperty('resultEntry')
  expect(tries[1]).not.toHaveProperty('pack')
})

test('a try that was taken back stays to be seen and gives its number to the next', () => {
  const ben = new Writer('tablet', 'J41', 'Ben')
  const wrong = say(ben, 0.3, { tried: 'S1' })
  const back = ben.write('withdrawn', { of: wrong.id })
  const right = say(ben, 0.0003, { tried: 'S1' })
  expect(triesOf([wrong, back, right]).map(({ number, takenBack }) => [number, takenBack?.person])).toEqual([
    [1, 'Ben'],
    [1, undefined],
  ])
})

test('a try of version 1 without the later keys is read', () => {
  const entries = V1.map(({ entry }) => entry).filter(({ kind }) => kind === 'setting-try')
  expect(triesOf(entries)).toMatchObject([
    { number: 1, of: 'keep plate', tried: 'S1 + S2', read: { of: 'torque' }, says: 'too tight' },
  ])
})
