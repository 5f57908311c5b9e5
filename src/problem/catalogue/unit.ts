// Problems of unit and job files.
import { table } from '../entry.ts'

export const UNIT = table({
  FILE_NOT_YAML: {
    says: ({ reason }) => `This is not readable YAML: ${reason}.`,
    next: 'Mend the line named here; the file is left as it is.',
    http: 422,
  },
})
