// The one way in which a value is written before it is hashed or signed, and the hash.
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'
import { Problem } from '../problem/problem.ts'

/**
 * The canonical form of a value: keys in the order of their UTF-16 units, no blanks, numbers as ECMAScript prints them.
 *
 * @throws NOT_CANONICAL for what JSON cannot say: NaN, a lone half of a surrogate pair, a circle, undefined
 * @source RFC 8785, JSON Canonicalization Scheme
 */
export function canonicalForm(value: unknown): string {
  let text: string | undefined
  try {
    text = canonicalize(value)
  } catch (error) {
    throw new Problem('NOT_CANONICAL', { reason: error instanceof Error ? error.message : String(error) })
  }
  if (text === undefined) throw new Problem('NOT_CANONICAL', { reason: `it is ${typeof value}` })
  return text
}

/** SHA-256 of a text in UTF-8, in hexadecimal. @source FIPS 180-4 */
export const hashOfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)))

/** SHA-256 of a file's bytes, in hexadecimal: its name beside the journal. */
export const hashOfBytes = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))
