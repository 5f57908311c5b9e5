// Problems at the edges: command line, files, server. Each of these is wrong use, not a fault of the work.
import { table } from '../entry.ts'
import type { Facts } from '../facts.ts'

const instead = ({ nearest, known }: Facts): string =>
  nearest ? `Did you mean '${nearest}'?` : `Known are: ${known || 'none'}.`

export const EDGES = table({
  FILE_UNREADABLE: {
    says: ({ file, reason }) => `The file ${file} cannot be read: ${reason}.`,
    next: 'Check the name and that you may read it.',
    http: 404,
  },
  FILE_IS_FOLDER: {
    says: ({ file }) => `${file} is a folder; expected a unit or a job file.`,
    next: 'Name the file in it.',
    http: 422,
  },
  FILE_NOT_TEXT: {
    says: ({ file, reason }) => `${file} is not a text file: ${reason}.`,
    next: 'Give a unit or a job file, saved as plain text in UTF-8.',
    http: 422,
  },
  FILE_UNWRITABLE: {
    says: ({ file, reason }) => `${file} cannot be written: ${reason}.`,
    next: 'Name a folder that you may write to.',
    http: 422,
  },
  WRONG_USE: {
    says: ({ reason }) => `${reason}.`,
    next: ({ help }) => `'${help}' lists what can be asked.`,
    http: 400,
  },
  NO_SUCH_NAME: {
    says: ({ name, what, file }) => `${file} has no ${what} called '${name}'.`,
    next: instead,
    http: 404,
  },
  NAME_NOT_CLEAR: {
    says: ({ name, what, several }) => `'${name}' may be more than one ${what}: ${several}.`,
    next: 'Write it out.',
    http: 409,
  },
  ORDER_LINE_UNKNOWN: {
    says: ({ name }) => `'${name}' is no step of this unit.`,
    next: instead,
    http: 422,
  },
  ORDER_INCOMPLETE: {
    says: ({ what, steps }) => `The order ${what}: ${steps}.`,
    next: 'An order lists every step once, one on a line.',
    http: 422,
  },
  FIGURE_INPUT: {
    says: ({ key, says }) => `${key}: ${says}`,
    next: ({ next }) => String(next),
    http: 422,
  },
  FIGURE_TURNED: {
    says: ({ given }) => `Of these a low end is above its high end: ${given}.`,
    next: 'Turn the two round, and look at their units.',
    http: 422,
  },
  FIGURE_ENDLESS: {
    says: ({ given }) => `No number comes out of these: ${given}.`,
    next: 'Look for a 0, a slipped decimal point or a wrong unit among them.',
    http: 422,
  },
  FIGURE_KEY_TWICE: {
    says: ({ key }) => `${key} is told twice.`,
    next: 'Tell it once; several values stand in one list, with commas between.',
    http: 422,
  },
  PORT_NOT_FREE: {
    says: ({ port, reason }) => `Nothing can be served on port ${port}: ${reason}.`,
    next: 'Name another port, or none to have a free one taken.',
    http: 409,
  },
})
