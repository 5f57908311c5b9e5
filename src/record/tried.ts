// What a job's entries have of tries and of counted bolts, for a book.

import type { TightenedTold, Tried, TryTold } from '../job/model/tried.ts'
import { hourOf } from '../journal/clock.ts'
import type { Entry } from '../journal/entry.ts'
import { type SettingTry, settingTries } from './settingTries.ts'
import type { JobState } from './state.ts'

/** @param state what the entries fold to */
export function triedIn(entries: readonly Entry[], state: JobState): Tried {
  return {
    tries: settingTries(entries, state).map(tryTold),
    tightened: [...state.steps.values()]
      .flatMap(({ step, done }) => done.map((signed) => ({ ...signed, step })))
      .filter(({ tightened }) => tightened && tightened.length > 0)
      .sort((one, other) => one.at.ms - other.at.ms || one.at.n - other.at.n)
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
    ...(read && {
      read: {
        low: read.low,
        high: read.high,
        dimension: read.of === 'volume' || read.of === 'count' ? 'number' : read.of,
      },
    }),
    result,
    ...(instrument !== undefined && { with: instrument }),
    person,
    ms: hourOf(at),
    ...(takenBack && { takenBack: { person: takenBack.person, ms: hourOf(takenBack.at) } }),
  }
}
