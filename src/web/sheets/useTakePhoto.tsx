// Takes a photo: the device's camera where it has one, a file where not. It counts as taken when it is kept, with what it is of.
import { type ReactNode, useRef, useState } from 'react'
import { useLocation } from 'wouter'
import { Problem, printProblem } from '../../problem/problem.ts'
import { useBench, useBenchState } from '../sync/BenchContext.tsx'

export interface TakingPhoto {
  /** Opens the camera. By a tap or a key: browsers open it for nobody else. */
  readonly ask: () => void
  /** Goes into the sheet once; it is not seen. */
  readonly input: ReactNode
  readonly is: 'idle' | 'keeping' | 'kept'
  readonly trouble: string | undefined
}

export function useTakePhoto(job: string, about: { readonly step: string; readonly part?: string }): TakingPhoto {
  const bench = useBench()
  const { person } = useBenchState()
  const [, go] = useLocation()
  const input = useRef<HTMLInputElement>(null)
  const [is, setIs] = useState<TakingPhoto['is']>('idle')
  const [trouble, setTrouble] = useState<string>()
  const keep = async (picture: File) => {
    setIs('keeping')
    try {
      await bench.putPhoto(job, picture, about)
      setTrouble(undefined)
      setIs('kept')
    } catch (error) {
      setIs('idle')
      setTrouble(
        error instanceof Problem ? printProblem(error) : error instanceof Error ? error.message : String(error),
      )
    }
  }
  return {
    ask() {
      // Whose photo it is has to be known before it is taken.
      if (person === undefined) go(`/device?back=${encodeURIComponent(location.pathname)}`)
      else if (is !== 'keeping') input.current?.click()
    },
    input: (
      <input
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        onChange={({ target }) => {
          const [picture] = target.files ?? []
          if (picture) void keep(picture)
          // The same file again is a change, too.
          target.value = ''
        }}
      />
    ),
    is,
    trouble,
  }
}
