import type { networkInterfaces } from 'node:os'
import { expect, test } from 'vitest'
import { isNear, placeOf } from './near.ts'

type Interfaces = ReturnType<typeof networkInterfaces>
const here = {
  wifi: [
    { address: '203.0.113.7', cidr: '203.0.113.7/29' },
    { address: '2001:db8:1:2::7', cidr: '2001:db8:1:2::7/64' },
  ],
} as unknown as Interfaces

// Addresses for documentation: RFC 5737, RFC 3849.
test.each([
  ['192.168.1.20', true],
  ['172.31.255.255', true],
  ['172.32.0.1', false],
  ['::ffff:10.1.2.3', true],
  ['::ffff:198.51.100.9', false],
  ['127.0.0.2', true],
  ['100.101.102.103', true],
  ['203.0.113.3', true],
  ['203.0.113.9', false],
  ['fe80::1%wifi', true],
  ['fd00::1', true],
  ['2001:db8:1:2:ffff::1', true],
  ['2001:db8:1:3::1', false],
  ['', false],
])('%s is near: %s', (address, near) => {
  expect(isNear(address, here)).toBe(near)
})

test('a whole network of version 6 is one place, an address of version 4 its own', () => {
  expect(placeOf('10.0.0.7')).toBe('10.0.0.7')
  expect(placeOf('::ffff:10.0.0.7')).toBe('10.0.0.7')
  const places = ['fd12:3456::1', 'fd12:3456:0:0:ffff:ffff:ffff:ffff', 'fd12:3456::5:6:7:8', 'FD12:3456:0000::9%wifi']
  expect(new Set(places.map(placeOf))).toEqual(new Set(['fd12:3456:0:0::/64']))
  expect(placeOf('fd12:3456:0:1::1')).toBe('fd12:3456:0:1::/64')
  expect(placeOf('::1')).toBe('0:0:0:0::/64')
})
