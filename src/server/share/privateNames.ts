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

/** What a person gave first, then what can be typed and works without anybody looking names up: addresses of version 4, the name, version 6. */
export function privateNames(also: readonly string[], interfaces = networkInterfaces()): readonly string[] {
  const addresses = Object.values(interfaces)
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
  const short = addresses
    .filter((address) => isIP(address) === 4)
    .sort((a, b) => Number(isMakeshift(a)) - Number(isMakeshift(b)))
  return [...new Set([...named, ...short, own, ...addresses])]
}

/** An address that a machine gives itself where nobody gave it one (RFC 3927): tablets seldom reach it. */
const isMakeshift = (address: string): boolean => address.startsWith('169.254.')

/** A name as it stands in an address and in the Host header: those of version 6 in brackets (RFC 3986 section 3.2.2). */
export const asHost = (name: string): string => (isIP(name) === 6 ? `[${name}]` : name)

/** The usual port of the shop door. */
export const SHARE_PORT = 7443

/** The names as addresses of the shop door. */
export const addressesOf = (names: readonly string[], port: string | number): readonly string[] =>
  names.map((name) => `https://${asHost(name)}:${port}`)
