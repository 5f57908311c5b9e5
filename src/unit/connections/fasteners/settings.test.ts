import { expect, test } from 'vitest'
import { lbf, lbfFoot } from '../../../quantity/constructors.ts'
import type { Setting } from '../kind.ts'
import { setting } from '../winchBox.example.ts'

const screws = (rest: string) => setting(`  bolts: {kind: fasteners, holds: lid, into: box, ${rest}}`)
const figure = ({ figures }: Setting, label: string) => figures.find((each) => each.label === label)

// SAE J429 torque table at a bolt supplier's reference page: 1/2-13 and 3/4-10 grade 2, dry, K = 0.20, 0.75 of proof.
test.each([
  ['1/2-13 UNC', 48.8, 0.05],
  ['3/8-16 UNC', 20, 0.5],
  ['3/4-10 UNC', 172, 0.5],
])('%s grade 2 dry: %d lbf·ft as in the printed table', (thread, printed, half) => {
  const torque = figure(screws(`thread: ${thread}, grade: 2, condition: dry`), 'torque')
  expect(Math.abs((torque?.low ?? 0) / lbfFoot(1) - printed)).toBeLessThan(half)
  expect(torque).toMatchObject({ basis: 'table', standing: 'usual' })
})

// The same page: proof load of 1/2-13 grade 2 is 5 853 lbf / 0.75.
test('the tension is held against the proof load of the table', () => {
  const tension = figure(screws('thread: 1/2-13 UNC, grade: 2, condition: dry'), 'tension that this torque may give')
  expect(Math.abs((tension?.limit?.high ?? 0) / lbf(1) - 5853 / 0.75)).toBeLessThan(5)
  expect(tension?.verdict).toBe('within')
})

test("the maker's torque wins, with its source, and shows the tension that it may give", () => {
  const told = screws('thread: M10, grade: 8.8, condition: oiled, torque: 45 N·m, source: works book p. 31')
  expect(figure(told, 'torque')).toMatchObject({ low: 45, high: 45, standing: 'told', source: 'works book p. 31' })
  expect(figure(told, 'tension that this torque may give')?.high).toBeCloseTo(45 / (0.12 * 0.01), 6)
  expect(figure(screws('torque: 45 N·m'), 'torque')?.source).toBe('told in the unit file, no source')
})

test('a torque too high for a slippery screw is not called within', () => {
  const told = screws('thread: M10, grade: 8.8, condition: oiled, torque: 60 N·m')
  expect(figure(told, 'tension that this torque may give')?.verdict).toBe('not known')
})

test("the maker's torque is not called wrong for a bolt of which nothing is known", () => {
  const told = screws('thread: M10, condition: oiled, torque: 45 N·m, source: works book p. 31')
  const tension = figure(told, 'tension that this torque may give')
  expect(tension?.high).toBeCloseTo(45 / (0.12 * 0.01), 6)
  expect(tension?.verdict).toBeUndefined()
  expect(told.missing).toContain('Give `grade` as on the heads: without it the tension is not held against the bolt.')
})

test('grade and condition that are not told are taken at their worst, and asked for', () => {
  const worst = screws('thread: M10')
  const known = screws('thread: M10, grade: 8.8, condition: oiled')
  expect(figure(worst, 'torque')?.high).toBeLessThan((figure(known, 'torque')?.low ?? 0) / 2)
  expect(figure(worst, 'torque')?.standing).toBe('supposed')
  expect(worst.missing.slice(0, 2)).toEqual([
    'Give `condition` of the threads: friction is taken at its worst both ways.',
    'Give `grade` as on the heads: it is taken as wrought iron, the weakest.',
  ])
})

test('rounds are worked out, or as told', () => {
  expect(screws('thread: M10, torque: 50 N·m').says.slice(0, 3)).toEqual([
    'Round 1, usual: 15 N·m (11.1 lbf·ft).',
    'Round 2, usual: 35 N·m (25.8 lbf·ft).',
    'Round 3, usual: 50 N·m (36.9 lbf·ft).',
  ])
  expect(screws('thread: M10, torque: 50 N·m, stages: [20 N·m, 50 N·m]').says.slice(0, 2)).toEqual([
    'Round 1, told: 20 N·m (14.8 lbf·ft).',
    'Round 2, told: 50 N·m (36.9 lbf·ft).',
  ])
})

test('a Whitworth screw is reckoned by its own stress area, smaller than that of the finer 1/2-13', () => {
  const [whitworth, unified] = ['1/2-12 BSW', '1/2-13 UNC'].map((thread) =>
    screws(`thread: ${thread}, condition: oiled, grade: '4.6'`),
  )
  expect(whitworth?.missing.join(' ')).not.toContain('stress area')
  expect(figure(whitworth!, 'torque')?.high).toBeLessThan(figure(unified!, 'torque')?.high as number)
})

test('a pipe thread is not reckoned as a bolt: the book is asked for', () => {
  const { missing, figures } = screws('thread: G 1/2, condition: oiled')
  expect(missing.join(' ')).toContain('a pipe thread is no bolt')
  expect(figures.map(({ label }) => label)).not.toContain('torque')
})

test('each length is judged in its hole, and a swap is told', () => {
  const found = screws(
    'thread: M10, hole depth: 24, thread depth: 21, lengths: {A: {length: 35, clamps: 16}, B: {length: 55, clamps: 36}}',
  )
  expect(figure(found, 'engagement of A')).toMatchObject({ verdict: 'within', limit: { low: 0.015 } })
  expect(figure(found, 'engagement of A')?.low).toBeCloseTo(0.019, 12)
  expect(figure(found, 'room under A at the bottom')?.low).toBeCloseTo(0.005, 12)
  expect(found.says).toContain('B in a hole of A bottoms: it feels tight and clamps nothing.')
  expect(found.says).toContain('A in a hole of B has too little thread.')
})

test('a screw that bottoms is out; a depth that is not told is asked for', () => {
  const bottoms = screws('thread: M10, hole depth: 15, thread depth: 14, clamps: 16, lengths: {A: {length: 35}}')
  expect(figure(bottoms, 'room under A at the bottom')?.verdict).toBe('out')
  expect(screws('thread: M10, clamps: 16, lengths: {A: {length: 35}}').missing).toContain(
    'Give `hole depth` for length A: whether it holds, and whether it bottoms.',
  )
})

test('dowels have no torque', () => {
  expect(() => setting('  pins: {kind: fasteners, holds: lid, dowels: true}')).toThrow('no setting')
})
