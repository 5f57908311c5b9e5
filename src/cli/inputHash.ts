import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import type { PlanningProblem } from '../planning/model/problem.ts'

/**
 * What a sequence was worked out from, as one number: SHA-256, in hexadecimal, over the planning problem in canonical JSON.
 *
 * @source RFC 8785 (JSON Canonicalization Scheme); FIPS 180-4 (SHA-256)
 */
export function inputHash(problem: PlanningProblem): string {
  return createHash('sha256').update(canonicalize(problem)!).digest('hex')
}
