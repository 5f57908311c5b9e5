// From where people come: the shop's own networks, or further away.
import { BlockList, isIP } from 'node:net'
import { networkInterfaces } from 'node:os'

/** Networks that nobody on the internet can send from: RFC 1918, RFC 6598 (overlay networks too), RFC 3927, loopback; RFC 4193, RFC 4291 link-local. */
const PRIVATE: readonly (readonly [string, number])[] = [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['100.64.0.0', 10],
  ['169.254.0.0', 16],
  ['127.0.0.0', 8],
  ['fc00::', 7],
  ['fe80::', 10],
  ['::1', 128],
]

const kindOf = (address: string) => (isIP(address) === 6 ? 'ipv6' : 'ipv4')

/** As version 4, where a door for both versions was knocked at by version 4 (RFC 4291 section 2.5.5.2). */
const plain = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '')

/**
 * Whether an address is on a private network or on one that this machine itself is in. The shop door listens on every address of the machine,
 * which may be one of the internet's; nobody from there is to knock at it.
 *
 * @example isNear('192.168.1.20')   // true
 */
export function isNear(address: string, interfaces = networkInterfaces()): boolean {
  const near = new BlockList()
  for (const [network, bits] of PRIVATE) near.addSubnet(network, bits, kindOf(network))
  for (const { address: own, cidr } of Object.values(interfaces).flatMap((list) => list ?? []))
    if (cidr) near.addSubnet(own, Number(cidr.split('/')[1]), kindOf(own))
  const from = plain(address)
  return isIP(from) !== 0 && near.check(from, kindOf(from))
}

/**
 * Whose tries are counted together: an address of version 4, a network of version 6, in which everybody can have as many addresses as he likes.
 *
 * @source RFC 4291 section 2.5.1 (the last 64 bits name the interface)
 * @example placeOf('fd12:3456::1:2:3:4')   // 'fd12:3456:0:0::/64'
 */
export function placeOf(address: string): string {
  const from = plain(address)
  if (isIP(from) !== 6) return from
  const [head = '', tail = ''] = from.split('::')
  const groups = (text: string) => text.split(':').filter(Boolean)
  const [first, last] = [groups(head), groups(tail)]
  const between = from.includes('::') ? Math.max(0, 8 - first.length - last.length) : 0
  const all = [...first, ...Array<string>(between).fill('0'), ...last]
  return `${all
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':')}::/64`
}
