import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import { parseSpan } from './parseSpan.ts'
import { type Range, readRange } from './readQuantity.ts'

/**
 * A number without a unit, or a range of them: a count, a share, a taper. Written like any quantity; a share may be in
 * per cent and a taper as 1:12.
 *
 * @param text `20`, `0.12..0.16`, `90 %`, `1:12`, `1/12`
 * @throws NUMBER_WITH_UNIT and the problems of readRange
 * @example readPlainNumber('1:16').low   // 0.0625
 * @example readPlainNumber('2.5..10 %').high   // 0.1
 */
export function readPlainNumber(text: string): Range<number> {
  const [, number = '', percent] = /^(.*?)\s*(%?)\s*$/s.exec(text.replace(/(?<=\d)\s*:\s*(?=\d)/g, '/'))!
  const { first, second } = parseSpan(number)
  for (const side of [first, second]) {
    const unit = side?.amounts.flatMap(({ pieces }) => pieces).find((piece) => piece.unit !== undefined)?.unit
    if (unit !== undefined) throw new Problem('NUMBER_WITH_UNIT', { text: clip(text), unit })
  }
  // Metres are SI: the number stays what it is.
  const { low, high } = readRange(number, { as: 'length', unit: 'm' })
  return percent ? { low: low / 100, high: high / 100 } : { low, high }
}
