// What to try next, asked of the worker: the calculations are not wanted before the first try.
import { figureText } from '../../paper/figureText.ts'
import { metre, radian } from '../../quantity/constructors.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { SettingTry } from '../../record/settingTries.ts'
import { type NextTry, nextTry, type TryAsked } from '../../unit/tries/nextTry.ts'
import type { TrySheet } from './trySheets.ts'

export interface ProposalAsked {
  readonly tries: readonly SettingTry[]
  readonly sheet: TrySheet
  readonly system: System
  /** Instrument → its uncertainty, m. */
  readonly uncertainties: Readonly<Record<string, number>>
}

/** What to try next from the tries in force, in their order; all that is told is printed for the person. */
export function tryProposal({ tries, sheet, system, uncertainties }: ProposalAsked): NextTry {
  if (!sheet.isLength || !sheet.limit)
    return {
      is: 'not known',
      says: 'What is read here does not say how much to change: no calculation goes from it to a pack.',
      next: 'Change the pack by little, seat it, and read again; the maker’s manual comes first.',
    }
  let turned = 0
  const places = tries.flatMap((one): TryAsked['tries'] => {
    turned += one.turned?.low ?? 0
    if (one.read?.of !== 'length') return []
    const by = uncertainties[one.with ?? ''] ?? 0
    return [
      {
        read: { low: metre(one.read.low - by), high: metre(one.read.high + by) },
        ...(one.pack && { pack: metre((one.pack.low + one.pack.high) / 2) }),
        ...(one.turned && { turned: radian(turned) }),
      },
    ]
  })
  if (tries.at(-1)?.read === undefined)
    return { is: 'not known', says: 'The last try could not be read.', next: 'Seat it again and read again.' }
  const lead = tries.findLast((one) => one.lead)?.lead
  return nextTry({
    tries: places,
    wanted: sheet.limit,
    ...(sheet.sign && { sign: sheet.sign }),
    stock: sheet.shims.map(({ id, thickness_m }) => ({ id, thickness: metre(thickness_m) })),
    ...(lead && { lead: metre(lead.low) }),
    isBacklash: sheet.isBacklash,
    print: (range, as) => figureText(range, as, system),
  })
}
