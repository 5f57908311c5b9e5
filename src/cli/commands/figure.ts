// `figure NAME key=value …`: works out one calculation; without a name it lists them by the question that each answers.
import type { Figure } from '../../figures/frame/figure.ts'
import { noteOf } from '../../figures/frame/note.ts'
import { keyOf, whatOf, workOut } from '../../figures/frame/workOut.ts'
import { inFigureNames } from '../../figures/inFigureNames.ts'
import { ROOMS } from '../../figures/list.ts'
import { Problem } from '../../problem/problem.ts'
import { nearest } from '../../unit/file/nearest.ts'
import type { FigureAnswer, FiguresAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { meant, nameOf } from '../nameOf.ts'
import { aboutWords, figureWords, listWords } from '../words/figureWords.ts'
import { penFor } from '../words/pen.ts'

interface Wanted {
  readonly name: string | undefined
  /** The words behind the name, as the shell parted them. */
  readonly inputs: readonly string[]
}

export async function figure(
  io: Io,
  { name, inputs }: Wanted,
  asked: Asked & Record<string, unknown>,
): Promise<ExitCode> {
  const pen = penFor(io)
  if (name === undefined) {
    const of = Object.entries(ROOMS).flatMap(([room, figures]) => figures.map((each) => aboutOf(room, each)))
    io.out(asked.json ? jsonLine(listOf(of)) : listWords(of, pen).join('\n'))
    return 0
  }
  const words = wordsOf([name, ...inputs].map(readable))
  const [room, found] = figureNamed(words.name)
  const about = aboutOf(room, found)
  if (asked.help === true || words.inputs.length === 0) {
    io.out(asked.json ? jsonLine(listOf([about])) : aboutWords(about, pen).join('\n'))
    return 0
  }
  const { isBad, ...result } = workOut(found, { typed: typedOf(found, words.inputs), system: asked.system })
  const answer: FigureAnswer = {
    schema: 'matchmark-figure/1',
    name: found.name,
    asks: found.asks,
    ...result,
    given: [...result.given],
    missing: result.missing.map(({ key, wants }) => ({ key, wants: inFigureNames(wants) })),
    results: [...result.results],
    margins: [...result.margins],
    formula: found.words,
    taken: result.taken.map(inFigureNames),
    holds: about.holds,
    cautions: result.cautions.map(inFigureNames),
    sources: result.sources.map(inFigureNames),
  }
  io.out(asked.json ? jsonLine(answer) : figureWords(answer, pen).join('\n'))
  return isBad ? 1 : 0
}

type About = FiguresAnswer['figures'][number]

const listOf = (figures: About[]): FiguresAnswer => ({ schema: 'matchmark-figures/1', figures })

function aboutOf(room: string, told: Figure): About {
  const { says, source } = noteOf(told.of[0])
  return {
    name: told.name,
    room,
    asks: told.asks,
    formula: told.words,
    holds: inFigureNames(says),
    source: inFigureNames(source),
    inputs: Object.entries(told.inputs).map(([name, ask]) => ({
      key: keyOf(name),
      what: inFigureNames(whatOf(told, name)),
      wants: ask.wants,
      needed: ask.isOptional !== true && ask.worst === undefined,
    })),
    example: `matchmark figure ${told.name} ${told.example}`,
  }
}

/** Line ends of a pasted list are spaces; what no terminal shows (and some obey) is refused. */
function readable(word: string): string {
  const line = word.replace(/\s+/g, ' ')
  if (!/[\p{Cc}\p{Cf}]/u.test(line)) return line
  const reason = `'${line.replace(/[\p{Cc}\p{Cf}]/gu, '·')}' has characters that do not show (· here)`
  throw new Problem('WRONG_USE', { reason, help: 'matchmark figure' })
}

/** The words before the first `=` are the name; a word without one goes with the value before it: `lead=1.5 mm`. */
function wordsOf(words: readonly string[]): { name: string; inputs: string[] } {
  const name: string[] = []
  const inputs: string[] = []
  for (const word of words) {
    if (/^[\p{L}\d _-]+=/u.test(word)) inputs.push(word)
    else if (inputs.length > 0) inputs.push(`${inputs.pop()} ${word}`)
    else name.push(word)
  }
  return { name: name.join('-'), inputs }
}

function figureNamed(name: string): [room: string, figure: Figure] {
  const all = Object.entries(ROOMS).flatMap(([room, figures]) => figures.map((each) => [room, each] as const))
  const known = all.map(([, each]) => ({ id: each.name, also: each.asks }))
  if (
    meant(name, known).length === 0 &&
    nearest(
      name,
      known.map(({ id }) => id),
    ) === undefined
  ) {
    throw new Problem('WRONG_USE', { reason: `There is no figure called '${name}'`, help: 'matchmark figure' })
  }
  const id = nameOf(name, known, { what: 'figure', file: 'Matchmark' })
  const [room, found] = all.find(([, each]) => each.name === id)!
  return [room, found]
}

function typedOf({ name, inputs }: Figure, words: readonly string[]): ReadonlyMap<string, string> {
  const keys = Object.keys(inputs).map((input) => ({ id: keyOf(input), also: input }))
  const typed = new Map<string, string>()
  for (const word of words) {
    const at = word.indexOf('=')
    const key = nameOf(word.slice(0, at).trim(), keys, { what: 'input', file: `The figure ${name}` })
    if (typed.has(key)) throw new Problem('FIGURE_KEY_TWICE', { key })
    typed.set(key, word.slice(at + 1))
  }
  return typed
}
