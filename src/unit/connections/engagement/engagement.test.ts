import { expect, test } from 'vitest'
import { connected, contribution, winchUnit } from '../winchBox.example.ts'

const FINGER = '  finger: {kind: engagement, moves: lid, meets: sliding dog'

test('neutral, lowered level, felt before it is fastened; no step of its own', () => {
  const { steps, within, mayOverlap } = contribution(
    `${FINGER}, neutral: middle position, felt: [the lever clicks twice]}`,
  )
  expect(steps).toEqual([])
  expect(mayOverlap).toEqual([{ mover: 'lid', other: 'sliding dog' }])
  expect(within.map(({ does }) => does)).toEqual([
    'Put sliding dog and lid in middle position, and look at it.',
    'Lower lid level, without force: what is not engaged holds it off its face.',
    'Feel before it is fastened: the lever clicks twice.',
  ])
})

test('drawing it down with the screws is warned of, and the neutral position is asked first', () => {
  const unit = winchUnit(`${FINGER}}`)
  const { connection, kind, given } = connected(unit, 'finger')
  expect(kind.warnings(connection, given, unit)[0]).toContain('drawn down with its screws')
  expect(kind.asks(connection, given, unit).toSorted((a, b) => a.rank - b.rank)[0]?.asks).toContain('`neutral`')
})
