import { expect, test } from 'vitest'
import { connected, contribution, setting, winchUnit } from '../winchBox.example.ts'

const RING = '  ring: {kind: snap ring, ring: wheel ring, in: shaft, keeps: wheel'

test('a stamped ring: rounded edge to the part that pushes, and turned to prove its seat', () => {
  expect(contribution(`${RING}}`).within.map(({ does }) => does)).toEqual([
    'Turn the rounded edge of wheel ring to wheel, the sharp edge to the wall of the groove that takes the load.',
    'Turn wheel ring in its groove: it turns only where it is right in.',
  ])
  expect(contribution(`${RING}, made: wire}`).within).toHaveLength(1)
})

test('the drawing says which way round, the ring is renewed, glasses are called for', () => {
  const unit = winchUnit(`${RING}, made: stamped}`)
  const { connection, kind, given } = connected(unit, 'ring')
  expect(kind.drawing(connection, given, unit).marks).toEqual([
    { at: 'wheel ring', mark: 'snap ring', text: 'rounded edge to wheel' },
  ])
  expect(kind.renewals(connection, given, unit)[0]).toMatchObject({ part: 'wheel ring', standing: 'told' })
  expect(kind.cautions(connection, given)[0]).toContain('Glasses')
})

test('play in the groove: 1.75 in 1.85 is 0.10; 1.75 in 1.70 does not go in', () => {
  const play = (groove: string) => setting(`${RING}, thickness: wheel ring.thickness, groove: ${groove}}`).figures[0]
  expect(play('1.85')?.low).toBeCloseTo(0.1e-3, 12)
  expect(play('1.85')).toMatchObject({ verdict: 'within', standing: 'seen' })
  expect(play('1.70')?.verdict).toBe('out')
  expect(play('1.70..1.80')?.verdict).toBe('not known')
  expect(setting(`${RING}, thickness: wheel ring.thickness}`).missing).toEqual(['Measure the width of the groove.'])
})
