// Warming and chilling to drop parts on.

import { WHOLE_DEGREE } from '../../mechanics/fits/heatLimits.ts'
import {
  chillToDropIn,
  coldestOf,
  dropOn,
  growth,
  type HeatEnd,
  heatLimitOf,
  hottestOf,
  longestAt,
  secondsInHand,
  warmingToDropOn,
} from '../../mechanics/index.ts'
import type { Kelvin } from '../../quantity/quantity.ts'
import { atWorst, choice, exact, known, knownNumber, material, optional, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayAnswer, sayWords } from '../frame/say.ts'

const KINDS = [
  'bearing, metal cage',
  'bearing, plastic cage or sealed',
  'bearing, precision',
  'plain part',
  'hardened part',
  'unknown',
] as const
const kindOfPart = (what: string) =>
  told(atWorst(choice(...KINDS), 'unknown', 'not told; taken with the narrowest limits'), what)
const diameter = told(exact('length'), 'diameter of the joint')
const interference = told(known('length'), 'on the diameter, both parts measured at one temperature')
const room = told(exact('temperature'), 'room temperature, which both parts have, 5 to 40 °C')
const notAbove = optional(
  told(exact('temperature'), 'the maker’s own ceiling, where it is lower than what is held here'),
)
const notBelow = optional(
  told(exact('temperature'), 'the maker’s own limit in the cold, where it is narrower than what is held here'),
)
const slip = optional(told(exact('length'), 'clearance wanted while it goes on; left out a thousandth of the diameter'))

const isBorne = (at: Kelvin, hottest: HeatEnd, coldest: HeatEnd) =>
  at <= hottest.temperature + WHOLE_DEGREE && at >= coldest.temperature - WHOLE_DEGREE

