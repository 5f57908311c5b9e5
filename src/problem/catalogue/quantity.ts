// Problems of reading and making quantities.
import { table } from '../entry.ts'

export const QUANTITY = table({
  NOT_A_NUMBER: {
    says: ({ unit, received }) => `A value in ${unit} has to be a finite number, not ${received}.`,
    next: 'Give the number as it was read.',
    http: 422,
  },
})
