// The sizes that were measured take the place of the ones that were written down.
import { printQuantity } from '../quantity/printQuantity.ts'
import type { Metre } from '../quantity/quantity.ts'
import type { Feature, Known, Part, Unit } from '../unit/model/unit.ts'
import type { Job, Reading } from './model/job.ts'

/**
 * The unit as this job has measured it: a reading replaces the size of its feature. Several readings of one feature give the range from
 * the smallest to the largest; the single ones stay in the job. A reading whose feature is not there is left alone (checkJobAgainst tells it).
 */
export function withReadings(unit: Unit, job: Job): Unit {
  const parts = new Map([...unit.parts].map(([id, part]) => [id, measured(part, job.readings)]))
  return { ...unit, parts }
}

function measured(part: Part, readings: readonly Reading[]): Part {
  const own = readings.filter((reading) => reading.part === part.id && reading.reads)
  if (own.length === 0) return part
  return { ...part, features: part.features.map((feature) => withSize(feature, own)) }
}

function withSize(feature: Feature, readings: readonly Reading[]): Feature {
  const own = readings.filter((reading) => reading.feature === feature.id)
  const sizes = own.flatMap(({ reads }) => reads ?? [])
  const low = sizes.map((size) => size.low).sort((a, b) => a - b)[0]
  const high = sizes.map((size) => size.high).sort((a, b) => b - a)[0]
  if (low === undefined || high === undefined) return feature
  const size: Known<Metre> = {
    low,
    high,
    standing: sizes.find(({ standing }) => standing !== 'seen')?.standing ?? 'seen',
    source: own.map(sourceOf).join('; '),
  }
  return { ...feature, size }
}

const sourceOf = ({ with: instrument, by, date, temperature, where }: Reading): string => {
  const warm = temperature && `at ${printQuantity(temperature.low, 'temperature', { system: 'metric' })}`
  return [instrument, where, warm, by, date].filter(Boolean).join(', ') || 'reading of the job'
}
