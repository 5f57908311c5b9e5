// The shape of a unit file: which keys stand where. Names, rings and values are judged when it is read.
import { z } from 'zod'
import { partSchema } from './schemaPart.ts'
import { block, count, flag, name, named, names, oneOrMany, pair, standing, text, texts, time, word } from './words.ts'

/** What a step may want of people. */
const HANDS_WANTED = 'a number of people, or {hands: 2, skills: [press]}'

const connection = z
  .looseObject(
    { kind: text, 'own step': flag.optional(), variants: names.optional() },
    { error: 'a block with a kind' },
  )
  .meta({ description: 'the keys of each kind: docs/reference/connections.md' })

const line = block({
  at: pair.optional(),
  ends: z.tuple([text, text], { error: "two words: [name of the '-' end, name of the '+' end]" }).optional(),
  datum: text.optional(),
  stack: names.optional(),
})

const opening = block({
  size: text.optional(),
  line: names.optional(),
  end: text.optional(),
  in: name.optional(),
  split: flag.optional(),
})

const check = block({
  does: text.optional(),
  wants: names.optional(),
  without: names.optional(),
  reach: names.optional(),
  trial: names.optional(),
  'on bench': name.optional(),
  limit: text.optional(),
  standing: standing.optional(),
  source: text.optional(),
  settles: text.optional(),
  takes: time.optional(),
  tools: texts.optional(),
  variants: names.optional(),
})

const fill = block({
  litres: text.optional(),
  what: text.optional(),
  through: name.optional(),
  'stands above': names.optional(),
  after: names.optional(),
  takes: time.optional(),
  variants: names.optional(),
})

const step = block({
  does: text.optional(),
  after: names.optional(),
  before: names.optional(),
  why: text.optional(),
  standing: standing.optional(),
  takes: time.optional(),
  tools: texts.optional(),
  reach: names.optional(),
  variants: names.optional(),
})

const order = block({
  first: name,
  // biome-ignore lint/suspicious/noThenProperty: the word of the file
  then: name,
  why: text.optional(),
  standing: standing.optional(),
})

const clock = block({
  from: text,
  to: text,
  least: time.optional(),
  most: time.optional(),
  why: text.optional(),
  standing: standing.optional(),
  source: text.optional(),
})

const signOff = block({
  'second person': flag.optional(),
  photo: text.optional(),
  why: text.optional(),
  standing: standing.optional(),
  source: text.optional(),
})

/** The whole file. The message of every part of it says what is expected there. */
export const unitSchema = block({
  matchmark: word(['unit/1']),
  unit: text,
  about: text.optional(),
  invented: flag.optional(),
  revision: text.optional(),
  sizes: block({
    in: word(['mm', 'in']).optional(),
    standing: standing.optional(),
    source: text.optional(),
  }).optional(),
  housing: name,
  lines: named(line).optional(),
  openings: named(opening).optional(),
  parts: named(partSchema).optional(),
  connections: named(connection).optional(),
  checks: named(check).optional(),
  fills: named(fill).optional(),
  hands: named(
    z.union([count, block({ hands: count.optional(), skills: names.optional() })], { error: HANDS_WANTED }),
  ).optional(),
  lies: z.record(z.string(), names, { error: 'attitudes, each with the steps that want it' }).optional(),
  turning: block({
    takes: time.optional(),
    hazard: z.int({ error: 'a whole number' }).min(0, { error: 'a whole number, 0 or more' }).optional(),
  }).optional(),
  steps: named(step).optional(),
  orders: oneOrMany(order, 'a list of {first: …, then: …, why: …}').optional(),
  drop: z.record(z.string(), text, { error: 'steps, each with why it is dropped' }).optional(),
  clocks: named(clock).optional(),
  'sign off': named(signOff).optional(),
  sets: named(block({ parts: names, why: text.optional() })).optional(),
  variants: named(block({ serials: text.optional(), marks: text.optional() })).optional(),
}).meta({ title: 'Matchmark unit file', description: 'docs/reference/unit-file.md' })

export type WrittenUnit = z.input<typeof unitSchema>
export type WrittenCheck = z.input<typeof check>
