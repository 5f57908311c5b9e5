import { expect, test } from 'vitest'
import { Writer } from '../stores/testing/writer.ts'
import { fold } from './fold.ts'
import { triedIn } from './tried.ts'

test('the tries and the bolts that were counted, as a book tells them; what was undone since counts no more', () => {
  const ben = new Writer('tablet', 'J41', 'Ben')
  const stage = { connection: 'joint bolts', stage: 1, says: 'all to 25 N·m', count: 12, of: 12, with: 'click wrench' }
  const torque = { low: 25, high: 25, standing: 'told' as const }
  const made = ben.write('setting-try', {
    connection: 'input setting',
    tried: 'S1',
    values: [
      { what: 'float', of: 'length', low: 0.00003, high: 0.00003, standing: 'seen' },
      { what: 'pack', of: 'length', low: 0.0005, high: 0.0005, standing: 'seen' },
    ],
    result: 'bad',
  })
  const back = ben.write('withdrawn', { of: made.id })
  const undone = [
    ben.write('step-signed', { step: 'cap nuts', tightened: [stage] }),
    ben.write('step-signed', { step: 'cap nuts', as: 'undone' }),
  ]
  const signed = ben.write('step-signed', {
    step: 'joint bolts',
    tightened: [{ ...stage, torque }],
    uncounted: 'on paper',
  })
  const checked = [
    ben.write('check-result', { check: 'dog travel', result: 'bad' }),
    ben.write('check-result', {
      check: 'chain slack',
      result: 'good',
      values: [{ what: 'chain slack', of: 'length', low: 0.009, high: 0.009, standing: 'seen' }],
      with: 'rule',
    }),
  ]
  const entries = [made, back, ...undone, ...checked, signed, ben.write('step-signed', { step: 'oil' })]
  expect(triedIn(entries, fold('J41', entries).state)).toEqual({
    checks: [
      { check: 'dog travel', result: 'bad', person: 'Ben', ms: checked[0]?.at.ms },
      {
        check: 'chain slack',
        read: { low: 0.009, high: 0.009, dimension: 'length' },
        result: 'good',
        with: 'rule',
        person: 'Ben',
        ms: checked[1]?.at.ms,
      },
    ],
    tries: [
      {
        of: 'input setting',
        number: 1,
        tried: 'S1',
        pack: { low: 0.0005, high: 0.0005 },
        read: { low: 0.00003, high: 0.00003, dimension: 'length' },
        result: 'bad',
        person: 'Ben',
        ms: made.at.ms,
        takenBack: { person: 'Ben', ms: back.at.ms },
      },
    ],
    tightened: [{ step: 'joint bolts', person: 'Ben', ms: signed.at.ms, stages: [stage], uncounted: 'on paper' }],
  })
})
