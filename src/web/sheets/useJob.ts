// A job on a sheet: its entries folded at once, then worked out beside the page. What was worked out before stays to be seen meanwhile.
import { useCallback, useEffect, useMemo, useState } from 'react'
import type { System } from '../../quantity/printQuantity.ts'
import { type JobOnSheet, jobOnSheet } from '../model/jobOnSheet.ts'
import type { WorkedJob } from '../model/workedJob.ts'
import { useBench, useBenchState, useWorkshop } from '../sync/BenchContext.tsx'
import { NotWorkable, Stopped } from '../work/workshop.ts'
import { keepClocks } from './clocksAtHand.ts'

export type Working =
  | { readonly is: 'reading' }
  | { readonly is: 'searching'; readonly states: number }
  | { readonly is: 'stopped' }
  | { readonly is: 'no unit' }
  | { readonly is: 'trouble'; readonly says: readonly string[] }
  | { readonly is: 'done' }

export interface JobAtHand {
  readonly job: JobOnSheet | undefined
  readonly worked: WorkedJob | undefined
  /** Of which sequence `worked` speaks, and in which units: drawings are asked for with it. */
  readonly workedKey: string
  readonly working: Working
  readonly again: () => void
  readonly stop: () => void
}

/** @param anew leave the sequence that stands aside and look for the best one */
export function useJob(number: string, system: System, anew = false): JobAtHand {
  const bench = useBench()
  const workshop = useWorkshop()
  const { streams, units } = useBenchState()
  const entries = streams.get(number)
  const job = useMemo(
    () => (entries && entries.length > 0 ? jobOnSheet(number, entries) : undefined),
    [number, entries],
  )
  const hash = job?.state.unit?.unit
  const unitText = hash === undefined ? undefined : units.get(hash)
  const [isMissing, setMissing] = useState(false)
  const [turn, setTurn] = useState(0)
  const [working, setWorking] = useState<Working>({ is: 'reading' })
  const [known, setKnown] = useState(workshop.last)
  const key = `${job?.key} ${system} ${anew ? 'anew' : ''}`

  useEffect(() => {
    if (hash === undefined || unitText !== undefined) return setMissing(false)
    void bench.unitText(hash).then((text) => setMissing(text === undefined))
  }, [bench, hash, unitText])

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the job, and `turn` asks again
  useEffect(() => {
    if (!job || unitText === undefined) return
    if (workshop.last?.key === key) {
      setKnown(workshop.last)
      return setWorking({ is: 'done' })
    }
    let isWanted = true
    setWorking({ is: 'reading' })
    const sequence = anew ? undefined : job.state.sequence?.steps
    workshop
      .work(
        key,
        { unitText, unitFile: job.state.unit?.file ?? '', job: job.job, system, ...(sequence && { sequence }) },
        (states) => isWanted && setWorking({ is: 'searching', states }),
      )
      .then((last) => {
        keepClocks(number, last.worked)
        if (!isWanted) return
        setKnown(last)
        setWorking({ is: 'done' })
      })
      .catch((error: unknown) => {
        if (!isWanted) return
        if (error instanceof Stopped) setWorking({ is: 'stopped' })
        else if (error instanceof NotWorkable) setWorking({ is: 'trouble', says: error.says })
        else setWorking({ is: 'trouble', says: [error instanceof Error ? error.message : String(error)] })
      })
    return () => {
      isWanted = false
    }
  }, [key, unitText, turn, workshop])

  const again = useCallback(() => setTurn((n) => n + 1), [])
  const stop = useCallback(() => workshop.stop(), [workshop])
  const own = known?.number === number ? known : undefined
  return {
    job,
    worked: own?.worked,
    workedKey: own?.key ?? '',
    working: isMissing && unitText === undefined ? { is: 'no unit' } : working,
    again,
    stop,
  }
}
