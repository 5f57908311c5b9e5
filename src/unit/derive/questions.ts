// What is not known, ranked by what it holds up.
import type { Question } from '../connections/kind.ts'
import type { Unit } from '../model/unit.ts'
import type { Derivation } from './compile.ts'

export function questionsIn(
  unit: Unit,
  derivation: Derivation,
  fromConnections: readonly Question[],
): readonly Question[] {
  const questions = [
    ...doubtful(unit, derivation),
    ...places(unit),
    ...openingsNobodyCloses(unit),
    ...masses(unit),
    ...fromConnections,
  ]
  return questions.toSorted((a, b) => a.rank - b.rank)
}

/** One question for each pair, however many steps wait for it. */
function doubtful(unit: Unit, { doubts }: Derivation): readonly Question[] {
  const pairs = new Map<string, Question>()
  for (const doubt of doubts) {
    pairs.set(`${doubt.step} ${doubt.about}`, {
      about: doubt.step,
      asks: `${doubt.says.replace(' cannot pass ', ' may not pass ')}. Measure it, or say that it passes.`,
      holdsUp:
        doubt.about === unit.housing
          ? `which ways bring ${doubt.step} home`
          : `whether ${doubt.step} has to go before ${doubt.about}`,
      rank: 1,
    })
  }
  return [...pairs.values()]
}

function places(unit: Unit): readonly Question[] {
  if (unit.lines.size < 2) return []
  return [...unit.lines.values()]
    .filter((line) => !line.place)
    .map((line) => ({
      about: `line ${line.id}`,
      asks: `Where does line ${line.id} stand beside the others?`,
      holdsUp: 'what on one line bars the way along another',
      rank: 2 as const,
    }))
}

function openingsNobodyCloses(unit: Unit): readonly Question[] {
  const closed = new Set([...unit.parts.values()].flatMap((part) => part.closes))
  return [...unit.fills.values()].flatMap((fill) =>
    fill.above
      .filter((opening) => !closed.has(opening))
      .map((opening) => ({
        about: opening,
        asks: `What closes the ${opening}?`,
        holdsUp: `${fill.id}, which stands above it`,
        rank: 1 as const,
      })),
  )
}

function masses(unit: Unit): readonly Question[] {
  const unweighed = [...unit.parts.values()].filter((part) => !part.mass).map((part) => part.id)
  if (unweighed.length === 0) return []
  const shown = unweighed.slice(0, 6).join(', ')
  const more = unweighed.length > 6 ? ` and ${unweighed.length - 6} more` : ''
  return [
    {
      about: 'masses',
      asks: `What do these weigh: ${shown}${more}?`,
      holdsUp: 'the mass of the unit when it is lifted or turned',
      rank: 3,
    },
  ]
}
