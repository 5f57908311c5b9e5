// Problems at the edges: command line, files, server.
import { table } from '../entry.ts'

export const EDGES = table({
  FILE_UNREADABLE: {
    says: ({ file, reason }) => `The file ${file} cannot be read: ${reason}.`,
    next: 'Check the name and that you may read it.',
    http: 404,
  },
})
