// What an entry looks like: the envelope, and the body of every kind. Never changed: a new shape is a new version (SPEC.md, J12).
import { z } from 'zod'
import { MOST_MS } from './clock.ts'

// Lengths are in UTF-16 units. They keep a hostile entry small; no honest one comes near.
const NAME = 200
const SAYS = 10_000
const MANY = 2_000

const hex64 = z.string({ error: 'a SHA-256 in 64 hexadecimal digits' }).regex(/^[0-9a-f]{64}$/, {
  error: 'a SHA-256 in 64 hexadecimal digits, small letters',
})
const uuid = z
  .string({ error: 'a UUID' })
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/, { error: 'a UUID in small letters' })
/** One line without control characters. A lone half of a surrogate pair has no UTF-8 and so no hash. */
const line = (most: number) =>
  z
    .string({ error: 'text' })
    .min(1, { error: 'text that is not empty' })
    .max(most, { error: `text of at most ${most} characters` })
    .regex(/^[^\p{Cc}\p{Cs}]*$/u, { error: 'one line of text without control characters' })
const name = line(NAME)
const says = z
  .string({ error: 'text' })
  .min(1, { error: 'text that is not empty' })
  .max(SAYS, { error: `text of at most ${SAYS} characters` })
  .regex(/^[^\p{Cs}]*$/u, { error: 'text in whole characters' })
const count = z.int({ error: 'a whole number, 1 or more' }).min(1, { error: 'a whole number, 1 or more' })
const whole = z.int({ error: 'a whole number, 0 or more' }).min(0, { error: 'a whole number, 0 or more' })
const number = z.number({ error: 'a finite number' })
const flag = z.boolean({ error: 'true or false' })
const word = <const Words extends readonly [string, ...string[]]>(words: Words) =>
  z.enum(words, { error: words.length > 1 ? `one of ${words.join(' · ')}` : `'${words[0]}'` })
const block = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z.strictObject(shape, {
    error: ({ code }) =>
      code === 'unrecognized_keys' ? `no other keys than ${Object.keys(shape).join(' · ')}` : 'an object',
  })
const list = <Item extends z.ZodType>(item: Item, most = MANY) =>
  z.array(item, { error: 'a list' }).max(most, { error: `at most ${most}` })
const maybe = <Type extends z.ZodType>(type: Type) => z.exactOptional(type)

const standing = word(['seen', 'told', 'usual', 'supposed'])
/** A value in SI: somewhere from low to high, both included, and how well it is known. */
const known = block({ low: number, high: number, standing, source: maybe(line(1_000)) }).refine(
  ({ low, high }) => low <= high,
  { error: 'low not above high' },
)
/** A value that says what it is of: for checks and tries, whose quantities differ. SI units of that quantity. */
const value = block({
  what: name,
  of: word(['length', 'angle', 'force', 'torque', 'temperature', 'pressure', 'time', 'mass', 'volume', 'count']),
  low: number,
  high: number,
  standing,
}).refine(({ low, high }) => low <= high, { error: 'low not above high' })
const about = block({
  part: maybe(name),
  feature: maybe(name),
  step: maybe(name),
  connection: maybe(name),
  entry: maybe(uuid),
})

/** What a job file says of its shims; each is known by its id. */
const shim = block({ id: name, reads: maybe(known), nominal: maybe(known), for: maybe(name) })
const plant = block({
  /** Left out: nobody said. It may be since crews are named (J12). */
  people: maybe(count),
  /** Who they are, by name; added while version 1 was not released (J12). */
  crew: maybe(list(block({ name, skills: list(name) }))),
  room: maybe(known),
  press: maybe(block({ rating: maybe(known) })),
  oven: maybe(block({ upTo: maybe(known) })),
  instruments: list(block({ id: name, uncertainty: maybe(known), due: maybe(name) })),
  wrenches: list(block({ name, range: maybe(known) })),
})

