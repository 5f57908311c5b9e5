// One question of a connection, as all kinds word it.
import type { Connection } from '../model/unit.ts'
import type { Question } from './kind.ts'

/** The questions of those that are still open. `about` is the connection unless another is named. */
export function openQuestions(
  connection: Connection,
  asked: readonly {
    readonly open: boolean
    readonly asks: string
    readonly holdsUp: string
    readonly rank: Question['rank']
  }[],
): readonly Question[] {
  return asked
    .filter(({ open }) => open)
    .map(({ asks, holdsUp, rank }) => ({ about: connection.id, asks, holdsUp, rank }))
}
