// What every answer says of the file that it is about.
import type { WorkUp } from '../job/workUp.ts'
import type { System } from '../quantity/printQuantity.ts'
import type { Asked } from './asked.ts'

/** For machines. */
export const aboutWork = (file: string, { unit, variant, job }: WorkUp) => ({
  file,
  unit: unit.name,
  variant: variant ?? null,
  job: job?.id ?? null,
})

/** For people: `reversing gearcase · job J41 · serial 1204 · variant late`. */
export const titleOf = ({ unit, variant, job }: WorkUp): string =>
  [
    unit.name,
    job && `job ${job.id}`,
    job?.serial && `serial ${job.serial}`,
    variant && `variant ${variant}`,
    unit.invented && 'invented',
  ]
    .filter(Boolean)
    .join(' · ')

/** A line for those who read in other units than the file is in: the reasons keep the file's. */
export function unitsNote({ unit }: WorkUp, { system }: Asked): string[] {
  const unitsOfFile: System = unit.lengthUnit === 'in' ? 'inch' : 'metric'
  if (system === undefined || system === unitsOfFile) return []
  return [`Sizes in the reasons are in ${unit.lengthUnit}, as the unit file has them.`]
}

/** The units in which a person reads: as asked, else those of the file. */
export const systemOf = ({ unit }: WorkUp, { system }: Asked): System =>
  system ?? (unit.lengthUnit === 'in' ? 'inch' : 'metric')
