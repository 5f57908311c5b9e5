import { expect, test } from 'vitest'
import { sample } from '../../record/testing/quarryRailway.ts'
import { afterTry, atAGlance } from './atAGlance.ts'
import { workedJob } from './workedJob.ts'

const { unit, job } = sample()
const { worked } = workedJob({ unit, job, system: 'metric' })
const of = (id: string, isInch = false) => {
  const settings = worked.steps.find(({ step }) => step === id)?.settings ?? []
  return atAGlance(settings, isInch).map(({ what, figures }) => [what, ...figures])
}

test('a press fit: the load to stop at stands first, then what the sizes ask for', () => {
  expect(of('cluster bushes')).toEqual([
    ['stop', '1562 N'],
    ['load', '1199 to 2887 N'],
  ])
})

test('a fastener set: the rounds as they were told, in whose own units they are read', () => {
  expect(of('joint bolts')).toEqual([['torque', '25 N·m', '45 N·m', '65 N·m']])
  expect(of('joint bolts', true)).toEqual([['torque', '18.4 lbf·ft', '33.2 lbf·ft', '47.9 lbf·ft']])
})

test('heat and shims', () => {
  expect(of('warm jack bearing A')).toEqual([['heat', '101.6 °C']])
  expect(of('keep plate')).toEqual([['shims', 'S1 + S2 = 0.626 mm']])
  expect(of('keep plate', true)).toEqual([['shims', 'S1 + S2 = 0.0246 in']])
})

test('a step with nothing to set has nothing to show', () => {
  expect(of('dipstick')).toEqual([])
})

test('what is out of its limit comes before anything else', () => {
  const figure = {
    label: 'slip',
    dimension: 'length',
    text: '0 mm',
    rests: 'seen',
    basis: 'readings',
    source: '',
  } as const
  const settings = [
    {
      connection: 'a',
      title: 'hot fit',
      says: [],
      missing: [],
      figures: [{ ...figure, verdict: 'out', limit: 'at least 0.01 mm' }],
    },
  ] as const
  expect(atAGlance(settings)).toEqual([
    { of: 'hot fit', what: 'wrong', figures: ['0 mm'], rests: 'seen', limit: 'at least 0.01 mm' },
  ])
})

test('a half-known load says that it may go over, and over what', () => {
  const load = worked.steps.find(({ step }) => step === 'cluster bushes')?.settings[0]?.figures[1]
  expect(load).toMatchObject({ verdict: 'not known', doubt: { is: 'may be over', at: '1562 N' } })
})

test('after a try the pack of the first working stands no more', () => {
  const shims = { of: 'setting', what: 'shims', figures: ['S1 + S2 = 0.626 mm'], rests: 'seen' } as const
  const torque = { of: 'bolts', what: 'torque', figures: ['20 N·m'], rests: 'told' } as const
  expect(afterTry([torque, shims], undefined)).toEqual([torque])
  expect(afterTry([shims], 'S1 + S5 = 0.575 mm')).toEqual([{ ...shims, figures: ['S1 + S5 = 0.575 mm'] }])
})
