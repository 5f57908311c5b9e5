/** Thrown out of preparations that would outlast a time limit; never where no limit is told. */
export class TimeIsUp {}

/** Asks a clock only now and then, as asking costs more than most steps. */
export function watch(late: () => boolean): () => void {
  let asked = 0
  return () => {
    if ((++asked & 63) === 0 && late()) throw new TimeIsUp()
  }
}
