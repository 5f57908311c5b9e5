// What `figure` tells people.
import type { FigureAnswer, FiguresAnswer } from '../answers/schema.ts'
import { type Pen, wrapped } from './pen.ts'

type About = FiguresAnswer['figures'][number]

/** Every figure by room, with its question. */
export function listWords(figures: readonly About[], pen: Pen): string[] {
  const rooms = [...new Set(figures.map(({ room }) => room))]
  const width = Math.max(...figures.map(({ name }) => name.length))
  return [
    ...rooms.flatMap((room) => [
      pen.strong(room[0]!.toUpperCase() + room.slice(1)),
      ...figures
        .filter((each) => each.room === room)
        .flatMap(({ name, asks }) =>
          wrapped(asks, { width: pen.width, first: `  ${name.padEnd(width)}  `, rest: ' '.repeat(width + 4) }),
        ),
      '',
    ]),
    ...wrapped("'matchmark figure NAME' says what a figure wants; 'matchmark figure NAME key=value …' works it out.", {
      width: pen.width,
      rest: '',
    }),
  ]
}

/** What one figure wants, with a line to try. */
export function aboutWords({ name, asks, formula, holds, source, inputs, example }: About, pen: Pen): string[] {
  const part = parts(pen)
  const input = ({ key, what, wants }: About['inputs'][number]) => [
    ...wrapped(`${key}=${'…'}  ${what}`.trimEnd(), { width: pen.width, first: '  ', rest: '      ' }),
    ...wrapped(wants, { width: pen.width, first: '      ', rest: '      ' }).map(pen.faint),
  ]
  const needed = inputs.filter((each) => each.needed)
  const others = inputs.filter((each) => !each.needed)
  return [
    pen.strong(`${name}: ${asks}`),
    ...wrapped(holds, { width: pen.width, first: '  ', rest: '  ' }),
    ...(needed.length > 0 ? ['Wants', ...needed.flatMap(input)] : []),
    ...(others.length > 0 ? ['May be told as well', ...others.flatMap(input)] : []),
    ...part('Worked by', [formula]),
    ...part('Source', [source]),
    ...part('Try', [example]),
  ]
}

/** The answer with all that belongs to it. */
export function figureWords(answer: FigureAnswer, pen: Pen): string[] {
  const { asks, given, missing, results, margins, formula, taken, holds, cautions, sources } = answer
  const part = parts(pen)
  const told = given.map(({ key, text }) => `${key.replaceAll('-', ' ')} ${text.trim()}`).join(' · ')
  const wide = Math.max(0, ...[...results, ...margins].map(({ name }) => name.length)) + 1
  const lines = (of: FigureAnswer['results']) =>
    of.flatMap(({ name, says }) =>
      wrapped(says, { width: pen.width, first: `  ${`${name}:`.padEnd(wide)} `, rest: ' '.repeat(wide + 3) }),
    )
  if (missing.length > 0) {
    return [
      pen.strong(asks),
      ...wrapped(told, { width: pen.width, first: '  ', rest: '  ' }).map(pen.faint),
      pen.stop('Not known. It wants:'),
      ...missing.flatMap(({ key, wants }) =>
        wrapped(`${key}  ${wants}`.trimEnd(), { width: pen.width, first: '  ? ', rest: '      ' }),
      ),
      ...wrapped(`'matchmark figure ${answer.name}' says how each is written.`, { width: pen.width, rest: '' }),
    ]
  }
  return [
    pen.strong(asks),
    ...wrapped(told, { width: pen.width, first: '  ', rest: '  ' }).map(pen.faint),
    '',
    ...lines(results),
    ...(margins.length > 0 ? ['Margin', ...lines(margins)] : []),
    '',
    ...part('Worked by', [formula]),
    ...part('Taken', taken),
    ...part('Holds', [holds]),
    ...(cautions.length > 0
      ? [
          pen.stop('Cautions'),
          ...cautions.flatMap((line) => wrapped(line, { width: pen.width, first: '  ! ', rest: '    ' })),
        ]
      : []),
    ...part('Source', sources),
    FIRST,
  ]
}

const parts =
  (pen: Pen) =>
  (title: string, lines: readonly string[]): string[] => {
    const full = lines.filter((line) => line !== '')
    return full.length === 0
      ? []
      : [title, ...full.flatMap((line) => wrapped(line, { width: pen.width, first: '  ', rest: '  ' })).map(pen.faint)]
  }

const FIRST = "The maker's manual, the local code and licensed practice come first."
