// What docstrings call by the names of functions, in the names that people type.
import { keyOf } from './frame/workOut.ts'
import { FIGURES } from './list.ts'

/** Calculation → the figure that is asked for it; one that stands first in a figure comes before one that only helps there. */
const FIGURE_OF = new Map([
  ...FIGURES.flatMap(({ name, of }) => of.map((calculation) => [calculation, name] as const)).reverse(),
  ...FIGURES.map(({ name, of }) => [of[0], name] as const).reverse(),
])

const CALLED = /`?\b([a-z]{2,}(?:[A-Z][a-z0-9]+)+)\b`?/g

/** `interferencePressure` becomes `figure press-pressure`; the name of an input becomes what is typed for it. */
export function inFigureNames(text: string): string {
  return text.replace(CALLED, (_, name: string) => {
    const figure = FIGURE_OF.get(name)
    return figure ? `figure ${figure}` : keyOf(name)
  })
}
