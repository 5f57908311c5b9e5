import { expect, test } from 'vitest'
import { Problem } from '../../problem/problem.ts'
import { postgresProblem } from './postgresProblem.ts'

const codeOf = (error: unknown): string => {
  const problem = postgresProblem(error, 'postgres://shop/record')
  return problem instanceof Problem ? problem.code : 'as it was'
}
const sql = (code: string) => Object.assign(new Error('told by the server'), { code })

// SQLSTATEs: PostgreSQL 15, appendix A.
test.each([
  ['53100', 'STORE_FULL'],
  ['25006', 'STORE_READ_ONLY'],
  ['42501', 'STORE_READ_ONLY'],
  ['57P01', 'STORE_UNREACHABLE'],
  ['57P03', 'STORE_UNREACHABLE'],
  ['53300', 'STORE_UNREACHABLE'],
  ['28P01', 'STORE_UNREACHABLE'],
  ['3D000', 'STORE_UNREACHABLE'],
  ['XX001', 'STORE_DAMAGED'],
  ['42601', 'as it was'],
  ['ECONNREFUSED', 'STORE_UNREACHABLE'],
  ['EPIPE', 'STORE_UNREACHABLE'],
])('%s is %s', (code, expected) => {
  expect(codeOf(sql(code))).toBe(expected)
})

test("the driver's own words for a broken line are a broken line; a fault of ours stays one", () => {
  expect(codeOf(new Error('Client has encountered a connection error and is not queryable'))).toBe('STORE_UNREACHABLE')
  expect(codeOf(new Error('Connection terminated unexpectedly'))).toBe('STORE_UNREACHABLE')
  expect(codeOf(new TypeError('undefined is not a function'))).toBe('as it was')
})
