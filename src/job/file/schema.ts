// The shape of a job file. Names and values are judged when it is read.
import { z } from 'zod'
import { block, count, flag, name, named, names, oneOrMany, size, standing, text, word } from '../../unit/file/words.ts'

const found = block({
  where: text.optional(),
  condition: text.optional(),
  decision: word(['reuse', 'repair', 'renew']).optional(),
})

const reading = block({
  part: name,
  feature: name,
  reads: size.optional(),
  with: text.optional(),
  at: text.optional(),
  where: text.optional(),
  by: text.optional(),
  date: text.optional(),
})

const shim = block({ id: name, reads: size.optional(), nominal: size.optional(), for: name.optional() })

/** How many people, or who: one to four by name, with what each can do. */
const crewMember = block({ name: name, skills: names.optional() })
const people = z.union([count, z.array(crewMember)], {
  error: 'a number of people, or a list of {name: M. Ashdown, skills: [fitter, press]}',
})

const plant = block({
  people: people.optional(),
  room: text.optional(),
  press: block({ rating: text.optional() }).optional(),
  oven: block({ 'up to': text.optional() }).optional(),
  instruments: named(block({ uncertainty: size.optional(), due: text.optional() })).optional(),
  wrenches: oneOrMany(
    block({ name: name, range: text.optional() }),
    'a list of {name: click wrench, range: 20..100 N·m}',
  ).optional(),
})

/** The whole job file. */
export const jobSchema = block({
  matchmark: word(['job/1']),
  job: name,
  invented: flag.optional(),
  unit: text,
  serial: text.optional(),
  variant: name.optional(),
  owner: text.optional(),
  note: text.optional(),
  sizes: block({ in: word(['mm', 'in']).optional(), standing: standing.optional() }).optional(),
  'as found': named(found).optional(),
  readings: oneOrMany(reading, 'a list of {part: …, feature: …, reads: …}').optional(),
  'shims in stock': oneOrMany(shim, 'a list of {id: S1, reads: 0.102, nominal: 0.10, for: …}').optional(),
  plant: plant.optional(),
  done: names.optional(),
}).meta({ title: 'Matchmark job file', description: 'docs/reference/unit-file.md' })

export type WrittenJob = z.input<typeof jobSchema>
