// The sample gearcase with facts taken away. It has too many orders to count them for every trial: some are tried.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from '../file/readUnit.ts'
import { placed } from '../lines/placed.ts'
import { forVariant } from '../variants.ts'
import { lessKnown, tried } from './testing/lessKnown.ts'

test('no order of the gearcase that is right with all facts is refused on firm grounds with fewer (seed 1862)', () => {
  const file = fileURLToPath(new URL('../../../examples/quarry-railway/reversing-gearcase.unit.yaml', import.meta.url))
  const { unit, faults } = readUnit(readFileSync(file, 'utf8'), 'reversing-gearcase')
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  const { facts, judge, untouched } = lessKnown(placed(forVariant(unit, 'early')).unit, tried(100, 1863))
  expect(untouched.orders).toBe('100 of 100')
  fc.assert(
    fc.property(fc.subarray([...facts], { minLength: 1, maxLength: 60 }), (taken) => {
      expect(judge(taken)).toEqual(untouched)
    }),
    { seed: 1862, numRuns: 20 },
  )
})
