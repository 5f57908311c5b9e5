// The pieces that the schemas of files are made of. The message of every schema says what is expected, never what was found.
import { z } from 'zod'

/** Text; a number is taken as it was written. */
export const text = z.union([z.string(), z.number()], { error: 'text' })
export const name = z.union([z.string(), z.number()], { error: 'a name' })
/** One name or a list of them. */
export const names = z.union([name, z.array(name)], { error: 'a name or a list of names' })
export const texts = z.union([text, z.array(text)], { error: 'text or a list of texts' })
export const flag = z.boolean({ error: 'true or false' })
export const count = z.int({ error: 'a whole number, 1 or more' }).min(1, { error: 'a whole number, 1 or more' })

const value = (expected: string) =>
  z.union([z.string(), z.number()], { error: expected }).meta({ description: expected })
export const size = value('a size: 80.01, ≈ 40, "?", 39.9..40.1 or 1.5 thou')
export const time = value('a time: 12 min, 10..15 min or 90 s; a bare number is minutes')
export const mass = value('a mass: 2.4 (kg) or 5 lb')
export const limits = value('limits: 80.000..80.020, or ..80.05 for at most, or 79.9.. for at least')
export const rings = value('rings: "5..23: 80/40, 23..36: 54", each from..to: outside/inside')
export const pair = z.tuple([size, size], { error: 'two sizes: [to the right, up]' })

export const word = <const Words extends readonly [string, ...string[]]>(words: Words) =>
  z.enum(words, { error: words.length > 1 ? `one of ${words.join(' · ')}` : `'${words[0]}'` })

export const standing = word(['seen', 'told', 'usual', 'supposed'])

/** A block that has these keys and no others. */
export const block = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z.strictObject(shape, {
    error: ({ code }) => (code === 'unrecognized_keys' ? Object.keys(shape).join(' · ') : 'a block of keys and values'),
  })

/** Names, each with what belongs to it; nothing behind a name is an empty block. */
export const named = <Value extends z.ZodType>(each: Value) =>
  z.record(z.string(), each.nullable(), { error: 'a block of names, each with its own block' })

export const oneOrMany = <Value extends z.ZodType>(each: Value, expected: string) =>
  z.union([each, z.array(each)], { error: expected })
