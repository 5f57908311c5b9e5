// PINs are short, so that they are slow to try: scrypt, with a salt of its own for each person.
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import { Problem } from '../../problem/problem.ts'

/** About 0.1 s on a bench computer and 32 MiB of memory for each try. */
const COST = { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 2 ** 20 }
const LENGTH = 32

const derive = (pin: string, salt: Buffer, { N, r, p }: { N: number; r: number; p: number }): Promise<Buffer> =>
  new Promise((resolve, reject) => {
    scrypt(pin.normalize('NFKC'), salt, LENGTH, { N, r, p, maxmem: COST.maxmem }, (error, key) =>
      error ? reject(error) : resolve(key),
    )
  })

/**
 * @param pin 4 to 12 digits
 * @returns parameters, salt and hash in one line
 * @throws PIN_UNFIT
 * @source RFC 7914 (scrypt)
 */
export async function hashPin(pin: string): Promise<string> {
  if (!/^\d{4,12}$/.test(pin) || /^(\d)\1*$/.test(pin)) throw new Problem('PIN_UNFIT')
  const salt = randomBytes(16)
  const { N, r, p } = COST
  const hash = await derive(pin, salt, COST)
  return ['scrypt', N, r, p, salt.toString('base64'), hash.toString('base64')].join('$')
}

/** Whether the PIN is the one that was hashed. Takes as long for a person who has none. */
export async function isPin(pin: string, hashed: string | undefined): Promise<boolean> {
  const [kind, N, r, p, salt, hash] = (hashed ?? NOBODY).split('$')
  if (kind !== 'scrypt') throw new Error('assert: a hash of this server')
  const expected = Buffer.from(hash!, 'base64')
  const found = await derive(pin, Buffer.from(salt!, 'base64'), { N: Number(N), r: Number(r), p: Number(p) })
  return timingSafeEqual(found, expected) && hashed !== undefined
}

const NOBODY = [
  'scrypt',
  COST.N,
  COST.r,
  COST.p,
  randomBytes(16).toString('base64'),
  randomBytes(LENGTH).toString('base64'),
].join('$')
