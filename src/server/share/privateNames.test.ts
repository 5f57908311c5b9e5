import { hostname, type networkInterfaces } from 'node:os'
import { expect, test } from 'vitest'
import { addressesOf, privateNames } from './privateNames.ts'

type Interfaces = ReturnType<typeof networkInterfaces>
const has = (...addresses: string[]): Interfaces => ({
  wifi: addresses.map((address) => ({ address, internal: false }) as NonNullable<Interfaces[string]>[number]),
})
const own = `${hostname().split('.')[0]!.toLowerCase()}.local`

test('what can be typed on a tablet comes first: what was named, version 4, the name, and only then version 6', () => {
  const names = privateNames(['shed.local'], has('fd12:3456::7', '169.254.9.9', '192.168.1.20', '8.8.8.8', 'fe80::1'))
  expect(names).toEqual(['shed.local', '192.168.1.20', '169.254.9.9', own, 'fd12:3456::7'])
  expect(privateNames([], has('fd12:3456::7'))).toEqual([own, 'fd12:3456::7'])
})

test('an address of version 6 stands in brackets', () => {
  expect(addressesOf(['192.168.1.20', 'fd12:3456::7'], 7443)).toEqual([
    'https://192.168.1.20:7443',
    'https://[fd12:3456::7]:7443',
  ])
})
