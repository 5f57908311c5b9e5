// The keys of one part. Their meaning stands in docs/reference/unit-file.md.
import { z } from 'zod'
import {
  block,
  count,
  limits,
  mass,
  name,
  named,
  names,
  oneOrMany,
  pair,
  rings,
  size,
  standing,
  text,
  texts,
  time,
  word,
} from './words.ts'

const joined = word(['on the bench', 'in the housing'])

const way = block({
  path: word(['along the line', 'across the split', 'tilt', 'loop', 'by hand']).optional(),
  through: name.optional(),
  'park through': name.optional(),
  'home with': name.optional(),
  'held by': text.optional(),
  resting: text.optional(),
  'parked at': pair.optional(),
  from: text.optional(),
  clear: names.optional(),
  joined: joined.optional(),
  why: text.optional(),
})

const column = block({
  line: name.optional(),
  at: pair.optional(),
  circle: size.optional(),
  angles: z.array(z.number({ error: 'an angle in degrees' }), { error: 'a list of angles in degrees' }).optional(),
  diameter: size,
  x: size,
  from: text,
  for: text.optional(),
})

const feature = z.union(
  [
    block({
      size: size.optional(),
      new: limits.optional(),
      worn: limits.optional(),
      standing: standing.optional(),
      source: text.optional(),
      what: text.optional(),
    }),
    size,
  ],
  { error: 'a size, or {size: 80.01, new: 80.000..80.020, worn: ..80.05, source: …, what: …}' },
)

const follow = block({
  does: text.optional(),
  takes: time.optional(),
  tools: texts.optional(),
  reach: names.optional(),
  'no way back': text.optional(),
})
const flat = block({ 'towards line': name, at: size })
const stand = block({ face: size, against: name, at: size, gap: size.optional() })
const watched = block({ meets: name, through: name })

/** `line 1`, `wall on 1` and `passing on 1` carry the name of a line, so they are patterns. */
export const LINE_KEY = /^(line|wall on|passing on) (.+)$/

export const partSchema = block({
  pieces: count.optional(),
  material: text.optional(),
  mass: mass.optional(),
  number: text.optional(),
  note: text.optional(),
  life: word(['renew', 'inspect', 'keep']).optional(),
  supply: block({ from: text.optional(), price: text.optional(), lead: text.optional() }).optional(),
  look: word(['casting', 'shaft', 'gear', 'bearing', 'ring', 'seal', 'key', 'fastener', 'gasket', 'sheet']).optional(),
  onto: name.optional(),
  joined: joined.optional(),
  kind: text.optional(),
  'goes with': name.optional(),
  passing: rings.optional(),
  half: word(['lower', 'upper']).optional(),
  flat: oneOrMany(flat, '{towards line: 2, at: 46}').optional(),
  'comes from': text.optional(),
  way: oneOrMany(way, 'a way, such as {through: top, path: by hand}, or a list of ways').optional(),
  stands: oneOrMany(stand, '{face: 18, against: shaft, at: 23}').optional(),
  'seats against': names.optional(),
  passes: names.optional(),
  'does not pass': names.optional(),
  'slides on': names.optional(),
  meshes: names.optional(),
  keys: names.optional(),
  'runs on': names.optional(),
  engages: names.optional(),
  watched: oneOrMany(watched, '{meets: spigot, through: top}').optional(),
  closes: names.optional(),
  reach: names.optional(),
  columns: oneOrMany(column, '{line: 1, at: [30, -20], diameter: 14, x: 258, from: +, for: screw head}').optional(),
  'loose until': names.optional(),
  tool: z.record(z.string(), rings, { error: '{sleeve: "-16..-8: 31/30.2"}' }).optional(),
  features: named(feature).optional(),
  takes: time.optional(),
  tools: texts.optional(),
  cautions: texts.optional(),
  // biome-ignore lint/suspicious/noThenProperty: the word of the file
  then: named(follow).optional(),
  variants: names.optional(),
}).meta({ patternProperties: { [LINE_KEY.source]: { type: 'string' } } })

export type WrittenPart = z.input<typeof partSchema>
export type WrittenWay = z.input<typeof way>
export type WrittenColumn = z.input<typeof column>
export type WrittenFeature = z.input<typeof feature>
