// A sequence as a person wrote it down: one step on a line, numbered or not, `#` before what is only said.
// Or the answer of `sequence --json`, as it is.
import { Problem } from '../problem/problem.ts'
import { nearest } from '../unit/file/nearest.ts'
import { meant, type Named } from './nameOf.ts'

export interface ToldOrder {
  readonly steps: readonly { readonly op: string; readonly mode?: string }[]
  /** Lines that name no step, or may name several; and steps that are missing or stand twice. */
  readonly faults: readonly Problem[]
}

/** @param file as it is to be named in faults */
export function readOrder(text: string, file: string, known: readonly Named[]): ToldOrder {
  const faults: Problem[] = []
  const steps = linesOf(text).flatMap(({ name, mode, line, column }) => {
    const ids = meant(name, known)
    const [id] = ids
    if (ids.length === 1 && id !== undefined) return [{ op: id, ...(mode !== undefined && { mode }) }]
    const place = { file, line, column }
    const near =
      nearest(
        name,
        known.map(({ id: other }) => other),
      ) ?? ''
    faults.push(
      ids.length > 1
        ? new Problem('NAME_NOT_CLEAR', { name, what: 'step', several: ids.join(', ') }, place)
        : new Problem(
            'ORDER_LINE_UNKNOWN',
            { name, nearest: near, known: few(known.map(({ id: other }) => other)) },
            place,
          ),
    )
    return []
  })
  if (faults.length > 0) return { steps, faults }
  const listed = steps.map(({ op }) => op)
  const missing = known.map(({ id }) => id).filter((id) => !listed.includes(id))
  const twice = listed.filter((id, place) => listed.indexOf(id) < place)
  const end = { file, line: text.trimEnd().split('\n').length, column: 1 }
  if (missing.length > 0) faults.push(new Problem('ORDER_INCOMPLETE', { what: 'leaves out', steps: few(missing) }, end))
  if (twice.length > 0) faults.push(new Problem('ORDER_INCOMPLETE', { what: 'lists twice', steps: few(twice) }, end))
  return { steps, faults }
}

interface Line {
  readonly name: string
  readonly mode?: string
  readonly line: number
  readonly column: number
}

function linesOf(text: string): readonly Line[] {
  return (
    stepsOfAnswer(text) ??
    text.split(/\r?\n/).flatMap((written, index): Line[] => {
      const bare = written.replace(/^\s*(?:\d+[.):]?\s+|[-·*]\s+)?/, '')
      const name = bare.replace(/(?:^|\s)#.*$/, '').trim()
      return name === '' ? [] : [{ name, line: index + 1, column: written.length - bare.length + 1 }]
    })
  )
}

function stepsOfAnswer(text: string): readonly Line[] | undefined {
  if (!text.trimStart().startsWith('{')) return undefined
  try {
    const { steps } = JSON.parse(text) as { steps?: unknown }
    if (!Array.isArray(steps)) return undefined
    return steps.map(({ id, mode }: { id?: unknown; mode?: unknown }) => ({
      name: String(id),
      ...(typeof mode === 'string' && { mode }),
      line: 1,
      column: 1,
    }))
  } catch {
    return undefined
  }
}

const few = (ids: readonly string[]): string =>
  ids.length > 12 ? `${ids.slice(0, 12).join(', ')} and ${ids.length - 12} more` : ids.join(', ')
