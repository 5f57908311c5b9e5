// Settings for people: figures with their limit, verdict and basis; what is missing; cautions.
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
  const each = settings.flatMap(({ title, figures, says, missing }) => [
    pen.strong(title),
    ...figures.flatMap((figure) => figureWords(figure, pen, system)),
    ...says.flatMap((line) => wrapped(line, { width: pen.width, first: '  ', rest: '    ' })),
    ...missing.flatMap((line) => wrapped(line, { width: pen.width, first: '  ? ', rest: '    ' })),
    '',
  ])
  return [...each, ...cautionWords(settings, pen)]
}

/** Each caution once, with the connections that it is for. */
function cautionWords(settings: readonly Setting[], pen: Pen): string[] {
  const all = new Map<string, string[]>()
  for (const { title, cautions } of settings) {
    for (const line of cautions) all.set(line, [...(all.get(line) ?? []), title])
  }
  if (all.size === 0) return []
  return [
    pen.stop('Cautions'),
    ...[...all].flatMap(([line, titles]) => {
      const of = titles.length === settings.length ? '' : ` (${[...new Set(titles)].join('; ')})`
      return wrapped(`${line}${of}`, { width: pen.width, first: '  ! ', rest: '    ' })
    }),
  ]
}

const DOUBTS: Readonly<Partial<Record<Figure['standing'], string>>> = { supposed: ', supposed' }

function figureWords(
  { label, dimension, low, high, limit, verdict, basis, standing, note, source }: Figure,
  pen: Pen,
  system: System,
) {
  const judged = limit && `${verdictWords(verdict)} ${limitText(limit, dimension, system)} (${limit.source})`
  const text = `${label}: ${figureText({ low, high }, dimension, system)}`
  const rest = `${BASIS[basis]}${DOUBTS[standing] ?? ''}; ${source}`
  const lines = (line: string) => wrapped(line, { width: pen.width, first: '    ', rest: '      ' })
  return [
    ...wrapped(text, { width: pen.width, first: '  ', rest: '    ' }),
    ...(judged ? lines(judged).map(verdict === 'within' ? pen.faint : pen.stop) : []),
    ...(note ? lines(note) : []),
    ...lines(rest).map(pen.faint),
  ]
}

const verdictWords = (verdict: Figure['verdict']): string =>
  verdict === 'within' ? 'within' : verdict === 'out' ? 'OUT of' : 'not known whether within'
