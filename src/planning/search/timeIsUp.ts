/** Thrown out of preparations that would outlast a time limit; never where no limit is told. */
export class TimeIsUp {}

/** Asks a clock only now and then, as asking costs more than most steps. */
export function watch(late: () => boolean): () => void {
  let asked = 0
  return () => {
    if ((++asked & 63) === 0 && late()) throw new TimeIsUp()
  }
}

/** Preparing a problem of up to so many operations takes no time. */
const SMALL = 100

/** What to ask while a problem is prepared: a small one always is, so that there is something to show for the shortest limit. */
export const whilePreparing = (operations: number, late: () => boolean): (() => boolean) =>
  operations > SMALL ? late : () => false
