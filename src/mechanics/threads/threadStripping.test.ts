import { expect, test } from 'vitest'
import { inch, megapascal, metre, mm, psi, squareMetre, thou } from '../../quantity/constructors.ts'
import { materialOf } from '../materials.ts'
import { rangeOf } from '../range.ts'
import { knownThread } from './knownThreads.ts'
import { strippingEngagement } from './requiredEngagement.ts'
import { threadGeometry } from './threadGeometry.ts'
import { threadStripping } from './threadStripping.ts'

const steelHole = { ...materialOf('steel'), tensileStrength: rangeOf(megapascal(800)) }

/**
 * The thread drawn as a zigzag of straight flanks and cut by cylinders: how much of each cylinder lies in the metal, counted
 * point by point along the engaged length. Nothing here knows a formula for areas.
 */
function countedAreas(
  designation: string,
  { length, outside, bore }: { length: number; outside: number; bore: number },
) {
  const { form, pitch } = knownThread(designation)
  const { pitchDiameter } = threadGeometry(designation)
  const steep = 1 / Math.tan((form.flankAngle * Math.PI) / 360)
  /** Radius of the flank that parts screw and hole, at a place along the axis. */
  const boundary = (z: number) => {
    const turn = z / pitch - Math.floor(z / pitch)
    return pitchDiameter / 2 + (0.25 - Math.abs(turn - 0.5)) * pitch * steep
  }
  const points = 400_000
  let [screw, hole] = [0, 0]
  for (let at = 0; at < points; at++) {
    const radius = boundary(((at + 0.5) / points) * length)
    if (radius > bore / 2) screw++
    if (radius < outside / 2) hole++
  }
  return { screw: (screw / points) * length * Math.PI * bore, hole: (hole / points) * length * Math.PI * outside }
}

test.each([
  ['M10', 9.8, 8.6],
  ['1/2-13 UNC', 12.5, 10.9],
  ['1/2-12 BSW', 12.6, 10.4],
  ['2 BA', 4.6, 3.8],
])('what has to shear of %s is what a drawn thread shows', (designation, outside, bore) => {
  const { pitch } = knownThread(designation)
  const length = metre(8 * pitch)
  const sizes = { length, outside: mm(outside), bore: mm(bore) }
  const { screwArea, holeArea } = threadStripping({
    ...{ designation, engagement: length, screwTensile: megapascal(800), hole: 'steel' },
    ...{ screwMajor: sizes.outside, holeMinor: sizes.bore },
  })
  const counted = countedAreas(designation, sizes)
  expect(screwArea.low / counted.screw).toBeCloseTo(1, 4)
  expect(holeArea.low / counted.hole).toBeCloseTo(1, 4)
})

test('with shear at half of tensile strength it wants the engagement of the standard formula', () => {
  const [bore, { pitchDiameter, stressArea }] = [thou(434), threadGeometry('1/2-13 UNC')]
  const wanted = threadStripping({
    ...{ designation: '1/2-13 UNC', engagement: inch(0.5), screwTensile: psi(120000), shearShare: 0.5 },
    ...{ holeMinor: bore, hole: { ...steelHole, tensileStrength: rangeOf(psi(500000)) } },
  }).engagementWanted
  expect(wanted).toBeCloseTo(
    strippingEngagement({
      ...{ stressArea: squareMetre(stressArea as number), pitch: inch(1 / 13) },
      ...{ nutMinorDiameter: bore, screwPitchDiameter: pitchDiameter },
    }),
    8,
  )
})

test('in steel of its own strength a screw wants about one diameter at most, in grey iron more, in aluminium too', () => {
  const wanted = (hole: Parameters<typeof threadStripping>[0]['hole']) =>
    threadStripping({ designation: 'M12', engagement: mm(12), screwTensile: megapascal(800), hole }).engagementWanted /
    mm(12)
  expect(wanted(steelHole)).toBeLessThan(1)
  expect(wanted('grey iron class 40')).toBeGreaterThan(1)
  expect(wanted('aluminium')).toBeGreaterThan(wanted('grey iron class 40'))
  expect(wanted('what nobody knows')).toBeGreaterThanOrEqual(wanted('aluminium'))
})

test('says what goes first, and that it is open where the strengths are', () => {
  const case1 = { designation: 'M10', screwTensile: megapascal(800), hole: steelHole } as const
  expect(threadStripping({ ...case1, engagement: mm(12) }).screwBreaksFirst).toBe('yes')
  expect(threadStripping({ ...case1, engagement: mm(3) }).screwBreaksFirst).toBe('no')
  expect(threadStripping({ ...case1, engagement: mm(15), hole: 'grey iron' }).screwBreaksFirst).toBe('not known')
  expect(threadStripping({ ...case1, engagement: mm(15), hole: 'grey iron' }).cautions.join(' ')).toContain('Brittle')
})

test('a hole drilled too large carries less', () => {
  const at = (bore: number) =>
    threadStripping({
      ...{ designation: 'M10', engagement: mm(10), screwTensile: megapascal(800), hole: 'grey iron' },
      holeMinor: mm(bore),
    })
  expect(at(8.9).screwStrips.high).toBeLessThan(at(8.4).screwStrips.high)
  expect(() => at(9.3)).toThrow('the bore of the hole')
})

test('refuses pipe threads', () => {
  const pipe = { engagement: mm(10), screwTensile: megapascal(400), hole: 'grey iron' } as const
  expect(() => threadStripping({ ...pipe, designation: 'G 1/2' })).toThrow('G 1/2 is a pipe thread')
  expect(() => threadStripping({ ...pipe, designation: '1/2 NPT' })).toThrow('1/2-14 NPT is a pipe thread')
})
