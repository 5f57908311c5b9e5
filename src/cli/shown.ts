// What reaches the screen: letters, ends of lines, and the few marks of our own pen. Names come out of files that others have written.
import { SGR } from './words/pen.ts'

const OURS = Object.values(SGR)
  .flat()
  .map((code) => `\u001b[${code}m`)

/** What a terminal obeys instead of showing it (ISO/IEC 6429: C0, DEL, C1), and what turns the order of letters round (Unicode UAX 9, 2.1 to 2.5). */
const OBEYED = /[^\n\t\P{Cc}]|[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu

/**
 * Text for a person to see. What would be obeyed is shown as a mark.
 *
 * @param colour whether marks of our own pen are wanted
 * @example shown('J41\u001b[2J', false)   // 'J41�[2J'
 */
export function shown(text: string, colour: boolean): string {
  const clean = (piece: string) => piece.replace(OBEYED, '\u{FFFD}')
  if (!colour || !text.includes('\u001b')) return clean(text)
  let rest = text
  let done = ''
  while (rest !== '') {
    const next = rest.indexOf('\u001b')
    if (next < 0) return done + clean(rest)
    const ours = OURS.find((mark) => rest.startsWith(mark, next))
    done += clean(rest.slice(0, next)) + (ours ?? '\u{FFFD}')
    rest = rest.slice(next + (ours?.length ?? 1))
  }
  return done
}

/** The same in JSON, where it can be said without changing what it says. */
export const shownJson = (json: string): string =>
  json.replace(OBEYED, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`)
