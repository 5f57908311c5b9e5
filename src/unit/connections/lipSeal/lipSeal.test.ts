import { expect, test } from 'vitest'
import { connected, contribution, setting, winchUnit } from '../winchBox.example.ts'

const SEAL = '  seal in cover: {kind: lip seal, seal: seal, in: cover A, runs on: shaft.seal track'

test('lip to the oil, over a sleeve, square, and the shaft does not hang on it', () => {
  const { steps, within } = contribution(`${SEAL}, over: keyway, sleeve: brass sleeve, depth: to the floor}`)
  expect(steps).toEqual([])
  expect(within.map(({ part, does }) => [part, does])).toEqual([
    ['seal', 'Oil the lip of seal and turn it to the oil.'],
    ['seal', 'Slip brass sleeve over keyway, then seal over it.'],
    ['seal', 'Press seal in square, load on its outer rim, to the floor.'],
    ['seal', 'Hold shaft up meanwhile: it must not hang on the lip.'],
  ])
})

test('seal and shaft may touch, whichever moves', () => {
  expect(contribution(`${SEAL}}`).mayOverlap).toEqual([
    { mover: 'seal', other: 'cover A' },
    { mover: 'seal', other: 'shaft' },
    { mover: 'shaft', other: 'seal' },
  ])
})

test('it is always renewed, and what is not told is asked', () => {
  const unit = winchUnit('  seal in cover: {kind: lip seal, seal: seal}')
  const { connection, kind, given } = connected(unit, 'seal in cover')
  expect(kind.renewals(connection, given, unit)[0]?.part).toBe('seal')
  expect(kind.asks(connection, given, unit).map(({ rank }) => rank)).toEqual([1, 2, 3, 3])
})

test('a seal that is loose in its pocket is out', () => {
  const tight = (outside: string) =>
    setting(`${SEAL}, outside: ${outside}, pocket: cover A.pocket}`).figures[0]?.verdict
  expect([tight('62.15'), tight('61.95'), tight('61.95..62.15')]).toEqual(['within', 'out', 'not known'])
})
