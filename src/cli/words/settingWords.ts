// Settings for people: figures with their limit, verdict and basis; what is missing. Cautions and sources stand once, at the end.
import { figureText, limitText } from '../../paper/figureText.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Figure, Setting } from '../../unit/connections/kind.ts'
import { type Pen, wrapped } from './pen.ts'

const BASIS: Readonly<Record<Figure['basis'], string>> = {
  readings: 'from readings',
  nominal: 'from nominal sizes',
  mixed: 'from readings and nominal sizes',
  table: 'from a table',
}

export function settingWords(settings: readonly Setting[], pen: Pen, system: System): string[] {
  const sources = new Map<string, number>()
  const sourceNumber = (source: string): number => {
    const number = sources.get(source) ?? sources.size + 1
    sources.set(source, number)
    return number
  }
  const each = settings.flatMap(({ title, figures, says, missing }) => [
    pen.strong(title),
    ...figures.flatMap((figure) => figureWords(figure, { pen, system, number: sourceNumber(figure.source) })),
    ...says.flatMap((line) => wrapped(line, { width: pen.width, first: '  ', rest: '    ' })),
    ...missing.flatMap((line) => wrapped(line, { width: pen.width, first: '  ? ', rest: '    ' })),
    '',
  ])
  return [...each, ...cautionWords(settings, pen), ...sourceWords(sources, pen)]
}

function figureWords(
  { label, dimension, low, high, limit, verdict, basis, standing, note }: Figure,
  { pen, system, number }: { pen: Pen; system: System; number: number },
): string[] {
  const doubt = standing === 'supposed' ? ', supposed' : ''
  const text = `${label}: ${figureText({ low, high }, dimension, system)}, ${BASIS[basis]}${doubt} [${number}]`
  const judged = limit && `${verdictWords(verdict)}: ${limitText(limit, dimension, system)} (${limit.source})`
  const under = (line: string) => wrapped(line, { width: pen.width, first: '    ', rest: '      ' })
  return [
    ...wrapped(text, { width: pen.width, first: '  ', rest: '    ' }),
    ...(judged ? under(judged).map(verdict === 'within' ? pen.faint : pen.stop) : []),
    ...(note ? under(note) : []),
  ]
}

const verdictWords = (verdict: Figure['verdict']): string =>
  verdict === 'within' ? 'kept' : verdict === 'out' ? 'BROKEN' : 'not known whether kept'

/** So many connections are named; more are counted. */
const FEW = 3

/** Each caution once, with the connections that it is for. */
function cautionWords(settings: readonly Setting[], pen: Pen): string[] {
  const all = new Map<string, Set<string>>()
  for (const { title, cautions } of settings) {
    for (const line of cautions) all.set(line, (all.get(line) ?? new Set()).add(title))
  }
  if (all.size === 0) return []
  return [
    pen.stop('Cautions'),
    ...[...all].flatMap(([line, titles]) => {
      const of = titles.size <= FEW ? [...titles].join('; ') : `${titles.size} connections`
      return wrapped(`${line} (${of})`, { width: pen.width, first: '  ! ', rest: '    ' })
    }),
    '',
  ]
}

function sourceWords(sources: ReadonlyMap<string, number>, pen: Pen): string[] {
  if (sources.size === 0) return []
  return [
    pen.strong('What the figures rest on'),
    ...[...sources].flatMap(([source, number]) =>
      wrapped(`[${number}] ${source}`, { width: pen.width, first: '  ', rest: '      ' }),
    ),
  ].map(pen.faint)
}