/** One stage of one tightening map. */
const tightenedStage = block({
  connection: name,
  stage: count,
  /** The stage as its map has it: `all to 45 N·m`. */
  says: line(1_000),
  /** N·m */
  torque: maybe(known),
  /** Bolts that were ticked one by one. */
  count: whole,
  of: count,
  /** Of those left it was said all at once that they are tight. */
  rest: maybe(flag),
  /** The wrench. */
  with: maybe(name),
}).refine(({ count: counted, of }) => counted <= of, { error: 'count not above of' })

/** The bodies of version 1, by kind. */
export const BODIES = {
  /** A job is taken in hand. Said again, what it has takes the place of what stood; shims by their id. */
  'job-opened': block({
    serial: maybe(name),
    variant: maybe(name),
    owner: maybe(name),
    note: maybe(says),
    /** Data of an example, no real job. */
    invented: maybe(flag),
    /** How the job's sizes are written for people. */
    sizes: maybe(block({ in: word(['mm', 'in']), standing })),
    plant: maybe(plant),
    shims: maybe(list(shim)),
  }),
  /** From here on the job goes by this unit file, which lies beside the journal under its hash. */
  'unit-adopted': block({ unit: hex64, file: name, why: maybe(says) }),
  /** A part was seen: where it lies now, in what condition, what was decided for it. What is left out is not said. */
  'part-seen': block({
    part: name,
    where: maybe(line(1_000)),
    condition: maybe(says),
    decision: maybe(word(['reuse', 'repair', 'renew'])),
    why: maybe(says),
    /** As it was found, or as it is left at hand-over; neither: on the way. */
    when: maybe(word(['found', 'left'])),
  }),
  /** One measurement of one feature, in metres. `reads` null: it was tried and could not be read. */
  reading: block({
    part: name,
    feature: name,
    reads: known.nullable(),
    with: maybe(name),
    /** Of the part, in kelvin. */
    temperature: maybe(known),
    where: maybe(line(1_000)),
    /** Who read it and when, where that is not the person and the time of the entry: written down first, entered later. Null: nobody wrote it down. */
    by: maybe(name.nullable()),
    date: maybe(name.nullable()),
    /** The build step it was taken at. */
    step: maybe(name),
  }),
  /** What somebody concluded. `rules` names the reading that is to be used among several of one feature; `says` is why. */
  finding: block({ says, about: maybe(about), rules: maybe(uuid) }),
  /** A photo, which lies beside the journal under its hash. */
  photo: block({
    file: hex64,
    type: word(['image/jpeg', 'image/png', 'image/webp']),
    size: count,
    about: maybe(about),
    says: maybe(says),
  }),
  /** From here on the job is built in this order. `from`: the entry of the sequence that it takes the place of. */
  'sequence-adopted': block({
    /** `people`: who of a crew does the step; added while version 1 was not released (J12). */
    steps: list(
      block({
        step: name,
        mode: maybe(name),
        start_s: maybe(whole),
        end_s: maybe(whole),
        people: maybe(list(name, 20)),
      }),
    ),
    unit: maybe(hex64),
    from: maybe(uuid),
    /** Hazard, seconds, changes of set-up; as in docs/reference/contract.md. */
    value: maybe(z.tuple([whole, whole, whole], { error: 'three whole numbers' })),
    proven: maybe(flag),
    why: maybe(says),
  }),
  /** `sequence`: the entry of the sequence that the person had before him. */
  'step-started': block({ step: name, mode: maybe(name), sequence: maybe(uuid) }),
  /**
   * A step is signed. `done`: by the one who did it; left out means this · `second`: by another person, where a rule wants one ·
   * `recheck`: alone, later, by another method, with a photo · `undone`: it was taken apart again and must be done anew.
   */
  'step-signed': block({
    step: name,
    as: maybe(word(['done', 'second', 'recheck', 'undone'])),
    mode: maybe(name),
    sequence: maybe(uuid),
    method: maybe(says),
    photo: maybe(hex64),
    values: maybe(list(value, 200)),
    says: maybe(says),
    /** Bolts of its tightening maps, stage by stage; added, like `uncounted`, while version 1 was not released (J12). */
    tightened: maybe(list(tightenedStage, 200)),
    /** Why it was signed though bolts were not counted. */
    uncounted: maybe(says),
  }),
  /** A check was made. */
  'check-result': block({
    check: name,
    result: word(['good', 'bad', 'not known']),
    values: maybe(list(value, 200)),
    with: maybe(name),
    says: maybe(says),
  }),
  /**
   * One go of a setting loop: what was put in, what came out. `connection`: what is set; where the unit has no connection for it, what the
   * check settles. `check`: the step that read it; `with`: the instrument; both added while version 1 was not released (J12).
   */
  'setting-try': block({
    connection: name,
    check: maybe(name),
    with: maybe(name),
    tried: says,
    shims: maybe(list(name, 200)),
    values: maybe(list(value, 200)),
    result: word(['good', 'bad', 'not known']),
    says: maybe(says),
  }),
  /** A part came in: bought, made or back from another shop. */
  'part-in': block({
    part: name,
    pieces: maybe(count),
    number: maybe(name),
    from: maybe(name),
    price: maybe(name),
    where: maybe(line(1_000)),
    says: maybe(says),
  }),
  /** Anything worth keeping. `topic` and `facts` are for what the shop's machines write: sign-ins, devices enrolled and shut out. */
  note: block({
    says,
    about: maybe(about),
    topic: maybe(name),
    facts: maybe(
      z.record(
        z.string().regex(/^[a-z][a-z0-9 -]{0,39}$/, { error: 'a short key in small letters' }),
        z.union([line(1_000), number, flag], { error: 'text, a number, true or false' }),
        { error: 'an object of short keys' },
      ),
    ),
  }),
  /** An entry is taken out of force. It stays to be seen. Withdrawing a withdrawal puts back in force. */
  withdrawn: block({ of: uuid, why: maybe(says) }),
} as const

