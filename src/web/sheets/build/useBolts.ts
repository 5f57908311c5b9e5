// How far the bolts of a step are ticked on this device: a draft until the step is signed, then part of its signature.
import type { Body } from '../../../journal/entry.ts'
import type { StepState } from '../../../record/state.ts'
import { tapsIn, tightenedOf } from '../../model/tightened.ts'
import { type Tightening, tightening } from '../../model/tightening.ts'
import type { StepSheetData } from '../../model/workedJob.ts'
import { useDraft } from '../useDraft.ts'

export interface Bolts {
  readonly tight: Tightening
  readonly taps: number
  readonly wrench: string
  /** Why they are not counted; empty: they are. */
  readonly uncounted: string
  readonly tick: (by: 1 | -1) => void
  readonly all: () => void
  readonly anew: () => void
  readonly setWrench: (name: string) => void
  readonly setUncounted: (why: string) => void
  /** What the signature says of them. */
  readonly said: () => Pick<Body<'step-signed'>, 'tightened' | 'uncounted'>
}

/** @param place of the drafts: the job and the step */
export function useBolts(place: string, step: StepSheetData, record: StepState | undefined): Bolts {
  const [tapped, setTapped] = useDraft(`${place} bolts`)
  const [told, setTold] = useDraft(`${place} bolts told from`)
  const [wrench, setWrench] = useDraft(`${place} wrench`)
  const [uncounted, setUncounted] = useDraft(`${place} uncounted`)
  const isSigned = record?.stands === 'done'
  const kept = isSigned ? record.done.findLast(({ tightened }) => tightened)?.tightened : undefined
  const taps = isSigned ? (kept ? tapsIn(kept) : Number.POSITIVE_INFINITY) : Number(tapped) || 0
  const { next, ...reached } = tightening(step.maps, taps)
  // A signed step has no next bolt, also where they were not counted to the end.
  const tight: Tightening = { ...reached, ...(next && !isSigned && { next }) }
  const toldFrom = told === '' ? undefined : Number(told)
  return {
    tight,
    taps,
    wrench,
    uncounted,
    tick(by) {
      // One back from what was said of all at once is back to what was ticked.
      setTapped(String(by < 0 && toldFrom !== undefined ? toldFrom : Math.max(0, Math.min(tight.total, taps + by))))
      if (by < 0) setTold('')
    },
    all() {
      setTold(String(taps))
      setTapped(String(tight.total))
    },
    anew() {
      setTold('')
      setTapped('')
    },
    setWrench,
    setUncounted,
    said() {
      const tightened = tightenedOf(step.maps, { taps, toldFrom, wrench: wrench === '' ? undefined : wrench })
      return {
        ...(tightened.length > 0 && { tightened }),
        ...(tightened.length > 0 && uncounted !== '' && { uncounted }),
      }
    },
  }
}
