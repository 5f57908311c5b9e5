// Problems of a planning problem handed to the sequence engine.
import { table } from '../entry.ts'

export const PLANNING = table({
  PLANNING_UNKNOWN_OPERATION: {
    says: ({ where, id }) => `${where} names the operation '${id}', which is not in the problem.`,
    next: 'Name an operation by its id, or take the relation out.',
    http: 422,
  },
  PLANNING_SHAPE: {
    says: ({ where, found, expected }) => `The planning problem has ${found} at ${where}; expected was ${expected}.`,
    next: 'Mend it there; docs/reference/contract.md says what each place means.',
    http: 422,
  },
  PLANNING_ID_TWICE: {
    says: ({ where, id }) => `${where} has the id '${id}', which another one has already.`,
    next: 'Give every one an id of its own.',
    http: 422,
  },
})
