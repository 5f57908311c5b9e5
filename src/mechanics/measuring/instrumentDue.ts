import { Problem } from '../../problem/problem.ts'
import { requireWithin } from '../limits.ts'

export interface InstrumentDue {
  readonly state: 'in date' | 'due soon' | 'overdue' | 'not known'
  /** Last day on which it is in date; left out where no check is on record. */
  readonly due?: string
  /** Below zero when it is over. */
  readonly daysLeft?: number
  readonly cautions: readonly string[]
}

const DAY = 86_400_000

/**
 * Whether an instrument may still be trusted by its calendar. The calendar is not all: one that was dropped is due today.
 * A month counts to the same day of the month, or to its last day where there is none.
 *
 * @param checked day of the last check as YYYY-MM-DD; left out none is on record
 * @param months between checks, 1 to 120
 * @param today as YYYY-MM-DD
 * @param warnDays days before the due date from which it counts as due soon; left out 30
 * @returns state, due date, days left
 * @throws DATE_UNREADABLE, VALUE_OUTSIDE
 * @source calendar; the months are the shop's own rule (ISO 10012, from memory: set by use and history)
 * @example instrumentDue({ checked: '2025-01-31', months: 13, today: '2026-02-01' }).due   // '2026-02-28'
 */
export function instrumentDue({
  checked,
  months,
  today,
  warnDays = 30,
}: {
  readonly checked?: string
  readonly months: number
  readonly today: string
  readonly warnDays?: number
}): InstrumentDue {
  requireWithin('the months between checks', months, { low: 1, high: 120, unit: '' })
  const now = dayOf(today)
  if (checked === undefined) {
    return {
      state: 'not known',
      cautions: ['No check is on record: check it against a known gauge before it decides.'],
    }
  }
  const last = dayOf(checked)
  const due = laterByMonths(last, Math.floor(months))
  const daysLeft = Math.round((due.getTime() - now.getTime()) / DAY)
  const state = daysLeft < 0 ? 'overdue' : daysLeft <= warnDays ? 'due soon' : 'in date'
  return {
    state,
    due: due.toISOString().slice(0, 10),
    daysLeft,
    cautions: [
      ...(last > now ? ['The check is dated after today: look at the record again.'] : []),
      ...(state === 'overdue' ? ['Overdue: readings since the due date stand in doubt until it is checked.'] : []),
      'Dropped, knocked or lent out, it is due today.',
    ],
  }
}

function dayOf(text: string): Date {
  const date = new Date(`${text}T00:00:00Z`)
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(date.getTime())
  if (!isDay || date.toISOString().slice(0, 10) !== text) throw new Problem('DATE_UNREADABLE', { received: text })
  return date
}

function laterByMonths(day: Date, months: number): Date {
  const [year, month] = [day.getUTCFullYear(), day.getUTCMonth() + months]
  const lastOfMonth = new Date(Date.UTC(year, month + 1, 0)).getUTCDate()
  return new Date(Date.UTC(year, month, Math.min(day.getUTCDate(), lastOfMonth)))
}
