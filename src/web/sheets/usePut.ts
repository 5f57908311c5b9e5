// Keeps what a person did. A second tap meanwhile does nothing; what could not be kept is told, and the sheet stays as it was.
import { useRef, useState } from 'react'
import { useLocation } from 'wouter'
import { Problem, printProblem } from '../../problem/problem.ts'
import type { Saying } from '../../record/entriesOfJob.ts'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'

export interface Putting {
  readonly put: (said: readonly Saying[], then?: () => void) => void
  /** What went wrong with the last one. */
  readonly trouble: string | undefined
}

export function usePut(job: string): Putting {
  const bench = useBench()
  const { person } = useBenchState()
  const [, go] = useLocation()
  const [trouble, setTrouble] = useState<string>()
  const isBusy = useRef(false)
  const keep = async (said: readonly Saying[], then?: () => void) => {
    if (isBusy.current) return
    if (person === undefined) return go(`/device?back=${encodeURIComponent(location.pathname)}`)
    isBusy.current = true
    try {
      await bench.put(job, said)
      setTrouble(undefined)
      then?.()
    } catch (error) {
      setTrouble(
        error instanceof Problem ? printProblem(error) : error instanceof Error ? error.message : String(error),
      )
    } finally {
      isBusy.current = false
    }
  }
  return { put: (said, then) => void keep(said, then), trouble }
}
