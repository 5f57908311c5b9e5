// What was taken back of each step: it is out of force and stays to be seen.
import { hourOf } from '../../journal/clock.ts'
import type { Entry } from '../../journal/entry.ts'
import type { JobState } from '../../record/state.ts'

export interface Slip {
  readonly entry: string
  readonly what: 'step-started' | 'step-signed' | 'check-result' | 'reading' | 'photo'
  /** The figure of a reading, metres. */
  readonly reads?: number
  readonly by: string
  /** When it was taken back. */
  readonly at_ms: number
}

/** Step → what was taken back there, in the order in which it was said. */
export function slipsOf(entries: readonly Entry[], state: JobState): ReadonlyMap<string, readonly Slip[]> {
  const byId = new Map(entries.map((entry) => [entry.id, entry]))
  const slips = new Map<string, Slip[]>()
  for (const { entry: id, withdrawnBy } of state.happened) {
    const [entry, taker] = [byId.get(id), withdrawnBy === undefined ? undefined : byId.get(withdrawnBy)]
    const step = entry && stepOf(entry)
    if (!entry || !taker || step === undefined) continue
    const reads = readsOf(entry)
    const slip: Slip = {
      entry: id,
      what: entry.kind as Slip['what'],
      ...(reads !== undefined && { reads }),
      by: taker.person,
      at_ms: hourOf(taker.at),
    }
    slips.set(step, [...(slips.get(step) ?? []), slip])
  }
  return slips
}

function stepOf(entry: Entry): string | undefined {
  if (entry.kind === 'step-started' || entry.kind === 'step-signed' || entry.kind === 'reading') return entry.body.step
  if (entry.kind === 'photo') return entry.body.about?.step
  return entry.kind === 'check-result' ? entry.body.check : undefined
}

function readsOf(entry: Entry): number | undefined {
  if (entry.kind === 'reading') return entry.body.reads?.high
  return entry.kind === 'check-result' ? entry.body.values?.[0]?.high : undefined
}
