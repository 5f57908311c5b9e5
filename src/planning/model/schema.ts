// The shapes of problem.ts and sequence.ts as zod schemas: they refuse what has another shape at run time and become
// the JSON Schemas in schemas/. The last lines hold schemas and types to each other at compile time.
import { z } from 'zod'
import type { PlanningProblem } from './problem.ts'
import type { PlanResult } from './sequence.ts'

const id = z.string().min(1)
const whole = z.int()
const wholeFromZero = z.int().min(0)
const cost = z.number().min(0)
const known = id.refine((name) => name !== 'any', { message: 'a name, or nothing where it is not known' })
const giveUp = z.union([cost, z.literal('never')])

const reason = z
  .strictObject({
    code: id,
    says: z.string().min(1).describe('One sentence for people.'),
    facts: z
      .record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.array(z.string())]))
      .describe('What the relation was made from.'),
    origin: z.enum(['geometry', 'connection', 'process', 'author', 'usual', 'observed']),
    standing: z.enum(['seen', 'told', 'usual', 'supposed']),
    source: z.string().exactOptional(),
  })
  .meta({ id: 'Reason' })

const alternative = z
  .strictObject({ done: z.array(id), notDone: z.array(id) })
  .meta({ id: 'Alternative', description: 'Holds when all of done have ended and none of notDone has started.' })

const need = z
  .strictObject({ id, anyOf: z.array(alternative), reason, giveUp })
  .meta({ id: 'Need', description: 'Judged when its operation starts: at least one alternative has to hold.' })

const setup = z
  .strictObject({
    workpiece: id,
    attitude: id.describe('How the workpiece lies; only read where a workpiece is named.'),
    station: id,
    tools: z.union([z.array(id), z.literal('any')]),
  })
  .meta({ id: 'Setup', description: "What a mode wants set up; 'any' asks for nothing and changes nothing." })

const mode = z
  .strictObject({
    id,
    setup,
    people: wholeFromZero.describe('Hands wanted at once; 0, with a crew only, goes on by itself.'),
    skills: z.array(id).exactOptional(),
    machines: z.record(id, z.int().min(1)).exactOptional(),
    needs: z.array(need),
    hazard: wholeFromZero.exactOptional(),
  })
  .meta({ id: 'Mode', description: 'One way of doing an operation.' })

const duration = z
  .strictObject({ low: wholeFromZero, usual: wholeFromZero, high: wholeFromZero })
  .refine(({ low, usual, high }) => low <= usual && usual <= high, { message: 'low ≤ usual ≤ high' })
  .meta({ id: 'Duration', description: 'Whole seconds, low ≤ usual ≤ high; planning uses usual.' })

const operation = z
  .strictObject({
    id,
    does: z.string().min(1).describe('A short imperative sentence.'),
    duration_s: duration,
    modes: z.array(mode).min(1),
    needs: z.array(need),
    undo: z
      .strictObject({ duration_s: duration, needs: z.array(need), renews: z.array(z.string()), voids: z.array(id) })
      .exactOptional(),
    check: z.strictObject({ faultChance: z.number().min(0).max(1), cost, lateCost: cost }).exactOptional(),
    noReturn: z.string().exactOptional(),
  })
  .meta({ id: 'Operation', description: 'Done exactly once, in one of its modes.' })

const lagEvent = z.strictObject({ op: id, edge: z.enum(['start', 'end']) }).meta({ id: 'LagEvent' })

const lag = z
  .strictObject({
    id,
    from: lagEvent,
    to: lagEvent,
    min_s: whole.exactOptional(),
    max_s: whole.exactOptional(),
    reason,
    giveUp,
  })
  .meta({ id: 'Lag', description: 'min_s ≤ time(to) − time(from) ≤ max_s, whole seconds.' })

const loop = z
  .strictObject({
    id,
    first: id,
    last: id,
    tries: z
      .strictObject({ low: z.int().min(1), usual: z.int().min(1), high: z.int().min(1) })
      .refine(({ low, usual, high }) => low <= usual && usual <= high, { message: 'low ≤ usual ≤ high' }),
    reason,
  })
  .meta({ id: 'Loop', description: 'What is tried until it is right, from first to last.' })

