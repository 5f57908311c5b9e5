// Problems of unit and job files.
import { table } from '../entry.ts'
import type { Facts } from '../facts.ts'

const instead = ({ nearest }: Facts, otherwise: string): string => (nearest ? `Did you mean '${nearest}'?` : otherwise)
const known = ({ known: names }: Facts, what: string): string =>
  names ? `${what}: ${names}.` : 'None is written down yet.'

export const UNIT = table({
  FILE_NOT_YAML: {
    says: ({ reason }) => `This is not readable YAML: ${reason}.`,
    next: "Mend the line named here; the file is left as it is. A '?' or '-' that stands alone needs quotes.",
    http: 422,
  },
  FILE_TOO_LARGE: {
    says: ({ size, most }) => `The file is ${size} long; at most ${most} are read.`,
    next: 'Check that it is the right file; a description of one kind of unit has a few hundred lines.',
    http: 413,
  },
  FILE_TOO_DEEP: {
    says: ({ most }) => `Blocks and lists stand inside one another more than ${most} deep.`,
    next: 'Check the brackets; nothing in this file goes deeper than eight.',
    http: 422,
  },
  FILE_EMPTY: {
    says: ({ expected }) => `Nothing stands here; expected ${expected}.`,
    next: 'Start with the two lines that name the form and the thing, as in docs/reference/unit-file.md.',
    http: 422,
  },
  FILE_WRITES_ONCE: {
    says: ({ what, text }) => `'${text}' is ${what} of YAML, which is not read here.`,
    next: 'Write the value out where it is wanted; put quotes round it if it is meant as text.',
    http: 422,
  },
  FILE_MORE_FAULTS: {
    says: ({ more }) => `${more} more faults are not listed.`,
    next: 'Mend the ones above first.',
    http: 422,
  },
  FILE_OTHER_FORM: {
    says: ({ received, expected }) =>
      received
        ? `This file says 'matchmark: ${received}'; expected 'matchmark: ${expected}'.`
        : `This file does not say what it is; expected 'matchmark: ${expected}'.`,
    next: 'Give the file of the right form, or write the form in its first line.',
    http: 422,
  },
  KEY_TWICE: {
    says: ({ key, first }) => `'${key}' stands twice in one block; first on line ${first}.`,
    next: 'Keep one, or give the second another name.',
    http: 422,
  },
  KEY_NOT_A_NAME: {
    says: ({ key }) => `'${key}' cannot be a name here.`,
    next: 'Give a name of one line: words, numbers, no brackets.',
    http: 422,
  },
  KEY_NOT_KNOWN: {
    says: ({ key, nearest }) =>
      nearest ? `'${key}' is not known here; did you mean '${nearest}'?` : `'${key}' is not known here.`,
    next: (facts) => (facts.nearest ? 'Write it that way, or take it out.' : known(facts, 'Known here')),
    http: 422,
  },
  KEY_MISSING: {
    says: ({ key, where }) => `'${key}' is missing in ${where}.`,
    next: ({ key, expected }) => `Write '${key}:' and ${expected}.`,
    http: 422,
  },
  VALUE_NOT_EXPECTED: {
    says: ({ key, received, expected }) => `'${key}' is ${received}; expected ${expected}.`,
    next: (facts) => instead(facts, 'Write it that way, or leave it out when it is not known.'),
    http: 422,
  },
  NAME_NOT_KNOWN: {
    says: ({ key, name, what, of, nearest }) =>
      `'${key}' names '${name}', which is no ${what} of ${of ?? 'this file'}${nearest ? `; did you mean '${nearest}'?` : '.'}`,
    next: (facts) => known(facts, 'Known are'),
    http: 422,
  },
  NAME_TWICE: {
    says: ({ name, what, other, first }) =>
      `The ${what} '${name}' has the name of the ${other} on line ${first}; every step has a name of its own.`,
    next: 'Give one of them another name.',
    http: 422,
  },
  END_NOT_KNOWN: {
    says: ({ key, received, ends }) => `'${key}' is '${received}'; expected an end of its line: ${ends}.`,
    next: (facts) => instead(facts, "Write one of them; '-' alone needs quotes."),
    http: 422,
  },
  LINE_NOT_CLEAR: {
    says: ({ key, lines }) => `'${key}' does not say on which line, and there is more than one: ${lines}.`,
    next: ({ how }) => String(how),
    http: 422,
  },
  WAY_PARKED_FOR_EVER: {
    says: ({ part }) => `The way of '${part}' parks it, but no step brings it home.`,
    next: "Add 'home with' and the part whose step takes it home.",
    http: 422,
  },
  WAY_TWO_DOORS: {
    says: ({ part }) => `The way of '${part}' has both 'through' and 'park through'.`,
    next: "Keep 'park through' if it hangs or lies in the housing first, 'through' if it goes straight home.",
    http: 422,
  },
  RING_UNREADABLE: {
    says: ({ key, received, expected }) => `In '${key}' was received '${received}'; expected was ${expected}.`,
    next: ({ form }) => String(form),
    http: 422,
  },
  RING_TOO_MANY: {
    says: ({ key, count, most }) => `'${key}' has ${count} rings; at most ${most} are read.`,
    next: 'Leave out what is not a shape of its own: a thread or a spline is one ring.',
    http: 422,
  },
  RING_BACKWARDS: {
    says: ({ key, from, to }) => `'${key}' has a ring from ${from} to ${to}, which has no length.`,
    next: 'Give the smaller distance first.',
    http: 422,
  },
  RING_INSIDE_OUT: {
    says: ({ key, outside, inside }) => `'${key}' has a ring that is ${outside} outside and ${inside} inside.`,
    next: 'Write outside / inside; one diameter alone is solid.',
    http: 422,
  },
  RING_HIDDEN: {
    says: ({ key, hidden, other }) => `'${key}' has the ring '${hidden}' hidden inside the ring '${other}'.`,
    next: 'Two sizes stand in one place: end the larger ring where the smaller one begins, or take one out.',
    http: 422,
  },
  WALLS_CONTRADICT: {
    says: ({ key, one, other }) => `'${key}' gives two bores in one place: '${one}' and '${other}'.`,
    next: 'End one where the other begins.',
    http: 422,
  },
  STEP_LIES_TWICE: {
    says: ({ step, one, other }) => `'${step}' lies '${one}' and '${other}'.`,
    next: 'Name a step under one attitude only.',
    http: 422,
  },
  CLOCK_BACKWARDS: {
    says: ({ clock, least, most }) => `The clock '${clock}' wants at least ${least} and at most ${most}.`,
    next: 'Give the smaller time as least.',
    http: 422,
  },
  VARIANT_WITHOUT: {
    says: ({ part, key, other, variant }) =>
      `In the variant '${variant}' '${part}' stands, but '${other}', which it names under '${key}', does not.`,
    next: 'Give both the same variants, or write the part once for each variant under two names.',
    http: 422,
  },
  SERIAL_NOT_KNOWN: {
    says: ({ serial, ranges }) => `The serial number ${serial} belongs to no single variant of the unit (${ranges}).`,
    next: "Look at the plate again, widen the serials in the unit file, or write 'variant' instead.",
    http: 422,
  },
  EDIT_NO_PLACE: {
    says: ({ path, reason }) => `'${path}' cannot be written: ${reason}.`,
    next: 'Name a key of a block, or a place in a list that is there.',
    http: 422,
  },
})
