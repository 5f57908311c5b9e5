import type { NewtonMetre } from '../../../quantity/quantity.ts'
import type { Known, Unit } from '../../model/unit.ts'
import { printIn } from '../figure.ts'
import type { FastenersGiven } from './given.ts'

/** The torques that the file gives, one for each stage, in their order; N·m. */
export const torquesOf = ({ stages, torque }: FastenersGiven): readonly Known<NewtonMetre>[] =>
  (stages ?? (torque ? [torque] : [])).filter((stage) => stage !== undefined)

/** The same in words. */
export const stagesOf = (given: FastenersGiven, unit: Unit): string[] =>
  torquesOf(given).map((stage) => `all to ${printIn(unit, { low: stage.high, high: stage.high }, 'torque')}`)

/** The same as one piece of work; where the file gives none, the settings work them out. */
export function stagesText(given: FastenersGiven, unit: Unit): string[] {
  const stages = stagesOf(given, unit)
  return stages.length > 0 ? [`Bring ${stages.join(', then ')}.`] : []
}
