import { expect, test } from 'vitest'
import { readUnit } from '../unit/file/readUnit.ts'
import { readJob } from './file/readJob.ts'
import { kitOf } from './kit.ts'

const UNIT = `matchmark: unit/1
unit: x
housing: box
sizes: {in: mm}
parts:
  box: {}
  shaft: {features: {seat: {new: 40..40.01, worn: 39.99.., source: sheet 1}}, supply: {from: the turner}}
  cone: {number: 30208 cone, supply: {from: bearing factor, price: £9, lead: 3 days}}
  cup: {number: 30208 cup}
  seal: {life: renew}
  cover: {}
  cover shims: {goes with: cover, kind: shims}
  screws: {pieces: 6, life: renew, goes with: cover}
connections:
  joint: {kind: gasket, squeezed by: cover, sealant: {what: joint sealant}}
  cover screws: {kind: fasteners, holds: cover, into: box, screws: screws, lock: {with: lock wire}}
fills:
  oil: {litres: 4.5, what: gear oil}
sets: {bearing: {parts: [cone, cup], why: run together}}
`

function kit(job?: string, renewals: Parameters<typeof kitOf>[2] = []) {
  const { unit, faults } = readUnit(UNIT, 'x.unit.yaml')
  const read =
    job === undefined
      ? undefined
      : readJob(`matchmark: job/1\njob: J1\nunit: x.unit.yaml\nsizes: {in: mm}\n${job}`, 'x.job.yaml')
  if (!unit || (read && !read.job)) throw new Error([...faults, ...(read?.faults ?? [])].map(String).join('\n'))
  return kitOf(unit, read?.job, renewals)
}
const names = (lines: ReturnType<typeof kit>) => lines.map(({ what }) => what)

test('without a job it lists what will be wanted anyway', () => {
  expect(names(kit())).toEqual(['seal', 'screws', 'cover shims', 'gear oil', 'joint sealant', 'lock wire'])
  expect(kit().find(({ what }) => what === 'screws')?.pieces).toBe(6)
  expect(kit().find(({ what }) => what === 'gear oil')?.amount).toBe('4.5 l')
})

test('a size that is out rejects its part, with the limit that says so', () => {
  const [line] = kit('readings: [{part: shaft, feature: seat, reads: 39.97}]')
  expect(line).toMatchObject({
    group: 'rejected',
    what: 'shaft',
    from: 'the turner',
    why: [{ says: 'seat: Beyond the limit for worn.', source: 'sheet 1' }],
  })
})

test('a decision to repair takes a rejected part off the list again', () => {
  expect(
    names(kit('readings: [{part: shaft, feature: seat, reads: 39.97}]\nas found: {shaft: {decision: repair}}')),
  ).not.toContain('shaft')
})

test('what only goes together is bought together', () => {
  const lines = kit('as found: {cone: {decision: renew, condition: pitted}}')
  expect(lines[0]).toMatchObject({
    what: 'cone',
    number: '30208 cone',
    price: '£9',
    lead: '3 days',
    why: [{ says: 'Decided: renew (pitted).' }],
  })
  expect(lines.find(({ what }) => what === 'cup')).toMatchObject({
    group: 'completes a set',
    why: [{ says: 'Goes only with cone: run together.' }],
  })
})

test('a part stands once with all its reasons', () => {
  const lines = kit('as found: {seal: {decision: renew}}', [
    { part: 'seal', why: 'A seal is renewed.', standing: 'told', source: 'a manual' },
  ])
  const seals = lines.filter(({ part }) => part === 'seal')
  expect(seals).toHaveLength(1)
  expect(seals[0]).toMatchObject({ group: 'rejected' })
  expect(seals[0]?.why.map(({ says }) => says)).toEqual(['Decided: renew.', 'Always renewed.', 'A seal is renewed.'])
})

test('a renewal yields to the decision to use the part again', () => {
  const pulled = [{ part: 'cup', why: 'renewed if pulled', standing: 'told' as const }]
  expect(names(kit('as found: {cup: {decision: reuse}}', pulled))).not.toContain('cup')
  expect(names(kit('', pulled))).toContain('cup')
})

test('shims are wanted only where none lie in stock', () => {
  expect(names(kit('shims in stock: [{id: S1, reads: 0.1, for: cover shims}]'))).not.toContain('cover shims')
  expect(names(kit('shims in stock: [{id: S1, reads: 0.1, for: cover}]'))).toContain('cover shims')
})
