import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'
import type { PlanningProblem } from '../planning/model/problem.ts'

/**
 * What a sequence was worked out from, as one number: SHA-256, in hexadecimal, over the planning problem in canonical JSON.
 *
 * @source RFC 8785 (JSON Canonicalization Scheme); FIPS 180-4 (SHA-256)
 */
export const inputHash = (problem: PlanningProblem): string => bytesToHex(sha256(utf8ToBytes(canonicalize(problem)!)))
