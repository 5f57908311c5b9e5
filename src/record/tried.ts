// What a job's entries have of checks, tries and counted bolts, for a book.

import type { CheckTold, ReadTold, TightenedTold, Tried, TryTold } from '../job/model/tried.ts'
import { compareAt, hourOf } from '../journal/clock.ts'
import type { Entry } from '../journal/entry.ts'
import { type SettingTry, settingTries } from './settingTries.ts'
import type { JobState } from './state.ts'

/** @param state what the entries fold to */
export function triedIn(entries: readonly Entry[], state: JobState): Tried {
  return {
    checks: state.checks.map(({ check, values, result, with: instrument, person, at }): CheckTold => {
      const value = values?.[0]
      return {
        check,
        ...(value && { read: readTold(value) }),
        result,
        ...(instrument !== undefined && { with: instrument }),
        person,
        ms: hourOf(at),
      }
    }),
    tries: settingTries(entries, state).map(tryTold),
    tightened: [...state.steps.values()]
      .flatMap(({ step, done }) => done.map((signed) => ({ ...signed, step })))
      .filter(({ tightened }) => tightened && tightened.length > 0)
      .sort((one, other) => compareAt(one.at, other.at))
      .map(
        ({ step, person, at, tightened = [], uncounted }): TightenedTold => ({
          step,
          person,
          ms: hourOf(at),
          stages: tightened.map(({ torque: _, ...stage }) => stage),
          ...(uncounted !== undefined && { uncounted }),
        }),
      ),
  }
}

function tryTold({
  of,
  number,
  tried,
  pack,
  read,
  result,
  with: instrument,
  person,
  at,
  takenBack,
}: SettingTry): TryTold {
  return {
    of,
    number,
    tried,
    ...(pack && { pack: { low: pack.low, high: pack.high } }),
    ...(read && { read: readTold(read) }),
    result,
    ...(instrument !== undefined && { with: instrument }),
    person,
    ms: hourOf(at),
    ...(takenBack && { takenBack: { person: takenBack.person, ms: hourOf(takenBack.at) } }),
  }
}

const readTold = ({ low, high, of }: NonNullable<SettingTry['read']>): ReadTold => ({
  low,
  high,
  dimension: of === 'volume' || of === 'count' ? 'number' : of,
})
