// What to try next, worked out from what the tries so far have read.
import { nutAngle } from '../../mechanics/bearings/adjustment.ts'
import { settingShim } from '../../mechanics/bearings/settingShim.ts'
import { type BevelTry, learnBacklashRatio, nextBevelShim } from '../../mechanics/gears/bevelShim.ts'
import type { Range } from '../../mechanics/range.ts'
import { chooseShims, type Shim, type ShimPack } from '../../mechanics/stackup/chooseShims.ts'
import { Problem } from '../../problem/problem.ts'
import { metre, mm, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'

/** One try: what was in, what was read. */
export interface TryMade {
  /** The pack as measured; missing: nobody said. */
  readonly pack?: Metre
  /** The nut, from where it stood at the first try; slackened above zero. */
  readonly turned?: Radian
  /** What was read, as far as the instrument's uncertainty leaves it open; preload is float below zero. */
  readonly read: Range<Metre>
}

export interface TryAsked {
  /** In the order they were made; the last is what is in now. */
  readonly tries: readonly TryMade[]
  /** What is wanted. An end that was not told is not aimed at. */
  readonly wanted: { readonly low?: number; readonly high?: number }
  /** As in TrySetting; missing: to be learnt. */
  readonly sign?: 1 | -1
  /** Shims that may be used, those that are in among them. */
  readonly stock: readonly Shim[]
  /** Lead of the nut, where somebody told it. */
  readonly lead?: Metre
  /** Backlash of gears: their own cautions go with it. */
  readonly isBacklash: boolean
  /** How a length, or a turn, is printed for the person. */
  readonly print: (range: Range<number>, as: 'length' | 'angle') => string
}

export type NextTry =
  /** Nothing wants to be changed. */
  | { readonly is: 'right'; readonly cautions: readonly string[] }
  | { readonly is: 'not known'; readonly says: string; readonly next: string }
  /** The reading does not go with the move: something was not seated. */
  | { readonly is: 'seat again'; readonly says: string; readonly source: string; readonly cautions: readonly string[] }
  | ({ readonly is: 'pack'; readonly choice?: PackChoice } & Proposal<Metre>)
  | ({ readonly is: 'turn' } & Proposal<Radian>)

export interface PackChoice {
  readonly pack?: ShimPack
  readonly nearest: readonly ShimPack[]
}

interface Proposal<Of extends number> {
  /** The pack as a whole; or how far to turn from where it stands now, slackened above zero. */
  readonly wanted: Range<Of>
  /** Whether it reaches what is wanted whatever the readings hide. */
  readonly isSure: boolean
  /** The working in words, with its figures. */
  readonly says: string
  readonly source: string
  readonly cautions: readonly string[]
}

const ROUNDING = 1e-9
/** What a dial with marks of 0.01 mm can hide of a move. */
const READING_STEP = mm(0.01)

/**
 * The next try of a setting. With shims whose sign the unit tells, one try is enough: float and pack go one for one. Without it two tries with
 * different shims give the ratio; two that read the same after a move give none: seat it again and read again.
 *
 * @returns what to fit or turn, with its working, source and cautions; 'not known' with what would make it known
 * @source settingShim, learnBacklashRatio, nextBevelShim, nutAngle, chooseShims of mechanics
 * @example nextTry({ tries: [{ pack: mm(0.626), read: { low: mm(0.04), high: mm(0.04) } }], wanted: { low: mm(0.05), high: mm(0.1) }, sign: 1, stock: [], isBacklash: false, print }).is   // 'pack'
 */
export function nextTry(asked: TryAsked): NextTry {
  const { tries, wanted } = asked
  const last = tries.at(-1)
  if (!last) return unknown('No try stands yet.', 'Fit what the settings say, or what came out, and read.')
  const target = targetOf(wanted)
  if (!target) return unknown('What is wanted has only one end.', 'Give the limit of the check both ends.')
  if (last.read.low >= target.low - ROUNDING && last.read.high <= target.high + ROUNDING)
    return { is: 'right', cautions: ['It is within: read it once more after it has been turned again.'] }
  if (last.turned !== undefined) return turnOf(asked, target, last)
  if (last.pack === undefined)
    return unknown('It was not said what was in at this try.', 'Say which shims are in, or how far the nut was turned.')
  return refusedAsUnknown(() => packOf(asked, target, { ...last, pack: last.pack! }))
}

const unknown = (says: string, next: string): NextTry => ({ is: 'not known', says, next })

const targetOf = ({ low, high }: TryAsked['wanted']): Range<Metre> | undefined =>
  low === undefined || high === undefined ? undefined : { low: metre(low), high: metre(high) }

/** What a calculation refuses is not known, and its own words say why. */
function refusedAsUnknown(work: () => NextTry): NextTry {
  try {
    return work()
  } catch (error) {
    if (error instanceof Problem) return unknown(error.message, error.next)
    throw error
  }
}

type WithPack = TryMade & { readonly pack: Metre }

function packOf(asked: TryAsked, target: Range<Metre>, last: WithPack): NextTry {
  const packs = asked.tries.flatMap((one) => (one.pack === undefined ? [] : [{ ...one, pack: one.pack }]))
  const before = packs.findLast(({ pack }) => Math.abs(pack - last.pack) > READING_STEP / 2)
  const stuck = before && didNotFollow(asked, before, last)
  if (stuck) return stuck
  return asked.sign === undefined ? byRatio(asked, target, packs) : oneForOne(asked, target, { last, before })
}

const middle = ({ low, high }: Range<number>): number => (low + high) / 2
const doubtOf = (one: TryMade, other: TryMade): number =>
  (one.read.high - one.read.low + other.read.high - other.read.low) / 2 + READING_STEP

/** Two tries whose readings do not go with the move between them. */
function didNotFollow({ sign, print }: TryAsked, before: WithPack, last: WithPack): NextTry | undefined {
  const [move, change] = [last.pack - before.pack, middle(last.read) - middle(before.read)]
  const isStill = Math.abs(change) <= doubtOf(before, last) && Math.abs(move) > doubtOf(before, last)
  const isBackward = sign !== undefined && !isStill && change * move * sign < 0 && Math.abs(change) > ROUNDING
  if (!isStill && !isBackward) return undefined
  const [by, of] = [exact(print, Math.abs(change)), exact(print, Math.abs(move))]
  return {
    is: 'seat again',
    says: isStill
      ? `The pack was changed by ${of} and the reading by ${by}, no more than a reading can be out: that gives no ratio.`
      : `The pack was changed by ${of} and the reading went ${by} the other way.`,
    source: 'straight line through the tries',
    cautions: [
      isStill
        ? 'Seat it again, turn it both ways, and read the same pack once more before any shim is changed.'
        : 'Look where the shims lie and whether all of them are in; then seat it again and read again.',
    ],
  }
}

const exact = (print: TryAsked['print'], value: number): string => print({ low: value, high: value }, 'length')

/** The sign is told: more pack, as much more float, or less. */
function oneForOne(
  asked: TryAsked,
  target: Range<Metre>,
  { last, before }: { readonly last: WithPack; readonly before: WithPack | undefined },
): NextTry {
  const { print } = asked
  const shimSign = asked.sign!
  const found = settingShim({
    loop: [
      { name: 'what was read', sign: 1, size: last.read },
      { name: 'pack that was in', sign: shimSign > 0 ? -1 : 1, size: last.pack },
    ],
    shimSign,
    target,
  })
  const wanted = atLeastNone(found.sure ?? found.possible)
  const [move, change] = before
    ? [(last.pack - before.pack) * shimSign, middle(last.read) - middle(before.read)]
    : [0, 0]
  const isOff = before !== undefined && Math.abs(change - move) > doubtOf(before, last)
  return {
    is: 'pack',
    wanted,
    isSure: found.sure !== undefined,
    says: `${shimSign > 0 ? 'Pack wanted = pack in + wanted − read' : 'Pack wanted = pack in + read − wanted'}: in ${exact(print, last.pack)}, read ${print(last.read, 'length')}, wanted ${print(target, 'length')}.`,
    source: `sum of the loop as it was read; ${shimSign > 0 ? 'a thicker pack opens it' : 'a thicker pack closes it'}, as the unit says`,
    cautions: [
      ...(isOff
        ? [
            `Between the tries the reading changed by ${exact(print, Math.abs(change))} for ${exact(print, Math.abs(move))} of pack: one of them was not seated. Read the last one again first.`,
          ]
        : []),
      ...found.cautions,
      'Measure the pack as a whole before it goes in.',
    ],
    ...chosen(asked.stock, wanted),
  }
}

/** The ratio is this machine's own, from two tries with different shims. */
function byRatio(asked: TryAsked, target: Range<Metre>, packs: readonly WithPack[]): NextTry {
  const { print } = asked
  const tries: BevelTry[] = packs.map(({ pack, read }) => ({ shim: pack, backlash: read }))
  if (!packs.some(({ pack }) => Math.abs(pack - packs.at(-1)!.pack) > READING_STEP / 2))
    return unknown(
      'How much a shim does here is not known: the unit does not say it, and one pack gives no ratio.',
      'Change the pack by a measured amount, seat it, read again: then the two tries give the ratio.',
    )
  const found = nextBevelShim({ tries, target })
  const wanted = atLeastNone(found.sure ?? found.possible)
  const { low, high } = found.ratio
  return {
    is: 'pack',
    wanted,
    isSure: found.sure !== undefined,
    says: `Change of reading over change of pack, from these tries: ${low.toFixed(2)} to ${high.toFixed(2)}. Pack wanted = pack in + (wanted − read) ÷ ratio; wanted ${print(target, 'length')}, read ${print(packs.at(-1)!.read, 'length')}; middle ${exact(print, found.shim)}.`.replaceAll(
      '-',
      '−',
    ),
    source: `straight line through ${tries.length} tries of this machine`,
    // What is said of gears holds for gears alone.
    cautions: asked.isBacklash ? found.cautions : found.cautions.filter((text) => !/gear|preload/i.test(text)),
    ...chosen(asked.stock, wanted),
  }
}

const atLeastNone = ({ low, high }: Range<Metre>): Range<Metre> => ({
  low: metre(Math.max(0, low)),
  high: metre(Math.max(0, high)),
})

/** A pack of the stock, where there is one. */
const chosen = (stock: readonly Shim[], target: Range<Metre>): { readonly choice?: PackChoice } =>
  stock.length > 0 ? { choice: chooseShims({ stock, target }) } : {}

/** A turn for which the ratio is learnt is reckoned as if the nut had this lead; the ratio puts it right. */
const UNIT_LEAD = mm(1)
/** No try is so far from the first: keeps the reckoned place of the nut above zero. */
const FAR = mm(50)

function turnOf(asked: TryAsked, target: Range<Metre>, last: TryMade): NextTry {
  const { print, lead } = asked
  const travel = { low: metre(target.low - last.read.low), high: metre(target.high - last.read.high) }
  const isSure = travel.low <= travel.high + ROUNDING
  const aim = isSure ? travel : { low: metre(middle(travel)), high: metre(middle(travel)) }
  const cautions = [
    'Slacken beyond it and come up to it by tightening, so that the thread bears as it will stay; turn the shaft both ways, then read.',
    ...(target.low < 0 ? ['Preload: prove it by rolling torque; float cannot be felt past zero.'] : []),
    'Lock it, and read once more: locking may move it.',
  ]
  if (lead !== undefined)
    return refusedAsUnknown(() => ({
      is: 'turn',
      wanted: nutAngle({ travel: aim, lead }),
      isSure,
      says: `Turn = (wanted − read) ÷ lead × 360°: wanted ${print(target, 'length')}, read ${print(last.read, 'length')}, lead ${exact(print, lead)}.`,
      source: 'geometry of the screw',
      cautions,
    }))
  return refusedAsUnknown(() => {
    const tries = asked.tries.flatMap(({ turned, read }) => (turned === undefined ? [] : [{ turned, read }]))
    if (!tries.some(({ turned }) => Math.abs(turned - tries.at(-1)!.turned) > 1e-3))
      return unknown(
        'How far the nut moves for a turn is not known.',
        'Give the lead of its thread, or turn it by a known angle and read again.',
      )
    const places = tries.map(({ turned, read }) => ({
      shim: metre(FAR + (UNIT_LEAD * turned) / (2 * Math.PI)),
      // The range of the calculation begins at nought; only differences count.
      backlash: { low: metre(read.low + 0.01), high: metre(read.high + 0.01) },
    }))
    const { ratio, cautions: strays } = learnBacklashRatio({ tries: places })
    const perTurn = middle(ratio) * UNIT_LEAD
    const wanted = [aim.low, aim.high].map((each) => radian((each / perTurn) * 2 * Math.PI))
    return {
      is: 'turn',
      wanted: { low: radian(Math.min(...wanted)), high: radian(Math.max(...wanted)) },
      isSure: false,
      says: `A whole turn changes the reading by ${exact(print, Math.abs(perTurn))}, from these tries. Turn = (wanted − read) ÷ that × 360°: wanted ${print(target, 'length')}, read ${print(last.read, 'length')}.`,
      source: `straight line through ${tries.length} tries of this machine`,
      cautions: [
        ...strays.map(() => 'The tries do not lie on one line: one of them was not seated. Read the last one again.'),
        ...cautions,
      ],
    }
  })
}
