import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Problem, printProblem } from '../problem/problem.ts'
import { countSequences } from './countSequences.ts'
import { readSequenceFile } from './tsplib.ts'
import { validate } from './validate.ts'

const DATA = new URL('../../bench/data/sop/', import.meta.url)
const rows = (file: string): string[][] =>
  readFileSync(new URL(file, DATA), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split(','))

const fault = (text: string): string => {
  try {
    readSequenceFile(text, 'a.sop')
  } catch (error) {
    if (error instanceof Problem) return printProblem(error)
    throw error
  }
  return 'read'
}

const HEAD =
  'NAME: a\nTYPE: SOP\nDIMENSION: 3\nEDGE_WEIGHT_TYPE: EXPLICIT\nEDGE_WEIGHT_FORMAT: FULL_MATRIX\nEDGE_WEIGHT_SECTION\n'

describe('a sequence file', () => {
  it('becomes a valid problem: costs, what never comes right after, and the order without what follows from it', () => {
    const problem = readSequenceFile(`${HEAD}3\n0 5 1000000\n-1 0 7\n-1 -1 0\nEOF\n`, 'a.sop')
    expect(validate(problem)).toEqual([])
    expect(problem.changes.between).toEqual({
      ops: ['1', '2', '3'],
      s: [
        [0, 5, null],
        [null, 0, 7],
        [null, null, 0],
      ],
    })
    expect(problem.operations.map(({ needs }) => needs.map(({ id }) => id))).toEqual([
      [],
      ['1 before 2'],
      ['2 before 3'],
    ])
  })

  it('may be the matrix alone, with its rows over several lines or none', () => {
    const one = readSequenceFile('3\n0 5 1000000\n-1 0 7\n-1 -1 0', 'a.sop')
    expect(readSequenceFile(`${HEAD}3\n0 5 1000000\n-1 0 7\n-1 -1 0\n`, 'a.sop')).toEqual(one)
    expect(readSequenceFile('3 0 5 1000000 -1\r\n0 7 -1 -1 0\r\n', 'a.sop')).toEqual(one)
  })

  it('is read whole for every instance that the project holds', () => {
    for (const file of readdirSync(DATA).filter((each) => each.endsWith('.sop'))) {
      const problem = readSequenceFile(readFileSync(new URL(file, DATA), 'utf8'), file)
      const told = rows('best-known.csv').find(([name]) => `${name}.sop` === file)!
      expect(problem.operations.length, file).toBe(Number(told[1]))
      expect(validate(problem), file).toEqual([])
    }
  })

  it('that cannot be used is refused with its line and column, what came, what was expected, and what to do', () => {
    const next =
      'Mend it there: a TSPLIB file of TYPE SOP with a full matrix, or the number of operations and the matrix alone.'
    const size = 'the number of operations, a whole number from 1 to 2000'
    const cases: readonly (readonly [text: string, where: string, received: string, expected: string])[] = [
      ['', '1:1', 'the end of the file', 'the number of operations'],
      ['1000000000\n0 1', '1:1', "'1000000000'", size],
      ['-3\n', '1:1', "'-3'", size],
      ['2\n0 1\n0 x\n', '3:3', "'x'", 'a cost in row 2, column 2, a whole number from -1 to 10000000'],
      ['2\n0 1.5\n0 0\n', '2:3', "'1.5'", 'a cost in row 1, column 2, a whole number from -1 to 10000000'],
      ['2\n0 -2\n0 0\n', '2:3', "'-2'", 'a cost in row 1, column 2, a whole number from -1 to 10000000'],
      ['2\n0 1e300\n0 0\n', '2:3', "'1e300'", 'a cost in row 1, column 2, a whole number from -1 to 10000000'],
      [
        '2\n0 99999999999999999999\n0 0',
        '2:3',
        "'99999999999999999999'",
        'a cost in row 1, column 2, a whole number from -1 to 10000000',
      ],
      ['3\n0 1\n0 0 1 1\n0 0 0', '2:1', 'a row of 2 numbers', '3 numbers in each row'],
      ['2\n0 1\n0\n', '2:1', 'a row of 2 numbers', 'x'],
      ['2\n0 1\n0 0\n7', '4:1', "'7'", 'the end of the file after 2 rows of 2 numbers'],
      ['TYPE: TSP\nEDGE_WEIGHT_SECTION\n2\n0 1\n0 0', '1:1', 'TYPE: TSP', 'TYPE: SOP'],
      ['DIMENSION: 3\nEDGE_WEIGHT_SECTION\n2\n0 1\n0 0', '3:1', '2', '3, as DIMENSION says'],
      ['TYPE: SOP\n', '2:1', 'the end of the file', 'EDGE_WEIGHT_SECTION'],
      ['<html>', '1:1', "'<html>'", "the number of operations or a header line such as 'TYPE: SOP'"],
    ]
    for (const [text, where, received, expected] of cases) {
      if (expected === 'x') {
        expect(fault(text)).toContain('a row of 1 numbers here; expected is 2 numbers in each row')
        continue
      }
      expect(fault(text)).toBe(
        `a.sop:${where}: The sequence file has ${received} here; expected is ${expected}. ${next}`,
      )
    }
    expect(fault('2\n0 1 0')).toContain(
      'The sequence file has 3 numbers here; expected is 2 rows of 2 numbers, 4 in all.',
    )
    expect(fault(`2\n0 ${'x'.repeat(1_000_000)}`).length).toBeLessThan(300)
  })
})

// Source: bench/data/sop/exact-counts.csv, an exact dynamic programme written apart from this project.
describe('the number of sequences of a published instance', () => {
  const counted = rows('exact-counts.csv').slice(1)
  it.each(counted.filter(([name, , , , , ideals]) => Number(ideals) < 100_000 && !/^R\.[457]/.test(name!)))(
    'is the one that was counted before: %s',
    (...cells) => {
      const [name, , , , orders] = cells
      const file = `${name}.sop`
      const count = countSequences(readSequenceFile(readFileSync(new URL(file, DATA), 'utf8'), file))
      if (/^\d+$/.test(orders!)) expect(count).toBe(orders)
      else expect(Math.abs(Number(count) / Number(orders) - 1)).toBeLessThan(1e-12)
    },
  )
})
