// Ten minutes of work give ten minutes' worth of answers: what is firm with few facts is never contradicted by more.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from '../file/readUnit.ts'
import { lessKnown } from './testing/lessKnown.ts'

describe.each(['tail-box', 'yard-shunter'])('%s', (name) => {
  const file = fileURLToPath(new URL(`../housings/${name}.unit.yaml`, import.meta.url))
  const { unit, faults } = readUnit(readFileSync(file, 'utf8'), name)
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  const { facts, judge, untouched, needsWithout } = lessKnown(unit)

  test('no order that is right with all facts is refused on firm grounds with any one fact less (seed 1860)', () => {
    fc.assert(
      fc.property(fc.constantFrom(...facts), (what) => {
        expect(judge([what])).toEqual(untouched)
      }),
      { seed: 1860, numRuns: 40 },
    )
  })

  test('nor with many facts less (seed 1861)', () => {
    fc.assert(
      fc.property(fc.subarray([...facts], { minLength: 2, maxLength: 60 }), (taken) => {
        expect(judge(taken)).toEqual(untouched)
      }),
      { seed: 1861, numRuns: 70 },
    )
  })

  test('with little written down little is asked', () => {
    expect(needsWithout(facts)).toBeLessThan(needsWithout([]) / 2)
  })
})
