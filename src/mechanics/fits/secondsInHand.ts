import { kelvin, kelvinDifference, metre, second } from '../../quantity/constructors.ts'
import type { Kelvin, Metre, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Known, type Range, spread } from '../range.ts'
import { warmingToDropOn } from './warmingToDropOn.ts'

export interface SecondsInHand {
  /** Temperature at which the slip is used up; measured from room temperature. */
  readonly gripsAt: Range<Kelvin>
  /** Time in still air from the oven until then. */
  readonly seconds: Range<Second>
  readonly cautions: readonly string[]
  readonly source: string
}

/** Heat given off in still air by convection and radiation, W/m²K; from memory, 10 to 100 K above the room. */
const STILL_AIR = { low: 8, high: 25 }

/**
 * How long a warmed ring stays large enough to drop on, once it is out of the oven: the time to carry it and line it up.
 * The ring is taken as one lump that cools in still air on all its faces, which is true for metal rings in air (the heat
 * moves far quicker inside than out of them). As soon as it touches the cold shaft it grips within seconds: that part is
 * not reckoned. A chilled part counts alike with its temperatures turned round.
 *
 * @param outside, inside, width of the ring
 * @param fitDiameter diameter of the joint
 * @param material of the ring
 * @param takenAt temperature as it leaves the oven (or the cold)
 * @param room room temperature, which the other part has
 * @param interference symbol δ, at one temperature
 * @param airCoefficient symbol h in W/m²K; left out 8 to 25, still air
 * @returns the temperature at which it grips and the seconds until then; none left gives 0
 * @throws VALUE_OUTSIDE, HUB_INSIDE_SHAFT
 * @source Newton's law of cooling, t = ρ c V / (h A) ln(ΔT start / ΔT end) (lumped, as in Incropera, Fundamentals of Heat and Mass Transfer); h from memory
 * @example secondsInHand({ outside: mm(120), inside: mm(65), width: mm(23), fitDiameter: mm(65), material: 'bearing steel', takenAt: celsius(110), room: celsius(20), interference: micrometre(30) }).seconds.low   // 706 s
 */
export function secondsInHand({
  outside,
  inside,
  width,
  fitDiameter,
  material,
  takenAt,
  room,
  interference,
  airCoefficient = STILL_AIR,
}: {
  readonly outside: Metre
  readonly inside: Metre
  readonly width: Metre
  readonly fitDiameter: Metre
  readonly material: Material | MaterialName | (string & {})
  readonly takenAt: Kelvin
  readonly room: Kelvin
  readonly interference: Known<Metre>
  readonly airCoefficient?: Known<number>
}): SecondsInHand {
  requireAboveZero('the width of the ring', width, 'm')
  requireAboveZero('the joint diameter', fitDiameter, 'm')
  requireWithin('the inside of the ring', inside, { low: 0, high: outside * (1 - 1e-9), unit: 'm' })
  requireWithin('the heat given off in W/m²K', airCoefficient, { low: 1, high: 500, unit: '' })
  const { density, specificHeat, expansion, source } = materialOf(material)
  const ring = outside ** 2 - inside ** 2
  const volume = (Math.PI / 4) * ring * width
  const surface = Math.PI * (outside + inside) * width + (Math.PI / 2) * ring
  const start = Math.abs(takenAt - room)
  const ends = spread({ interference, expansion }, (exact) =>
    kelvinDifference(
      warmingToDropOn({
        diameter: fitDiameter,
        interference: exact.interference,
        slip: metre(0),
        expansion: exact.expansion,
      }),
    ),
  )
  const seconds = spread({ ends, airCoefficient, density, specificHeat }, (exact) =>
    second(
      exact.ends >= start
        ? 0
        : ((exact.density * exact.specificHeat * volume) / (exact.airCoefficient * surface)) *
            Math.log(start / Math.max(exact.ends, SETTLED * start)),
    ),
  )
  const sign = takenAt >= room ? 1 : -1
  return {
    gripsAt: spread({ ends }, (exact) => kelvin(room + sign * exact.ends)),
    seconds,
    cautions: [
      'Once it touches the cold part it grips within seconds: line it up before, push it home in one go, hold it there.',
      'A draught, a wet rag or a cold mandrel shortens the time; count on the low end.',
    ],
    source: `one lump cooling in still air, 8 to 25 W/m²K where not told; ${source}`,
  }
}

/** An interference of nothing never grips in this reckoning: it is followed until a hundredth of the warmth is left. */
const SETTLED = 0.01
