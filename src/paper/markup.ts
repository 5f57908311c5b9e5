// Markup that cannot be broken by a name: whatever goes into a template is escaped unless it is markup already.

/** Text that is well-formed markup: SVG or HTML. Only `markup` and `trusted` make one. */
export interface Markup {
  readonly markup: string
}

type Piece = string | number | Markup | undefined | false | readonly Piece[]

const NAMED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Control characters that no XML document may hold, not even as a reference (XML 1.0, section 2.2). */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu

/**
 * Text that can stand between tags and inside a quoted attribute.
 *
 * @example escaped('<b> & "c"')   // '&lt;b&gt; &amp; &quot;c&quot;'
 */
export const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '\u{FFFD}').replace(/[&<>"']/g, (letter) => NAMED[letter] ?? letter)

/** Takes text for markup as it stands: only for what this program itself has written. */
export const trusted = (text: string): Markup => ({ markup: text })

/** Keys that a sentence names stand in quotation marks on paper, not in backticks. */
const quoted = (text: string): string => text.replace(/`([^`]+)`/g, '“$1”')

function textOf(piece: Piece): string {
  if (piece === undefined || piece === false) return ''
  if (typeof piece === 'string') return escaped(quoted(piece))
  if (typeof piece === 'number') return String(piece)
  if ('markup' in piece) return piece.markup
  return piece.map(textOf).join('')
}

/** A template whose pieces are escaped; lists are joined, `undefined` and `false` leave nothing. */
export const markup = (strings: TemplateStringsArray, ...pieces: readonly Piece[]): Markup =>
  trusted(String.raw({ raw: strings }, ...pieces.map(textOf)))

/**
 * Text inside the quotes of a CSS string, safe inside a style element too.
 *
 * @example cssString('</style>"')   // '"\\3c \\2f style\\3e \\22 "'
 */
export const cssString = (text: string): string =>
  `"${text.replace(FORBIDDEN, ' ').replace(/[^\p{L}\p{N} .,:·-]/gu, (letter) => `\\${letter.codePointAt(0)?.toString(16)} `)}"`
