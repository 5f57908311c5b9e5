import { printQuantity } from '../../../quantity/printQuantity.ts'
import type { FastenersGiven } from './given.ts'

/** Words for the torque stages that the file gives; where it gives none, the settings work them out. */
export function stagesText({ stages, torque }: FastenersGiven): string[] {
  const printed = (stages ?? (torque ? [torque] : [])).flatMap((stage) =>
    stage ? [printQuantity(stage.high, 'torque', { system: 'metric', both: true })] : [],
  )
  if (printed.length === 0) return []
  if (printed.length === 1) return [`Bring all to ${printed[0]}.`]
  return [`Bring all to ${printed.join(', then all to ')}.`]
}
