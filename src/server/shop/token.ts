// Random words that open a door once (codes) or for long (tokens). Only their hashes are kept.
import { createHash, randomBytes, randomInt } from 'node:crypto'

/** 256 random bits, as text that fits into a cookie. */
export const newToken = (): string => randomBytes(32).toString('base64url')

/** Letters and digits that are not taken for each other, read aloud or from a printed page. */
const LETTERS = 'ACDEFHJKLMNPQRTUVWXY34679'
const GROUPS = 3
const GROUP = 4

/** A code for people: 12 letters in groups of four, about 55 bits. */
export const newCode = (): string =>
  Array.from({ length: GROUPS }, () =>
    Array.from({ length: GROUP }, () => LETTERS[randomInt(LETTERS.length)]).join(''),
  ).join('-')

/** What is kept of a token or a code. Case, spaces and dashes of a code do not matter. */
export const hashOfToken = (token: string): string => createHash('sha256').update(token).digest('hex')
export const hashOfCode = (code: string): string => hashOfToken(code.toUpperCase().replace(/[\s-]/g, ''))
