// The setting that is tried at a step: what is said to be in, what the tries read, what has to come off before the next.
import { useEffect, useMemo, useState } from 'react'
import type { System } from '../../../quantity/printQuantity.ts'
import type { Saying } from '../../../record/entriesOfJob.ts'
import type { NextTry } from '../../../unit/tries/nextTry.ts'
import { isDone, type JobOnSheet } from '../../model/jobOnSheet.ts'
import type { TakeOff } from '../../model/takeOff.ts'
import {
  type FittedDraft,
  type FittedSaid,
  fittedOf,
  NO_DRAFT,
  resultNow,
  type TriesView,
  triesView,
  tryOf,
} from '../../model/tries.ts'
import type { TrySheet } from '../../model/trySheets.ts'
import type { StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { useWorkshop } from '../../sync/BenchContext.tsx'
import { useDraft } from '../useDraft.ts'

export interface Trying {
  readonly sheet: TrySheet
  readonly view: TriesView
  /** What to try next; missing while it is worked out, and before the first try. */
  readonly next?: NextTry
  readonly draft: FittedDraft
  readonly setDraft: (draft: FittedDraft) => void
  readonly fitted: FittedSaid
  /** What comes off before the next try; missing: the last reading is not out, or the unit does not say what sets it. */
  readonly off?: TakeOff
  /** What is entered beside a reading of the check. */
  readonly with: (said: Saying & { readonly kind: 'check-result' }) => readonly Saying[]
  readonly clear: () => void
}

interface Given {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly workedKey: string
  readonly step: StepSheetData
  readonly system: System
}

export function useTries({ job, worked, workedKey, step, system }: Given): Trying | undefined {
  const sheet = step.tries
  const [text, setText] = useDraft(`${job.number} fitted ${sheet?.of ?? ''}`)
  const off = useTakeOff({ job, workedKey, step })
  const view = useMemo(
    () => sheet && triesView({ job, sheet, system, instruments: worked.instruments }),
    [job, sheet, system, worked],
  )
  const next = useNextTry({ worked, system, sheet, view })
  if (!sheet || !view) return undefined
  const draft = draftOf(text)
  const fitted = fittedOf(draft, sheet, system)
  return {
    sheet,
    view,
    ...(next && { next }),
    draft,
    setDraft: (next) => setText(JSON.stringify(next)),
    fitted,
    ...(off && { off }),
    with: (said) => tryOf(said, { sheet, view, fitted }),
    clear: () => setText(''),
  }
}

/** What an older app kept here, or another hand wrote, is as good as nothing. */
function draftOf(text: string): FittedDraft {
  try {
    const read = JSON.parse(text) as Partial<FittedDraft>
    const isText = (value: unknown) => (typeof value === 'string' ? value : '')
    return {
      by: read.by === 'nut' ? 'nut' : 'shims',
      ids: Array.isArray(read.ids) ? read.ids.filter((id) => typeof id === 'string') : [],
      pack: isText(read.pack),
      turn: isText(read.turn),
      lead: isText(read.lead),
    }
  } catch {
    return NO_DRAFT
  }
}

function useNextTry({
  worked,
  system,
  sheet,
  view,
}: Pick<Given, 'worked' | 'system'> & {
  readonly sheet: TrySheet | undefined
  readonly view: TriesView | undefined
}): NextTry | undefined {
  const workshop = useWorkshop()
  const [made, setMade] = useState<{ readonly of: TriesView; readonly next: NextTry | undefined }>()
  useEffect(() => {
    if (!sheet || !view || view.standing.length === 0) return
    let isWanted = true
    const uncertainties = Object.fromEntries(
      worked.instruments.map(({ name, uncertainty_m }) => [name, uncertainty_m ?? 0]),
    )
    workshop.nextTry({ tries: view.standing, sheet, system, uncertainties }).then(
      (next) => isWanted && setMade({ of: view, next }),
      () => undefined,
    )
    return () => {
      isWanted = false
    }
  }, [workshop, worked, system, sheet, view])
  return made?.of === view ? made?.next : undefined
}

/** Asked of the worker once the last reading is out, from the steps that stand at that moment. */
function useTakeOff({ job, workedKey, step }: Pick<Given, 'job' | 'workedKey' | 'step'>): TakeOff | undefined {
  const workshop = useWorkshop()
  const [made, setMade] = useState<{ readonly of: string; readonly off: TakeOff | undefined }>()
  const first = step.tries?.check === step.step ? step.tries.first : undefined
  const isOut = first !== undefined && resultNow(job.state, step) === 'bad' && isDone(job.state.steps.get(first))
  const done = isOut ? [...job.state.steps.values()].filter(isDone).map(({ step: id }) => id) : []
  const of = isOut && workedKey !== '' ? JSON.stringify([workedKey, first, done]) : ''
  // biome-ignore lint/correctness/useExhaustiveDependencies: `of` stands for what stands
  useEffect(() => {
    if (of === '' || first === undefined) return
    let isWanted = true
    workshop.off(first, done).then(
      (off) => isWanted && setMade({ of, off }),
      () => undefined,
    )
    return () => {
      isWanted = false
    }
  }, [workshop, of])
  return of !== '' && made?.of === of ? made.off : undefined
}
