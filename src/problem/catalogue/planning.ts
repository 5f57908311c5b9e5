// Problems of a planning problem handed to the sequence engine.
import { table } from '../entry.ts'

export const PLANNING = table({
  PLANNING_UNKNOWN_OPERATION: {
    says: ({ where, id }) => `${where} names the operation '${id}', which is not in the problem.`,
    next: 'Name an operation by its id, or take the relation out.',
    http: 422,
  },
  PLANNING_SHAPE: {
    says: ({ where, found, expected }) => `The planning problem has ${found} at ${where}; expected was ${expected}.`,
    next: 'Mend it there; docs/reference/contract.md says what each place means.',
    http: 422,
  },
  PLANNING_ID_TWICE: {
    says: ({ where, id }) => `${where} has the id '${id}', which another one has already.`,
    next: 'Give every one an id of its own.',
    http: 422,
  },
  PLANNING_DUPLICATE: {
    says: ({ what, id, where }) => `The ${what} '${id}' stands twice in ${where}.`,
    next: 'Give each its own id.',
    http: 422,
  },
  PLANNING_NUMBER: {
    says: ({ where, what, received, expected }) => `${where}: ${what} is ${received}; expected is ${expected}.`,
    next: 'Give whole seconds (or whole points of hazard) within the limits.',
    http: 422,
  },
  PLANNING_SEQUENCE_FILE: {
    says: ({ received, expected }) => `The sequence file has ${received} here; expected is ${expected}.`,
    next: 'Mend it there: a TSPLIB file of TYPE SOP with a full matrix, or the number of operations and the matrix alone.',
    http: 422,
  },
  PLANNING_NOT_SQUARE: {
    says: ({ where, received, operations }) =>
      `${where} has ${received}; expected is one for each of its ${operations} operations.`,
    next: 'Give `s` a row and a column for each operation in `ops`, in their order.',
    http: 422,
  },
  PLANNING_NO_MODE: {
    says: ({ where }) => `${where} has no mode: there is no way of doing it.`,
    next: 'Give at least one mode; a mode whose set-up asks for nothing will do.',
    http: 422,
  },
  PLANNING_NO_CREW: {
    says: ({ where, mode, skills }) => `${where} asks in '${mode}' for the skills ${skills}, but no crew is named.`,
    next: 'Name the people and their skills in `crew`, or take the skills out.',
    http: 422,
  },
  PLANNING_BETWEEN_CREW: {
    says: () => 'Seconds between operations are told, and several people work together.',
    next: 'What comes right after what is said of one person only: take `between` out, or plan for one.',
    http: 422,
  },
  PLANNING_ONE_PERSON: {
    says: ({ what }) =>
      `${what} cannot be told where several people work together: it is worked out for one person only.`,
    next: 'Judge the changed order instead, or ask for the smallest repair; `why` and `mayCome` answer for a crew as well.',
    http: 422,
  },
  PLANNING_CREW_NAMED: {
    says: ({ people }) => `It is told that there are ${people} people now, and the problem names its crew.`,
    next: 'Say in `crew` who is there now, with their skills.',
    http: 422,
  },
  PLANNING_UNKNOWN_PERSON: {
    says: ({ id }) => `The sequence names '${id}', who is not of the crew.`,
    next: 'Name people of the crew by their ids, or nobody to have them chosen.',
    http: 422,
  },
  PLANNING_UNKNOWN_MACHINE: {
    says: ({ where, mode, machine }) =>
      `${where} wants the machine '${machine}' in '${mode}', which is not among the machines.`,
    next: 'Say in `machines` how many there are of it, or mend the name.',
    http: 422,
  },
  PLANNING_BY_ITSELF: {
    says: ({ where, mode }) => `${where} goes on by itself in '${mode}' (0 people), but asks for a set-up or a skill.`,
    next: 'Make the whole set-up `any` and name no skill, or say how many people are at it; loading and unloading are operations of their own.',
    http: 422,
  },
  PLANNING_OWN_NEED: {
    says: ({ where }) => `${where} names its own operation.`,
    next: 'A need speaks of other operations; take its own out of `done` and `notDone`.',
    http: 422,
  },
  PLANNING_TOO_LARGE: {
    says: ({ what, received, most }) => `The problem has ${received} ${what}; the most that is taken is ${most}.`,
    next: 'Split the unit, or join steps that are always done together.',
    http: 413,
  },
  PLANNING_LOOP_OPEN: {
    says: ({ loop, first, last }) =>
      `The loop '${loop}' begins with '${first}' and ends with '${last}', but '${first}' need not come before '${last}'.`,
    next: 'Name the operation that the tries begin with first, and give the last one a need that waits for it.',
    http: 422,
  },
  PLANNING_RANGE: {
    says: ({ elapsed, hazard }) =>
      `All seconds together make up to ${elapsed} and all hazards up to ${hazard}: too much to compare exactly.`,
    next: 'Use smaller points for hazards, or plan the long pauses as separate jobs.',
    http: 422,
  },
  PLANNING_SCHEMA: {
    says: ({ received }) => `A planning problem says schema 'matchmark-planning/1', not '${received}'.`,
    next: 'Hand in a problem of this version.',
    http: 422,
  },
  PLANNING_STEPS: {
    says: ({ what, id }) => `The sequence ${what} '${id}'.`,
    next: 'A sequence lists every operation of the problem once.',
    http: 422,
  },
  PLANNING_UNKNOWN_MODE: {
    says: ({ op, mode }) => `The operation '${op}' has no mode '${mode}'.`,
    next: 'Name one of its modes, or none to have the best one chosen.',
    http: 422,
  },
  PLANNING_NOT_DONE: {
    says: ({ id }) => `The operation '${id}' cannot be undone: it is not done.`,
    next: 'Name an operation that is done, or tell what is done.',
    http: 409,
  },
  PLANNING_COUNT_LIMIT: {
    says: ({ operations, limit }) =>
      `The sequences of ${operations} operations were not counted: there are more than ${limit} sets of operations to look at.`,
    next: 'Raise the limit, or count a sub-assembly on its own.',
    http: 422,
  },
})
