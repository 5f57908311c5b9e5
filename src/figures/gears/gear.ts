// What several figures ask of a gear.
import { exact, number, optional, told, whole } from '../frame/ask.ts'

export const module = told(
  exact('length'),
  'module, square to the tooth; from a diametral pitch: figure module-from-diametral-pitch',
)
export const pressureAngle = told(exact('angle'), 'pressure angle: 14.5° on many old inch gears, 20° on most others')
export const helixAngle = optional(told(exact('angle'), 'helix angle at the pitch circle; left out 0°, a spur gear'))
export const shift = optional(told(number, 'profile shift in modules, outward above zero; left out 0'))

/** One spur or helical gear. */
export const gear = { module, teeth: told(whole, 'number of teeth'), pressureAngle, helixAngle, shift }

/** Two gears in mesh. */
export const pair = {
  module,
  pressureAngle,
  helixAngle,
  pinionTeeth: told(whole, 'teeth of the pinion'),
  wheelTeeth: told(whole, 'teeth of the wheel'),
}