export const HEATING = [
  figure({
    name: 'drop-on',
    asks: 'How hot must the bearing or hub be to drop on?',
    of: ['dropOn'],
    inputs: {
      diameter,
      interference,
      outerMaterial: material,
      outerKind: kindOfPart('what the outer part is'),
      innerMaterial: material,
      innerKind: kindOfPart('what the inner part is'),
      room,
      slip,
      notAbove,
      notBelow,
    },
    work: ({ outerMaterial, outerKind, innerMaterial, innerKind, notAbove, notBelow, ...rest }) =>
      dropOn({
        ...rest,
        outer: { material: outerMaterial, kind: outerKind, ...(notAbove !== undefined && { notAbove }) },
        inner: { material: innerMaterial, kind: innerKind, ...(notBelow !== undefined && { notBelow }) },
      }),
    answers: ({ warm, warmAndChill, warmingAloneNeeds, wantedSlip, hottest }) => ({
      'warm the outer part to': say('temperature', warm.outerAt),
      'no longer than': say('time', warm.outerLongest),
      'slip then': say('length', warm.slip),
      'drops on by hand': sayAnswer(warm.dropsOn, warmAndChill ? undefined : 'no'),
      'slip that was wanted': say('length', wantedSlip),
      'warming alone would need': say('temperature', warmingAloneNeeds),
      'it takes no more than': say('temperature', hottest.temperature),
      'with both: warm the outer part to': say('temperature', warmAndChill?.outerAt),
      'and chill the inner part to': say('temperature', warmAndChill?.innerAt),
      'chilled no longer than': say('time', warmAndChill?.innerLongest),
      'slip with both': say('length', warmAndChill?.slip),
      'drops on with both': sayAnswer(warmAndChill?.dropsOn, 'no'),
    }),
    words: 'rise = (tightest interference + slip) ÷ (diameter × least expansion), up to what the part takes',
    example:
      'diameter=2.5 in interference=1-1.5 thou outer-material="bearing steel" outer-kind="bearing, metal cage" inner-material=steel inner-kind="plain part" room=68 °F',
  }),
  figure({
    name: 'chill-in',
    asks: 'How cold must the bush be to drop in?',
    of: ['chillToDropIn'],
    inputs: {
      diameter,
      interference,
      innerMaterial: material,
      innerKind: kindOfPart('what the part is that is chilled'),
      room,
      slip,
      notBelow,
    },
    work: ({ innerMaterial, innerKind, notBelow, ...rest }) =>
      chillToDropIn({
        ...rest,
        inner: { material: innerMaterial, kind: innerKind, ...(notBelow !== undefined && { notBelow }) },
      }),
    answers: ({ innerAt, innerLongest, slip: left, dropsIn, wouldNeed, coldest, wantedSlip }) => ({
      'chill it to': say('temperature', innerAt),
      'no longer than': say('time', innerLongest),
      'slip then': say('length', left),
      'drops in by hand': sayAnswer(dropsIn, 'no'),
      'slip that was wanted': say('length', wantedSlip),
      'the wanted slip would need': say('temperature', wouldNeed),
      'it takes no less than': say('temperature', coldest.temperature),
      'on the word of': sayWords(coldest.source),
    }),
    words:
      'fall = (tightest interference + slip) ÷ (diameter × least expansion in the cold), down to what the part takes',
    example:
      'diameter=50 mm interference=10..20 µm inner-material=bronze inner-kind="plain part" room=20 °C slip=10 µm',
  }),
  figure({
    name: 'seconds-in-hand',
    asks: 'How long do I have from the oven before it grips?',
    of: ['secondsInHand'],
    inputs: {
      outside: told(exact('length'), 'outside diameter of the ring'),
      inside: told(exact('length'), 'inside diameter of the ring'),
      width: told(exact('length'), 'width of the ring'),
      fitDiameter: exact('length'),
      material,
      takenAt: exact('temperature'),
      room: told(exact('temperature'), 'room temperature, which the other part has'),
      interference,
      airCoefficient: optional(knownNumber),
    },
    work: secondsInHand,
    answers: ({ gripsAt, seconds }) => ({
      'time until it grips': say('time', seconds),
      'it grips at': say('temperature', gripsAt),
    }),
    words:
      'time = heat in the ring for one degree ÷ (surface × air) × logarithm of warmth over room at the start ÷ at the grip',
    cautions: ['Hot: gloves and long sleeves, nothing that burns nearby, a clear way from oven to unit.'],
    example:
      'outside=120 mm inside=65 mm width=23 mm fit-diameter=65 mm material="bearing steel" taken-at=105..110 °C room=20 °C interference=20..30 µm',
  }),
  figure({
    name: 'heat-limit',
    asks: 'How hot and how cold may this part become?',
    of: ['heatLimitOf', 'hottestOf', 'coldestOf', 'longestAt'],
    inputs: {
      kind: kindOfPart('what the part is'),
      notAbove,
      notBelow,
      at: optional(told(exact('temperature'), 'a temperature, to hear how long it may stay there; left out none')),
    },
    work: ({ kind, notAbove, notBelow, at }) => ({
      hottest: hottestOf({ kind, ...(notAbove !== undefined && { notAbove }) }),
      coldest: coldestOf({ kind, ...(notBelow !== undefined && { notBelow }) }),
      longest: at && longestAt(heatLimitOf(kind), at),
      source: heatLimitOf(kind).source,
    }),
    answers: ({ hottest, coldest, longest }, { at }) => ({
      'not hotter than': say('temperature', hottest.temperature),
      'not colder than': say('temperature', coldest.temperature),
      'at the temperature told no longer than': say(
        'time',
        at !== undefined && isBorne(at, hottest, coldest) ? longest : undefined,
      ),
      'how long at the temperature told': sayWords(
        at !== undefined && longest === undefined && isBorne(at, hottest, coldest) ? 'nothing is said' : undefined,
      ),
      'it takes the temperature told': sayAnswer(at === undefined ? undefined : isBorne(at, hottest, coldest), 'no'),
    }),
    words: 'looked up by the kind of part',
    cautions: ['The maker’s sheet for this part comes first.'],
    example: 'kind="bearing, metal cage" at=100 °C',
  }),
  figure({
    name: 'warming-needed',
    asks: 'How much warmer must the outer part be, by the bare formula?',
    of: ['warmingToDropOn'],
    inputs: {
      diameter,
      interference: exact('length'),
      slip: exact('length'),
      expansion: told(exact('thermal expansion'), 'expansion of the part that changes temperature'),
    },
    work: warmingToDropOn,
    answers: (rise) => ({ 'warmer by': say('temperature difference', rise) }),
    words: 'rise = (interference + slip) ÷ (diameter × expansion)',
    example: 'diameter=50 mm interference=30..40 µm slip=50 µm expansion=11.7 µm/m·K',
  }),
  figure({
    name: 'growth',
    asks: 'How much does a diameter grow when it gets warmer?',
    of: ['growth'],
    inputs: {
      diameter: exact('length'),
      expansion: exact('thermal expansion'),
      difference: told(exact('temperature difference'), 'warmer by; below zero when chilled'),
    },
    work: growth,
    answers: (grown) => ({ 'grows by': say('length', grown) }),
    words: 'growth = diameter × expansion × difference of temperature',
    example: 'diameter=3 in expansion=11.5..12.5 µm/m·K difference=80 °F',
  }),
]
