// What every drawing is: a picture, its name, and the same in words.
import { escaped, type Markup, markup } from '../markup.ts'
import { DRAWING_STYLE } from './style.ts'

/** A drawing in CSS pixels (96 to the inch, on paper too: 2 px is the thick line of 0.5 mm). */
export interface Drawing {
  readonly title: string
  /** The text equivalent: what somebody who cannot see the drawing has to be told. */
  readonly says: string
  /** One `<svg>` element. It wears the classes of DRAWING_STYLE, which has to be on the page once; `svgFile` brings it along. */
  readonly svg: string
  readonly width: number
  readonly height: number
  /** What was drawn by convention or could not be drawn; belongs beneath the drawing. */
  readonly notes: readonly string[]
}

export interface Content {
  readonly title: string
  readonly says: string
  readonly width: number
  readonly height: number
  readonly inner: readonly Markup[]
  readonly notes?: readonly string[]
}

/** Closes a drawing: name and text equivalent stand in the picture itself, so that they cannot be lost. */
export function drawing({ title, says, width, height, inner, notes = [] }: Content): Drawing {
  const [w, h] = [Math.ceil(width), Math.ceil(height)]
  const svg = markup`<svg xmlns="http://www.w3.org/2000/svg" class="d" role="img" aria-label="${title}" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}"><title>${title}</title><desc>${says}</desc>${inner}</svg>`
  return { title, says, svg: svg.markup, width: w, height: h, notes }
}

/**
 * The drawing as a file of its own, with its style and an XML head.
 *
 * @example svgFile(holeMap(map)).startsWith('<?xml')   // true
 */
export const svgFile = ({ svg }: Drawing): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${svg.replace('<title>', `<style>${escaped(DRAWING_STYLE)}</style><title>`)}\n`

/** A number of a path: a tenth of a pixel is finer than any printer. */
export const px = (value: number): string => String(Math.round(value * 10) / 10 + 0)

export interface Point {
  readonly x: number
  readonly y: number
}

/** An open or closed run of straight lines as path data. */
export const run = (points: readonly Point[], closed = false): string =>
  points.map(({ x, y }, index) => `${index ? 'L' : 'M'}${px(x)} ${px(y)}`).join('') + (closed ? 'Z' : '')
