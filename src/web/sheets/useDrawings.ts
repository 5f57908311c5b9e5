// Half sections, made beside the page when they are wanted.
import { useEffect, useState } from 'react'
import type { Drawing } from '../../paper/drawings/drawing.ts'
import type { Room } from '../model/drawings.ts'
import { useWorkshop } from '../sync/BenchContext.tsx'

/** @param workedKey what the drawings are made from; empty: not worked out yet */
export function useStepDrawing(workedKey: string, step: string, { width, mostHeight, system }: Room) {
  const workshop = useWorkshop()
  const [made, setMade] = useState<{ readonly of: string; readonly drawing: Drawing | undefined }>()
  const of = `${workedKey} ${step} ${width} ${system}`
  useEffect(() => {
    if (workedKey === '' || step === '') return
    let isWanted = true
    workshop.step(step, { width, mostHeight, system }).then(
      (drawing) => isWanted && setMade({ of, drawing }),
      () => undefined,
    )
    return () => {
      isWanted = false
    }
  }, [workshop, workedKey, step, width, mostHeight, system, of])
  return made?.of === of ? made.drawing : undefined
}

export interface LineDrawing {
  readonly line: string
  readonly drawn: Drawing
}

export function useLineDrawings(workedKey: string, lines: readonly string[], { width, mostHeight, system }: Room) {
  const workshop = useWorkshop()
  const [made, setMade] = useState<{ readonly of: string; readonly drawings: readonly LineDrawing[] }>()
  const of = `${workedKey} ${lines.join()} ${width} ${system}`
  // biome-ignore lint/correctness/useExhaustiveDependencies: `of` stands for the lines
  useEffect(() => {
    if (workedKey === '' || lines.length === 0) return
    let isWanted = true
    Promise.all(lines.map((line) => workshop.line(line, { width, mostHeight, system }))).then(
      (drawings) =>
        isWanted &&
        setMade({
          of,
          drawings: drawings.flatMap((drawn, index) => (drawn ? [{ line: lines[index] ?? '', drawn }] : [])),
        }),
      () => undefined,
    )
    return () => {
      isWanted = false
    }
  }, [workshop, of])
  return made?.of === of ? made.drawings : undefined
}
