import type { Connection } from '../../model/unit.ts'
import type { Contribution } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import type { LipSealGiven } from './given.ts'

/** A lip seal adds no step. Its lip touches the shaft that it runs on, whichever of the two moves. */
export function steps(_connection: Connection, given: LipSealGiven): Contribution {
  const { seal } = given
  const shaft = given['runs on']?.part
  const carrier = given.in?.part
  const over = given.over?.join(' and ') ?? 'keyway, splines and sharp steps'
  const work = [
    `Oil the lip of ${seal} and turn it to ${given['lip to'] ?? 'the oil'}.`,
    given.sleeve
      ? `Slip ${given.sleeve} over ${over}, then ${seal} over it.`
      : `Cover ${over} with a thin sleeve or tape before ${seal} passes.`,
    `Press ${seal} in square, load on its outer rim${depthText(given)}.`,
    `Hold ${shaft ?? 'the shaft'} up meanwhile: it must not hang on the lip.`,
  ]
  return {
    ...NOTHING,
    within: work.map((does) => ({ part: seal, does })),
    mayOverlap: [
      ...(carrier === undefined ? [] : [{ mover: seal, other: carrier }]),
      ...(shaft === undefined
        ? []
        : [
            { mover: seal, other: shaft },
            { mover: shaft, other: seal },
          ]),
    ],
  }
}

function depthText({ depth }: LipSealGiven): string {
  return typeof depth === 'string' ? `, ${depth}` : ''
}
