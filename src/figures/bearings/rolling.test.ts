// What the figure of rolling torque says to a rebuilder with a string, a scale and the book's two ranges.
import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const BOOK = ['drum-diameter=4 in', 'for-new=20..32 lbf·in', 'for-used=8..15 lbf·in']
const ask = (...words: string[]) => say(['figure', 'rolling-torque-right', ...BOOK, ...words])

test('too tight for used bearings speaks against the work; for new ones the same reading is right', async () => {
  const used = await ask('force=12 lbf', 'bearings=used')
  expect(used.code).toBe(1)
  expect(used.out).toMatch(/it is right: *no/)
  expect(used.out).toMatch(/scale has to read: *4(\.0)?\.\.7\.5 lbf/)
  const fresh = await ask('force=12 lbf', 'bearings=new')
  expect(fresh.code).toBe(0)
  expect(fresh.out).toMatch(/it is right: *yes/)
})

test('not told whether they are new, or with another’s range: not known, and what was taken is said', async () => {
  const { out, code } = await ask('force=12 lbf')
  expect(code).toBe(0)
  expect(out).toMatch(/it is right: *not known/)
  expect(out).toMatch(/seal drag: not told, so the seal is not fitted/)
})
