// Problems of a planning problem handed to the sequence engine.
import { table } from '../entry.ts'

export const PLANNING = table({
  PLANNING_UNKNOWN_OPERATION: {
    says: ({ where, id }) => `${where} names the operation '${id}', which is not in the problem.`,
    next: 'Name an operation by its id, or take the relation out.',
    http: 422,
  },
})
