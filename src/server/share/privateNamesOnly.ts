// The name constraints of the shop's authority: names and addresses that exist on private networks only.

/** Endings of host names that the internet does not give away. RFC 6762 (local), RFC 8375 (home.arpa), RFC 6761 (localhost, test), ICANN 2024 (internal). */
export const PRIVATE_ENDINGS = ['local', 'home.arpa', 'internal', 'localhost', 'test'] as const

/** RFC 1918, RFC 3927, loopback; RFC 4193, RFC 4291 link-local: address and mask, in bytes. */
const PRIVATE_NETWORKS: readonly (readonly number[])[] = [
  [10, 0, 0, 0, 255, 0, 0, 0],
  [172, 16, 0, 0, 255, 240, 0, 0],
  [192, 168, 0, 0, 255, 255, 0, 0],
  [169, 254, 0, 0, 255, 255, 0, 0],
  [127, 0, 0, 0, 255, 0, 0, 0],
  [...address16(0xfc), ...address16(0xfe)],
  [...address16(0xfe, 0x80), ...address16(0xff, 0xc0)],
]

function address16(...first: readonly number[]): number[] {
  return [...first, ...Array<number>(16 - first.length).fill(0)]
}

/** One value after the distinguished encoding rules of ITU-T X.690, for lengths below 65,536. */
function der(tag: number, content: readonly number[]): number[] {
  const { length } = content
  const size = length < 128 ? [length] : length < 256 ? [0x81, length] : [0x82, length >> 8, length & 255]
  return [tag, ...size, ...content]
}

const SEQUENCE = 0x30
const PERMITTED = 0xa0
const DNS_NAME = 0x82
const IP_ADDRESS = 0x87

/** @source RFC 5280 section 4.2.1.10 */
export function privateNamesOnly(): ArrayBuffer {
  const bases = [
    ...PRIVATE_ENDINGS.map((ending) => der(DNS_NAME, [...Buffer.from(ending, 'ascii')])),
    ...PRIVATE_NETWORKS.map((network) => der(IP_ADDRESS, network)),
  ]
  const permitted = der(
    PERMITTED,
    bases.flatMap((base) => der(SEQUENCE, base)),
  )
  return new Uint8Array(der(SEQUENCE, permitted)).buffer
}
