// What is not known, for people: ranked, with what each gap holds up.
import type { Question } from '../../unit/connections/kind.ts'
import { type Pen, wrapped } from './pen.ts'
import { counted } from './timeWords.ts'

const RANKS = {
  1: 'Holds up the sequence or a setting',
  2: 'Would sharpen an answer',
  3: 'Worth writing down some day',
} as const

/** @param most of each rank; the rest is counted */
export function questionWords(questions: readonly Question[], pen: Pen, most = Number.POSITIVE_INFINITY): string[] {
  return ([1, 2, 3] as const).flatMap((rank) => {
    const mine = questions.filter((question) => question.rank === rank)
    if (mine.length === 0) return []
    const rest = mine.length - most
    return [
      `${pen.strong(RANKS[rank])} (${mine.length})`,
      ...mine.slice(0, most).flatMap(({ about, asks, holdsUp }) => [
        ...wrapped(asks.includes(about) ? asks : `${about}: ${asks}`, {
          width: pen.width,
          first: '  ? ',
          rest: '    ',
        }),
        ...wrapped(`holds up: ${holdsUp}`, { width: pen.width, first: '    ' }).map(pen.faint),
      ]),
      ...(rest > 0 ? [pen.faint(`    and ${counted(rest, 'more question')}`)] : []),
    ]
  })
}
