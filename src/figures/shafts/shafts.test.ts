import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const namesOf = async (readings: string) => {
  const { out } = await say(['figure', 'run-out', `readings=${readings}`, '--json'])
  return JSON.parse(out).results.map(({ name }: { name: string }) => name)
}

test('a shaft that is oval but not bent has no high side to straighten', async () => {
  const high = 'highest at, from the first reading'
  expect(await namesOf('10, 0, -10, 0, 10, 0, -10, 0 µm')).not.toContain(high)
  expect(await namesOf('20, 10, -10, -25, -12, 9 µm')).toContain(high)
})

test('a ring that flies is told of wherever its thrust is asked', async () => {
  for (const asked of [
    ['ring-thrust', 'diameter=40 mm', 'depth=1.25 mm', 'strength=200 MPa', 'factor=1', 'safety=2'],
    ['groove-thrust', 'diameter=40 mm', 'groove-diameter=37.5 mm'],
  ]) {
    const { out } = await say(['figure', ...asked])
    expect(out).toContain('A ring under spring or end load flies')
    expect(out.replace(/\s+/g, ' ')).toContain('A chamfer or a radius on the part that pushes')
  }
})

test('what fails at a torque or a force is not told as what may be carried', async () => {
  const said = async (...asked: string[]) => (await say(['figure', ...asked])).out.replace(/\s+/g, ' ')
  const shear = 'shear-strength=200 MPa'
  const section = ['length=50 mm', 'shaft=50 mm', 'width=14 mm', 'height=9 mm', 'bearing-strength=300 MPa']
  expect(await said('key-torque', ...section, shear)).toContain('Nothing is in hand')
  expect(await said('pin-shear', 'diameter=8 mm', 'planes=two', shear)).toContain('not what it may carry')
  expect(await said('pin-torque', 'pin=8 mm', 'shaft=40 mm', shear)).toContain('not what it may carry')
  expect(await said('shaft-stress', 'diameter=40 mm', 'torque=500 N·m')).toContain('give the bending moment')
})
