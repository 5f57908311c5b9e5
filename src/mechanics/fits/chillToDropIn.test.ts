import { expect, test } from 'vitest'
import { celsius, inch, micrometre, mm } from '../../quantity/constructors.ts'
import { chillToDropIn } from './chillToDropIn.ts'
import { dropOn, LITTLE_SLIP } from './dropOn.ts'

const bush = {
  diameter: mm(50),
  interference: micrometre(20),
  inner: { material: 'bronze', kind: 'plain part' },
  room: celsius(20),
}

test('says the same as the chilling way of dropping on', () => {
  const { chill } = dropOn({ ...bush, outer: { material: 'grey iron', kind: 'plain part' } })
  const alone = chillToDropIn(bush)
  expect(alone.innerAt).toBeCloseTo(chill.innerAt, 9)
  expect(alone.slip.low).toBeCloseTo(chill.slip.low, 12)
})

test('goes to the limit and shows the slip that is left', () => {
  const tight = chillToDropIn({ ...bush, interference: micrometre(90) })
  expect(tight.innerAt).toBeCloseTo(celsius(-78), 9)
  expect(tight.wouldNeed).toBeLessThan(tight.innerAt)
  expect(tight.hasWantedSlip).toBe(false)
  expect(tight.dropsIn).toBe('not known')
})

test("the maker's narrower limit wins, a wider one does not", () => {
  const at = (degrees: number) =>
    chillToDropIn({ ...bush, interference: micrometre(90), inner: { ...bush.inner, notBelow: celsius(degrees) } })
  expect(at(-40).innerAt).toBe(celsius(-40))
  expect(at(-40).coldest.source).toBe('told for this part')
  expect(at(-150).innerAt).toBeCloseTo(celsius(-78), 9)
})

test('a part that is loose already is not warmed', () => {
  expect(chillToDropIn({ ...bush, interference: micrometre(-300) }).innerAt).toBe(celsius(20))
})

test('refuses a room outside and a slip of an inch', () => {
  expect(() => chillToDropIn({ ...bush, room: celsius(60) })).toThrow('the room temperature')
  expect(() => chillToDropIn({ ...bush, slip: inch(1) })).toThrow('the wanted slip')
})

test('no slip at all is not said to drop in, to the last bit', () => {
  for (const interference of [10, 13, 17, 20, 23]) {
    const none = chillToDropIn({ ...bush, interference: micrometre(interference), slip: mm(0) })
    expect(none.dropsIn, `${interference}`).toBe('not known')
  }
})

test('a slip that is left but less than wanted is said to be little', () => {
  const little = chillToDropIn({ ...bush, interference: micrometre(70) })
  expect([little.dropsIn, little.hasWantedSlip]).toEqual(['yes', false])
  expect(little.cautions).toContain(LITTLE_SLIP)
  expect(chillToDropIn({ ...bush, slip: micrometre(10) }).cautions).not.toContain(LITTLE_SLIP)
})
