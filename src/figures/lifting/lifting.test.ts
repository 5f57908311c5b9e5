import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

test('a load that is too much for one person is answered no, and that is no good answer', async () => {
  const lift = ['figure', 'by-hand', 'horizontal=30 cm', 'height=75 cm', 'travel=40 cm']
  const heavy = await say([...lift, 'mass=25 kg'])
  expect(heavy.out).toMatch(/one person may lift it: +no/)
  expect(heavy.code).toBe(1)
  const light = await say([...lift, 'mass=5 kg'])
  expect(light.out).toMatch(/one person may lift it: +yes/)
  expect(light.code).toBe(0)
})

test('a basket that is not upright is told to count less', async () => {
  const { out } = await say(['figure', 'sling-mode', 'mode=basket'])
  expect(out).toContain('twice only with both parts upright')
})

test('each leg is told in the unit of a plate as well', async () => {
  const { out } = await say([
    ...['figure', 'sling-legs', 'mass=1000 kg', 'along=0 mm', 'across=0 mm', 'up=0 mm', 'hook-height=500 mm'],
    'eyes=a, -500, 0, 300 mm; b, 500, 0, 300 mm',
  ])
  expect(out).toMatch(/leg a: its plate has to say at least: +707\.1 kg/)
  expect(out.replace(/\s+/g, ' ')).toContain('keeps only a share of what its plate says: figure eyebolt')
})

test('two eyes, or two parts, of one name are both told', async () => {
  const legs = await say([
    ...['figure', 'sling-legs', 'mass=1000 kg', 'along=0 mm', 'across=0 mm', 'up=0 mm', 'hook-height=700 mm'],
    'eyes=eye, -200, 0, 300 mm; eye, 600, 0, 300 mm',
  ])
  const carried = [...legs.out.matchAll(/leg eye \((\d)\) carries at most: +(\d+) N/g)].map(([, at, force]) => [
    at,
    force,
  ])
  expect(carried).toEqual([
    ['1', '7649'],
    ['2', '3229'],
  ])
  const grows = await say([
    'figure',
    'mass-as-it-grows',
    'parts=wheel, 60 kg, 0, 0, 200 mm; wheel, 20 kg, 0, 0, 200 mm',
  ])
  expect(grows.out).toMatch(/with wheel \(1\): +60 kg/)
  expect(grows.out).toMatch(/with wheel \(2\): +80 kg/)
})
