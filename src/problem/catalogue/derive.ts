// Contradictions that show only when a unit is worked out.
import { table } from '../entry.ts'

export const DERIVE = table({
  PARTS_SHARE_A_PLACE: {
    says: ({ part, other, ring, otherRing }) =>
      `At home ${part} (${ring}) and ${other} (${otherRing}) would be in the same place.`,
    next: 'Measure again, or say what lets them: meshes, slides on, keys, runs on, or the kind of fit.',
    http: 422,
  },
  SEATS_DISAGREE: {
    says: ({ part, other, off }) =>
      `${part} is said to stand against ${other}, but by its sizes the nearest faces are ${off} apart.`,
    next: 'Measure both faces from the datum again, or correct the seat.',
    http: 422,
  },
  TWO_SEATS_DISAGREE: {
    says: ({ part, first, second, apart }) =>
      `${part} stands against ${first} and against ${second}, but the two seats put it ${apart} apart.`,
    next: 'Measure both faces again, or leave out the seat that is not one.',
    http: 422,
  },
  SEATS_GO_ROUND: {
    says: ({ part }) => `The seat of ${part} leads back to ${part}: no face of the circle stands on the datum.`,
    next: 'Write one part of the circle from the datum face, without stands.',
    http: 422,
  },
  CARRIERS_GO_ROUND: {
    says: ({ chain }) => `${chain}: none of them stands on the housing.`,
    next: 'Correct `onto` of one of them; a part without `onto` goes into the housing.',
    http: 422,
  },
  NEEDS_CONTRADICT: {
    says: ({ says }) => `These cannot all hold, so there is no sequence: ${says}`,
    next: 'Give up the one that is only a habit.',
    http: 422,
  },
  NO_WAY_IN: {
    says: ({ part, bars }) => `No way brings ${part} home. ${bars}.`,
    next: 'Measure what bars it, let it come from elsewhere (onto, way), or say what may be passed.',
    http: 422,
  },
})
