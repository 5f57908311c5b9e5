// How text for people is set: headings, weights, lines of a bearable length.
import type { Io } from '../io.ts'

export interface Pen {
  readonly width: number
  readonly strong: (text: string) => string
  readonly faint: (text: string) => string
  readonly stop: (text: string) => string
}

export const SGR = { strong: [1, 22], faint: [2, 22], stop: [31, 39] } as const
const NARROWEST = 40

export function penFor({ colour, width }: Pick<Io, 'colour' | 'width'>): Pen {
  const set = ([on, off]: readonly [number, number]) =>
    colour ? (text: string) => `\u001b[${on}m${text}\u001b[${off}m` : (text: string) => text
  return { width: Math.max(NARROWEST, width), strong: set(SGR.strong), faint: set(SGR.faint), stop: set(SGR.stop) }
}

/**
 * Breaks a sentence between words; the lines after the first begin with `rest`.
 *
 * @example wrapped('lower case on the bench', { width: 12, first: '1 ', rest: '  ' })   // ['1 lower case', '  on the', '  bench']
 */
export function wrapped(
  text: string,
  { width, first = '', rest = first }: { width: number; first?: string; rest?: string },
): string[] {
  const lines: string[] = []
  let line = first
  let isEmpty = true
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (!isEmpty && line.length + 1 + word.length > width) {
      lines.push(line)
      line = rest
      isEmpty = true
    }
    line += isEmpty ? word : ` ${word}`
    isEmpty = false
  }
  return [...lines, line]
}
