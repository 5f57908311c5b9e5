import { printQuantity } from '../../../quantity/printQuantity.ts'
import type { HoleMap, Kind } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { lengthsOf, orderOf, placesOf } from './places.ts'
import { stagesOf, torquesOf } from './stages.ts'

export const drawing: Kind<FastenersGiven>['drawing'] = (connection, given, unit) => {
  const holes = placesOf(given)
  if (holes.length === 0) return { marks: [], maps: [] }
  const system = unit.lengthUnit === 'in' ? 'inch' : 'metric'
  const map: HoleMap = {
    connection: connection.id,
    holes,
    order: orderOf(given),
    stages: stagesOf(given, unit),
    torques: torquesOf(given),
    lengths: lengthsOf(given).map(({ letter, length, holes: named }) => ({
      letter,
      text: length ? printQuantity(length.high, 'length', { system }) : 'length not told',
      pieces: named.length || holes.filter((hole) => hole.letter === letter).length,
    })),
  }
  const text = `${connection.id}: ${holes.length} places${given.thread ? `, ${given.thread.designation}` : ''}`
  return { marks: [{ at: given.holds, mark: 'hole map', text }], maps: [map] }
}
