import { figureText } from '../../paper/figureText.ts'

/**
 * A text as it is said at the bench: the two dots of a range, as the file and the papers have them, become a word.
 *
 * @example spoken('press load 1199..2887 N')   // 'press load 1199 to 2887 N'
 */
export const spoken = (text: string): string => text.replace(/(\d)\.\.([−-]?\d)/g, '$1 to $2')

/** A figure or a range as it is said at the bench, in the person's units. */
export const figureWords: typeof figureText = (...asked) => spoken(figureText(...asked))

/** On which sides of its limit a half-known figure may lie. */
export type Doubt = 'may be over' | 'may be under' | 'may be either'

interface Ends {
  readonly low?: number
  readonly high?: number
}

/**
 * Which side of its limit a range may go beyond; undefined where it cannot, or where there is no limit.
 *
 * @example doubtOf({ low: 1199, high: 2887 }, { high: 1562 })   // 'may be over'
 */
export function doubtOf(figure: Required<Ends>, limit: Ends | undefined): Doubt | undefined {
  const isOver = limit?.high !== undefined && figure.high > limit.high
  const isUnder = limit?.low !== undefined && figure.low < limit.low
  if (isOver && isUnder) return 'may be either'
  return isOver ? 'may be over' : isUnder ? 'may be under' : undefined
}
