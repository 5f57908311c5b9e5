// The names and addresses by which tablets on the shop's network reach this machine.
import { isIP } from 'node:net'
import { hostname, networkInterfaces } from 'node:os'
import { Problem } from '../../problem/problem.ts'
import { PRIVATE_ENDINGS } from './privateNamesOnly.ts'

const PRIVATE_V4 = /^(10\.|192\.168\.|169\.254\.|127\.|172\.(1[6-9]|2\d|3[01])\.)/
const PRIVATE_V6 = /^f[cd][0-9a-f]{2}:/i

/** Names that the shop's authority may vouch for. */
export const isPrivateName = (name: string): boolean => {
  if (isIP(name) === 4) return PRIVATE_V4.test(name)
  if (isIP(name) === 6) return PRIVATE_V6.test(name)
  return PRIVATE_ENDINGS.some((ending) => name === ending || name.endsWith(`.${ending}`))
}

/** Addresses first: they work without anybody looking names up. */
export function privateNames(also: readonly string[]): readonly string[] {
  const addresses = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, address }) => !internal && isPrivateName(address))
    .map(({ address }) => address)
  const own = `${hostname().split('.')[0]!.toLowerCase()}.local`
  const named = also.map((name) => name.toLowerCase())
  for (const name of named) {
    if (!isPrivateName(name)) {
      throw new Problem('WRONG_USE', {
        reason: `'${name}' is no name of a private network; expected an address such as 192.168.1.20 or a name ending in .${PRIVATE_ENDINGS.join(', .')}`,
        help: 'matchmark serve --help',
      })
    }
  }
  return [...new Set([...named, ...addresses, own])]
}

/** The usual port of the shop door. */
export const SHARE_PORT = 7443

/** The names as addresses of the shop door; those of version 6 in brackets (RFC 3986 section 3.2.2). */
export const addressesOf = (names: readonly string[], port: string | number): readonly string[] =>
  names.map((name) => `https://${isIP(name) === 6 ? `[${name}]` : name}:${port}`)
