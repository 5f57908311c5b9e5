import type { Unit } from '../../model/unit.ts'
import { printIn } from '../figure.ts'
import type { FastenersGiven } from './given.ts'

/** The torques that the file gives, one for each stage, in their order. */
export const stagesOf = ({ stages, torque }: FastenersGiven, unit: Unit): string[] =>
  (stages ?? (torque ? [torque] : [])).flatMap((stage) =>
    stage ? [`all to ${printIn(unit, { low: stage.high, high: stage.high }, 'torque')}`] : [],
  )

/** The same as one piece of work; where the file gives none, the settings work them out. */
export function stagesText(given: FastenersGiven, unit: Unit): string[] {
  const stages = stagesOf(given, unit)
  return stages.length > 0 ? [`Bring ${stages.join(', then ')}.`] : []
}