/** What the sequence engine is told; the meaning of every field is in docs/reference/contract.md. */
export const planningProblemSchema = z
  .strictObject({
    schema: z.literal('matchmark-planning/1'),
    operations: z.array(operation),
    lags: z.array(lag),
    changes: z.strictObject({
      turn: z.record(z.string(), z.strictObject({ s: wholeFromZero, hazard: wholeFromZero })),
      station_s: wholeFromZero,
      workpiece_s: wholeFromZero,
      tools_s: wholeFromZero,
      between: z
        .strictObject({ ops: z.array(id), s: z.array(z.array(wholeFromZero.nullable())) })
        .meta({
          id: 'Between',
          description: 'Seconds of doing the column right after the row; null: never right after.',
        })
        .exactOptional(),
    }),
    start: z.strictObject({
      attitudes: z.record(z.string(), known),
      station: known.exactOptional(),
      workpiece: known.exactOptional(),
      tools: z.array(id).exactOptional(),
    }),
    people: z.int().min(1),
    crew: z
      .array(z.strictObject({ id, skills: z.array(id) }))
      .min(1)
      .max(4)
      .exactOptional()
      .describe('Who works; people is their number. Without it one person works.'),
    machines: z.record(id, z.int().min(1)).exactOptional().describe('How many there are of what is scarce.'),
    loops: z.array(loop).exactOptional(),
  })
  .meta({ title: 'Planning problem', description: 'What the sequence engine is told.' })

const value = z
  .tuple([whole, whole, whole])
  .meta({ id: 'Value', description: '[hazard, elapsed seconds, changes], compared in this order; smaller is better.' })

const conflictMember = z.strictObject({
  kind: z.enum(['need', 'lag', 'mode']),
  id,
  op: id,
  reason,
  giveUp,
})

/** What the sequence engine answers. */
export const planResultSchema = z
  .strictObject({
    value: value.nullable(),
    bound: value.nullable().describe('No sequence is better than this.'),
    proven: z.boolean().describe('No sequence is better than the value; false where there is no value.'),
    feasible: z
      .enum(['yes', 'no', 'not known'])
      .describe("Whether anything can be done at all: 'no' is proven, and the conflict says why."),
    steps: z.array(
      z.strictObject({ op: id, mode: id, start_s: whole, end_s: whole, people: z.array(id).exactOptional() }),
    ),
    assumptions: z.array(
      z.strictObject({ relation: id, reason, wouldChange: z.union([z.boolean(), z.literal('not tried')]) }),
    ),
    conflict: z
      .strictObject({ members: z.array(conflictMember), cheapest: z.array(id), irreducible: z.boolean() })
      .nullable(),
    tries: z
      .strictObject({
        low: value,
        usual: value,
        high: value,
        bound: value.describe('No sequence is better than this with usual tries.'),
        proven: z.boolean(),
        loops: z.array(
          z.strictObject({
            id,
            again: z.array(id).describe('What comes off and is done again in each further try, in order.'),
            renews: z.array(z.string()),
            noReturn: z.array(id),
            try_s: whole.describe('Seconds of one further try, changes of set-up included.'),
          }),
        ),
      })
      .exactOptional()
      .describe('The values with the tries of the loops, where there are some.'),
    effort: z.strictObject({ states: wholeFromZero, width: wholeFromZero, dropped: wholeFromZero }),
  })
  .meta({ title: 'Plan result', description: 'What the sequence engine answers.' })

// The types say `readonly` and the schemas do not; nothing else may differ. A difference is an error on the next lines.
type Fixed<Told> = { readonly [Key in keyof Told]: Fixed<Told[Key]> }
// Written out twice: behind one alias the compiler compares the arguments only, and overlooks a misspelt optional key.
type Same<One, Other> =
  (<Probe>() => Probe extends One ? 1 : 2) extends <Probe>() => Probe extends Other ? 1 : 2 ? true : never
const _problem: Same<Fixed<z.infer<typeof planningProblemSchema>>, PlanningProblem> = true
const _result: Same<Fixed<z.infer<typeof planResultSchema>>, PlanResult> = true
void [_problem, _result]
