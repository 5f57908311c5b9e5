import type { Unit } from '../../model/unit.ts'
import type { Kind } from '../kind.ts'
import type { FitGiven } from './given.ts'

type Words = Pick<Kind<FitGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'>

const isTight = ({ fit }: FitGiven): boolean => fit !== undefined && fit !== 'loose'

/** A plain bush has no tracks to dent. */
const hasRollers = ({ moves, bore, shaft }: FitGiven, unit: Unit): boolean =>
  [moves, bore?.part, shaft?.part].some((part) => part !== undefined && unit.parts.get(part)?.look === 'bearing')

const PRESS = [
  'Shield the press, stand aside, keep the work below eye level; no makeshift fittings, the gauge has to work.',
  'Support the casting close to the bore. Load only the ring that is being fitted.',
]
const HEAT = [
  'Oven, oil bath or induction heater with a thermometer. No flame, ever.',
  'Gloves and sleeves. Nothing closed goes into an oven: it bursts. A charred rubber seal gives off acid: do not touch it.',
]
const COLD = [
  'Cold gas drives out the air without warning: open doors, an oxygen alarm at 19.5 %, never in a pit. The lid stays loose.',
  'Cold burns: cold gloves and a face shield.',
  'Dry ice (-78 °C) and liquid nitrogen (-196 °C) are colder than a bearing may be: for plain sleeves and bushes only.',
]
const MAKER = "The maker's manual and the local rules come first."

export const words: Words = {
  checks: (_connection, given) =>
    given.fit === 'hot' || given.fit === 'cold'
      ? ['At room temperature a 0.0015 in feeler does not enter behind it.']
      : given.fit === 'press'
        ? ['It stands on its face all round, and the load rose evenly up to there.']
        : [],
  renewals: (_connection, given, unit) => {
    const part = given.moves ?? given.bore?.part
    if (!isTight(given) || part === undefined || unit.parts.get(part)?.look !== 'bearing') return []
    return [
      {
        part,
        why: `${part}, if it had to be pulled off its seat: a bearing that was pulled is renewed.`,
        standing: 'told' as const,
        source: 'army overhaul manuals (bearings that had to be pulled)',
      },
    ]
  },
  cautions: (_connection, { fit }) => {
    if (fit === 'press') return [...PRESS, MAKER]
    if (fit === 'hot') return [...HEAT, MAKER]
    return fit === 'cold' ? [...COLD, MAKER] : []
  },
  warnings: (_connection, given, unit) => {
    if (!isTight(given)) return []
    return given.fit === 'press'
      ? [
          ...(hasRollers(given, unit)
            ? ['Load through the rollers or balls dents the tracks: it rumbles soon after.']
            : []),
          'Started crooked it cuts the bore: the load jumps early. Stop, take it out, look.',
          'Seal, retainer or spacer that belongs behind it and still lies on the bench: it all comes off again.',
        ]
      : [
          'Let go too early it creeps back from the shoulder while it changes temperature: the feeler enters.',
          'Seal, retainer or spacer that belongs behind it and still lies on the bench: it all comes off again.',
        ]
  },
}
