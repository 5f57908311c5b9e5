// What figures of oil and air say where a wrong number would throw a cover or burst a pipe.
import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const ask = (...words: string[]) => say(['figure', ...words])

test('an air test above the ceiling is refused, with what to do, also where only the upper end of a range is', async () => {
  for (const pressure of ['10 psi', '3..10 psi', '0.5 bar']) {
    const { out, err, code } = await ask('cover-force', `pressure=${pressure}`, 'area=186 in²')
    expect(code).toBe(1)
    expect(out).toBe('')
    expect(err).toMatch(/above the ceiling/)
    expect(err).toMatch(/fill with oil/)
  }
  expect((await ask('cover-force', 'pressure=10 psi', 'area=186 in²')).err).toMatch(
    /10 psi is above the ceiling of 5 psi/,
  )
  const { out, code } = await ask('cover-force', 'pressure=3 psi', 'area=186 in²', 'fasteners=12')
  expect(code).toBe(0)
  expect(out).toMatch(/558 lbf/)
  expect(out).toMatch(/regulator, relief valve/)
})

test('a tube is told at its thinnest wall and lowest strength', async () => {
  const { out } = await ask('tube-rating', 'outside=12 mm', 'wall=1.4..1.5 mm', 'strength=310..400 MPa', '--json')
  const [working] = JSON.parse(out).results as { low: number; high: number }[]
  expect(working!.low).toBe(working!.high)
  expect(working!.low).toBeCloseTo((2 * 310e6 * 1.4) / 12 / 4, 0)
})

test('a relief valve tells how far below and above the weakest part the circuit goes at full flow', async () => {
  const { out } = await ask('relief-setting', 'working=2200 psi', 'weakest=2500 psi')
  expect(out).toMatch(/there is no room/)
  expect(out).toMatch(/below the weakest part by: *−525\.?\d*\.\.−162/)
})
