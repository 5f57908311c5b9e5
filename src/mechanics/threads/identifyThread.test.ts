import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inch, mm } from '../../quantity/constructors.ts'
import { identifyThread } from './identifyThread.ts'
import { KNOWN_THREADS } from './knownThreads.ts'

const names = (found: readonly { designation: string }[]) => found.map(({ designation }) => designation)

test('3/8-16 is not M10×1.5, and the other way round', () => {
  const inchScrew = identifyThread({ diameter: inch(0.371), of: 'screw', threadsPerInch: 16 })
  expect(names(inchScrew.matches)).toEqual(['3/8-16 BSW', '3/8-16 UNC'])
  expect(names(inchScrew.nearMisses)).toContain('M10×1.5')
  const metric = identifyThread({ diameter: mm(9.85), of: 'screw', pitch: mm(1.5) })
  expect(names(metric.matches)).toEqual(['M10×1.5'])
  expect(metric.isSure).toBe('yes')
  expect(names(metric.nearMisses)).toContain('3/8-16 UNC')
})

test('1/2-12 Whitworth and 1/2-13 unified are told apart by the pitch and named to each other', () => {
  const whitworth = identifyThread({ diameter: inch(0.496), of: 'screw', threadsPerInch: 12 })
  expect(names(whitworth.matches)).toEqual(['1/2-12 BSW'])
  expect(names(whitworth.nearMisses)).toContain('1/2-13 UNC')
  const unified = identifyThread({ diameter: inch(0.496), of: 'screw', threadsPerInch: 13 })
  expect(names(unified.matches)).toEqual(['1/2-13 UNC'])
  expect(unified.nearMisses.find(({ designation }) => designation === '1/2-12 BSW')?.says).toBe(
    '1/2-12 BSW: measured 0.102 mm below its 12.7 mm; pitch 2.117 mm, so that 10 threads are 1.628 mm longer than measured.',
  )
})

test('where only the flanks differ it is not known, and the gauge settles it', () => {
  const open = { diameter: inch(0.247), of: 'screw', threadsPerInch: 20 } as const
  expect(identifyThread(open).isSure).toBe('not known')
  expect(identifyThread(open).cautions.join(' ')).toContain('60°, 55° tell them apart')
  expect(names(identifyThread({ ...open, flankAngle: 55 }).matches)).toEqual(['1/4-20 BSW'])
})

test('0 BA and M6 share size and pitch, and a tapped hole is judged by its bore', () => {
  const six = identifyThread({ diameter: mm(5.95), of: 'screw', pitch: mm(1) })
  expect(names(six.matches)).toEqual(['0 BA', 'M6×1'])
  expect(names(identifyThread({ diameter: mm(8.5), of: 'hole', pitch: mm(1.5) }).matches)).toEqual(['M10×1.5'])
})

test('a pitch known only roughly leaves it open', () => {
  const rough = identifyThread({ diameter: mm(9.5), of: 'screw', pitch: { low: mm(1.4), high: mm(1.65) } })
  expect(rough.isSure).toBe('not known')
})

test('a special thread is no thread that is held here', () => {
  expect(identifyThread({ diameter: mm(11.3), of: 'screw', pitch: mm(2.9) }).isSure).toBe('no')
  expect(() => identifyThread({ diameter: mm(10), of: 'screw' })).toThrow('Neither pitch nor threads per inch')
})

test('every thread held, measured a little worn, is among its own matches, in inch or metric alike (seed 68)', () => {
  const worn = fc.double({ min: 0, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.constantFrom(...KNOWN_THREADS),
      worn,
      fc.constantFrom<'screw' | 'hole'>('screw', 'hole'),
      (thread, share, of) => {
        const basic = thread.nominalDiameter - (of === 'hole' ? thread.form.toMinorDiameter * thread.pitch : 0)
        const off = share * 0.15 * thread.pitch
        const diameter_mm = (basic + (of === 'hole' ? off : -off)) * 1000
        const metric = identifyThread({ diameter: mm(diameter_mm), of, pitch: thread.pitch })
        const inches = identifyThread({ diameter: inch(diameter_mm / 25.4), of, threadsPerInch: 0.0254 / thread.pitch })
        expect(names(metric.matches)).toContain(thread.designation)
        expect(names(inches.matches)).toEqual(names(metric.matches))
      },
    ),
    { seed: 68, numRuns: 300 },
  )
})
