import { expect, test } from 'vitest'
import { workOut } from '../frame/workOut.ts'
import { THREADS } from './threads.ts'
import { TIGHTENING } from './tightening.ts'

const work = (name: string, typed: Readonly<Record<string, string>>) =>
  workOut([...THREADS, ...TIGHTENING].find((figure) => figure.name === name)!, {
    typed: new Map(Object.entries(typed)),
  })
const lines = (name: string, typed: Readonly<Record<string, string>>) =>
  Object.fromEntries(work(name, typed).results.map(({ name, says }) => [name, says]))

test('a pitch in threads per inch is read wherever a pitch is asked for', () => {
  const counted = { diameter: '0.494 in', of: 'screw' }
  expect(lines('which-thread', { ...counted, pitch: '12 tpi' })).toEqual(
    lines('which-thread', { ...counted, 'threads-per-inch': '12' }),
  )
  // Shigley, 9th ed., Table 8-2: 0.1419 in² for 1/2-13 UNC.
  for (const pitch of ['13 tpi', '13tpi', '13 TPI', '13 t.p.i.', '13 threads per inch'])
    expect(lines('inch-stress-area', { 'nominal-diameter': '1/2 in', pitch })).toEqual({ 'stress area': '0.1419 in²' })
  const { low } = work('thread-diameters', { 'nominal-diameter': '1 in', pitch: '8..10 tpi' }).results[0]!
  expect(low! / 0.0254).toBeCloseTo(1 - 0.649519 / 8, 9)
})

test('no threads in an inch is refused', () => {
  expect(() => work('inch-stress-area', { 'nominal-diameter': '1/2 in', pitch: '0 tpi' })).toThrow(
    'has no thread in an inch',
  )
})

test('a torque without a grade is that of the weakest iron, and says how to get a better one', () => {
  const typed = { thread: '1/2-13 UNC', condition: 'oiled' }
  const unknown = work('torque', typed)
  expect(lines('torque', typed).torque).toBe(lines('torque', { ...typed, grade: 'wrought iron' }).torque)
  expect(unknown.taken[0]).toContain('taken as wrought iron, the weakest held here')
  expect(unknown.cautions.join(' ')).toContain('clean the head and read its mark')
  expect(unknown.cautions.join(' ')).toContain('psi')
  expect(work('torque', { ...typed, grade: '9.3' }).cautions[0]).toContain("'9.3' is no grade held here")
  expect(work('bolt-strength', { thread: 'M12', grade: '9.3' }).cautions[0]).toContain("'9.3' is no grade held here")
})

test('a bare figure on the head of a unified screw is an SAE grade, on another it is none', () => {
  expect(lines('bolt-strength', { thread: '1/2-13 UNC', grade: '5' })['grade that was taken']).toBe('SAE 5')
  expect(lines('bolt-strength', { thread: 'M12', grade: '5' })['grade that was taken']).toBe('wrought iron')
})

test('a way of tightening that nobody knows counts as done by feel', () => {
  expect(lines('scatter', {})).toEqual(lines('scatter', { method: 'by feel or impact' }))
})

test('an engagement for a hole as strong as the screw says that a weaker one wants more', () => {
  const { cautions } = work('stripping', {
    thread: '1/2-13 UNC',
    'nut-minor-diameter': '0.434 in',
    'screw-pitch-diameter': '0.4435 in',
  })
  expect(cautions[0]).toContain('it strips first, so tell strength-ratio')
})
