// The half section of a line or of a step, drawn anew for a whole sheet: with more room it carries more numbers.
import { useEffect, useState } from 'react'
import type { Drawing } from '../../paper/drawings/drawing.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { LargeDrawing } from '../parts/LargeDrawing.tsx'
import { useWorkshop } from '../sync/BenchContext.tsx'

interface Parts {
  readonly of: { readonly line: string } | { readonly step: string }
  readonly title: string
  readonly system: System
  readonly numbers: ReadonlyMap<string, number>
  readonly onClose: () => void
}

const LEAST_WIDTH = 900
const MOST_WIDTH = 1500
/** Frame, margins and the row of actions. */
const BESIDE_PX = 140

export function LargerDrawing({ of, title, system, numbers, onClose }: Parts) {
  const workshop = useWorkshop()
  const [drawn, setDrawn] = useState<Drawing>()
  const [what, name] = 'line' in of ? (['line', of.line] as const) : (['step', of.step] as const)
  useEffect(() => {
    let isWanted = true
    // On a narrow sheet it is drawn for a wide one, and moved about.
    const width = Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, innerWidth - 50))
    const room = { width, mostHeight: Math.max(420, innerHeight - BESIDE_PX), system }
    workshop[what](name, room).then(
      (made) => isWanted && setDrawn(made),
      () => undefined,
    )
    return () => {
      isWanted = false
    }
  }, [workshop, what, name, system])
  return <LargeDrawing title={title} drawn={drawn} numbers={numbers} onClose={onClose} />
}
