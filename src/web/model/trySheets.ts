// What a step asks and tells of a setting that is tried: at the step that reads it, and at the step that it is made with.
import type { WorkUp } from '../../job/workUp.ts'
import { figureText } from '../../paper/figureText.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { type TrySetting, trySettings } from '../../unit/tries/trySettings.ts'

export interface TrySheet extends Omit<TrySetting, 'shimsFor'> {
  /** What is wanted of the reading, SI; missing: the check has no limit in figures. */
  readonly limit?: { readonly low?: number; readonly high?: number }
  readonly isLength: boolean
  readonly isBacklash: boolean
  /** The shims that may be used, as measured. */
  readonly shims: readonly { readonly id: string; readonly thickness_m: number; readonly text: string }[]
}

/** Step → the setting that is tried there. */
export function trySheets({ unit, connections, job }: WorkUp, system: System): ReadonlyMap<string, TrySheet> {
  const sheets = new Map<string, TrySheet>()
  for (const { shimsFor, ...setting } of trySettings(unit, connections.connections)) {
    const { limit, settles, does } = unit.checks.get(setting.check)!
    const sheet: TrySheet = {
      ...setting,
      isLength: limit === undefined || limit.unit === 'm',
      isBacklash: [setting.check, settles, does].some((text) => text?.toLowerCase().includes('backlash')),
      ...(limit && {
        limit: {
          ...(limit.low !== undefined && { low: limit.low }),
          ...(limit.high !== undefined && { high: limit.high }),
        },
      }),
      shims: (job?.shims ?? []).flatMap(({ id, reads, for: use }) => {
        // A label is not a size: a shim that nobody measured makes up no pack.
        if (!reads || (use !== undefined && !shimsFor.includes(use))) return []
        const thickness_m = (reads.low + reads.high) / 2
        return [{ id, thickness_m, text: figureText({ low: thickness_m, high: thickness_m }, 'length', system) }]
      }),
    }
    for (const step of [setting.check, setting.first]) if (step !== undefined) sheets.set(step, sheet)
  }
  return sheets
}
