import { openQuestions } from '../ask.ts'
import { placeSize, sizeOf } from '../features.ts'
import type { Kind } from '../kind.ts'
import type { FitGiven } from './given.ts'
import { pairOf } from './pair.ts'

export const asks: Kind<FitGiven>['asks'] = (connection, given, unit) => {
  const { mover, other, heated } = pairOf(given, unit)
  const { fit } = given
  const tight = fit !== undefined && fit !== 'loose'
  const thermal = fit === 'hot' || fit === 'cold'
  const sized = given.shaft?.feature !== undefined && given.bore?.feature !== undefined
  const moves = mover === undefined ? undefined : unit.parts.get(mover)
  // A rolling bearing is of bearing steel until told otherwise, as the settings take it.
  const material = (id: string | undefined): boolean => {
    const part = id === undefined ? undefined : unit.parts.get(id)
    return part?.material !== undefined || part?.look === 'bearing'
  }
  return openQuestions(connection, [
    {
      open: mover === undefined || other === undefined,
      asks: 'Which part goes on, and onto what? Give `moves` and `onto`.',
      holdsUp: 'its steps and what may touch',
      rank: 1,
    },
    {
      open: fit === undefined,
      asks: 'Is it loose, pressed, fitted hot or fitted cold? Give `fit`.',
      holdsUp: 'its steps, its clocks, its press load',
      rank: 1,
    },
    {
      open: tight && moves !== undefined && moves.joined === undefined,
      asks: `Is ${mover} joined on the bench or in the housing? Give \`joined\` at the part.`,
      holdsUp: 'what moves as one body, and where it is pressed',
      rank: 1,
    },
    {
      open: tight && !sized,
      asks: 'Which sizes meet? Give `shaft` and `bore` as part.feature.',
      holdsUp: 'interference, press load, heat',
      rank: 2,
    },
    ...[given.shaft, given.bore].map((place) => {
      const { name, known } = placeSize(unit, place)
      return {
        open: tight && name !== undefined && known === undefined,
        asks: `Measure ${name}.`,
        holdsUp: 'interference, press load, heat',
        rank: 2 as const,
      }
    }),
    {
      open: tight && (!sizeOf(unit, given['hub outside']).known || !sizeOf(unit, given.length).known),
      asks: 'How thick is the hub, how long is the seat? Give `hub outside` and `length`.',
      holdsUp: 'press load and stress of the hub',
      rank: 2,
    },
    {
      open: tight && !(material(mover) && material(other)),
      asks: 'What are both parts made of? Give `material` at the parts.',
      holdsUp: 'press load, stress and heat: what is not known is taken at its worst',
      rank: 3,
    },
    {
      open: thermal && given['heated part'] === undefined,
      asks: `What is ${heated ?? 'the part'}: bearing with metal cage, with plastic cage or sealed, precision, or a plain part? Give \`heated part\`.`,
      holdsUp: 'how hot or cold it may be: the narrowest limit is taken',
      rank: 2,
    },
  ])
}
