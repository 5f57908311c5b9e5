// Every reading of a job against the limits of its feature.
import type { Metre } from '../quantity/quantity.ts'
import type { Feature, Known, Limit, Unit } from '../unit/model/unit.ts'
import type { Job, Reading } from './model/job.ts'
import type { Judgement, ReadingVerdict, Verdicts } from './model/verdict.ts'

/**
 * Judges each reading by itself: a second reading stands beside the first and may say something else.
 *
 * A size that lies nearer to a limit than the uncertainty of its instrument proves neither that it is within nor that it is out.
 *
 * @source the rule of the uncertainty zone: ISO 14253-1 (from memory)
 * @example verdictsOf(unit, job).readings[0]?.is   // 'worn, usable'
 */
export function verdictsOf(unit: Unit, job: Job): Verdicts {
  const readings = job.readings.map((reading) => verdictOf(reading, unit, job))
  const measured = new Set(job.readings.filter(({ reads }) => reads).map(({ part, feature }) => `${part}.${feature}`))
  const unmeasured = [...unit.parts.values()].flatMap((part) =>
    part.features
      .filter((feature) => (feature.limitNew || feature.limitWorn) && !measured.has(`${part.id}.${feature.id}`))
      .map((feature) => ({ part: part.id, feature: feature.id, ...told(feature) })),
  )
  return { readings, unmeasured }
}

const told = ({ what, limitNew, limitWorn }: Feature) => ({
  ...(what !== undefined && { what }),
  ...(limitNew && { limitNew }),
  ...(limitWorn && { limitWorn }),
})

function verdictOf(reading: Reading, unit: Unit, job: Job): ReadingVerdict {
  const feature = unit.parts.get(reading.part)?.features.find(({ id }) => id === reading.feature)
  const uncertainty = reading.with === undefined ? undefined : job.plant.instruments.get(reading.with)?.uncertainty
  return {
    part: reading.part,
    feature: reading.feature,
    reading,
    ...(feature && told(feature)),
    ...(uncertainty && { uncertainty }),
    ...judged(reading.reads, feature, uncertainty?.high ?? 0),
  }
}

export interface Judged {
  readonly is: Judgement
  readonly because?: string
}

/** One size against the limits of its feature. */
export function judged(reads: Known<Metre> | undefined, feature: Feature | undefined, uncertainty: number): Judged {
  if (!reads) return { is: 'not known', because: 'It was tried and could not be read.' }
  if (!feature) return { is: 'not known', because: 'The unit has no such feature.' }
  const { limitNew, limitWorn } = feature
  if (!limitNew && !limitWorn) return { is: 'not known', because: 'No limit was told.' }
  const size = { low: reads.low - uncertainty, high: reads.high + uncertainty }
  // The limits for new, where there are any; a worn limit widens the side that it names.
  const first = limitNew ?? limitWorn ?? {}
  const inFirst = inside(size, first)
  if (inFirst === 'yes') return { is: 'within' }
  if (!limitNew || !limitWorn) return alone(inFirst, limitNew ? 'new' : 'worn')
  const inWorn = inside(size, { ...ends(limitNew), ...ends(limitWorn) })
  if (inWorn === 'no') return { is: 'out', because: 'Beyond the limit for worn.' }
  if (inWorn === 'not known')
    return { is: 'not known', because: 'Nearer to the limit for worn than the uncertainty of the reading.' }
  return inFirst === 'no'
    ? { is: 'worn, usable', because: 'Outside the limits for new, inside those for worn.' }
    : { is: 'worn, usable', because: 'Inside the limits for worn; nearer to a limit for new than the uncertainty.' }
}

function alone(answer: 'no' | 'not known', kind: 'new' | 'worn'): Judged {
  if (answer === 'not known')
    return { is: 'not known', because: `Nearer to the limit for ${kind} than the uncertainty of the reading.` }
  return kind === 'worn'
    ? { is: 'out', because: 'Beyond the limit for worn.' }
    : { is: 'not known', because: 'Outside the limits for new; how far it may wear was not told.' }
}

const ends = ({ low, high }: Pick<Limit, 'low' | 'high'>) => ({
  ...(low !== undefined && { low }),
  ...(high !== undefined && { high }),
})

/** Half a nanometre: what rounding in binary may take. */
const HAIR = 5e-10

/** Whether a size lies inside limits, both included; a size is a range where its instrument is uncertain. */
export function inside(
  size: { readonly low: number; readonly high: number },
  { low = -Infinity, high = Infinity }: { readonly low?: number; readonly high?: number },
): 'yes' | 'no' | 'not known' {
  if (size.low >= low - HAIR && size.high <= high + HAIR) return 'yes'
  return size.high < low - HAIR || size.low > high + HAIR ? 'no' : 'not known'
}