export type Kind = keyof typeof BODIES
export type Body<K extends Kind> = z.output<(typeof BODIES)[K]>

export const MS = whole.max(MOST_MS, { error: 'milliseconds before the year 10000' })
export const at = block({ ms: MS, n: whole, own: maybe(MS) })
/** A hybrid logical clock: milliseconds since 1970 and a count; `own`, what the device's own clock said, where the two are far apart. */
export type At = z.output<typeof at>

export const STREAM = line(120)
const ENVELOPE = {
  id: uuid,
  /** The job's number, or `shop`. */
  stream: STREAM,
  v: z.literal(1, { error: 'version 1' }),
  person: name,
  device: name,
  /** Of this device in this stream, from 1. */
  seq: count,
  /** The hash of this device's entry before, in this stream; null at the first. */
  prev: hex64.nullable(),
  at,
}
const entryOf = <K extends Kind>(kind: K) => block({ ...ENVELOPE, kind: z.literal(kind), body: BODIES[kind] })

/** An entry of the kind K; of any kind when none is named. */
export type Entry<K extends Kind = Kind> = K extends Kind
  ? {
      readonly id: string
      readonly stream: string
      readonly kind: K
      readonly v: 1
      readonly body: Body<K>
      readonly person: string
      readonly device: string
      readonly seq: number
      readonly prev: string | null
      readonly at: At
    }
  : never

export const KINDS = Object.keys(BODIES) as readonly Kind[]

/** The schema of each kind; `entrySchema` is their union, for an OpenAPI page. */
export const ENTRIES = Object.fromEntries(KINDS.map((kind) => [kind, entryOf(kind)])) as unknown as {
  readonly [K in Kind]: z.ZodType<Entry<K>>
}
const [first, ...others] = KINDS.map((kind) => entryOf(kind))
export const entrySchema = z.discriminatedUnion('kind', [first!, ...others])
