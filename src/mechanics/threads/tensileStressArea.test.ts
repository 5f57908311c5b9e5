import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { tensileStressArea } from './tensileStressArea.ts'
import { threadDiameters } from './threadDiameters.ts'

test('refuses a pitch that leaves no core, and a pitch of nothing', () => {
  const area = (pitch: number) => () => tensileStressArea({ nominalDiameter: mm(10), pitch: mm(pitch) })
  expect(area(16)).toThrow('A 10 mm thread cannot have a pitch of 16 mm.')
  expect(area(0)).toThrow('A 10 mm thread cannot have a pitch of 0 mm.')
  expect(() => threadDiameters({ nominalDiameter: mm(2), pitch: mm(2) })).toThrow('A 2 mm thread')
})
