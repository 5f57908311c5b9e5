import { expect, test } from 'vitest'
import { micrometre } from '../../quantity/constructors.ts'
import { sealTrack } from './sealTrack.ts'

test('too smooth is as bad as too rough, and what was not looked at is not known', () => {
  const finish = (ra: number) => sealTrack({ roughness: micrometre(ra), dirty: false }).finishIsGood
  expect([finish(0.1), finish(0.4), finish(1.6)]).toEqual(['no', 'yes', 'no'])
  expect(sealTrack({ dirty: false })).toMatchObject({ finishIsGood: 'not known', hardnessIsGood: 'not known' })
})

test('dirt wants a harder track, and a deep groove another track', () => {
  expect(sealTrack({ hardness: 50, dirty: false }).hardnessIsGood).toBe('yes')
  expect(sealTrack({ hardness: 50, dirty: true }).hardnessIsGood).toBe('no')
  expect(sealTrack({ groove: micrometre(200), dirty: false }).cautions.join(' ')).toContain('repair sleeve')
  expect(sealTrack({ hardness: { low: 40, high: 50 }, dirty: false }).hardnessIsGood).toBe('not known')
})
