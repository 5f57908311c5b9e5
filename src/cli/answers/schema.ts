// What every command answers with --json: the shapes, as zod schemas that become schemas/*.schema.json.
import { z } from 'zod'

const text = z.string()
const whole = z.int()
const count = z.int().min(0)
const value = z
  .tuple([whole, whole, whole])
  .describe('[hazard, elapsed seconds, changes], compared in this order; smaller is better.')
const standing = z.enum(['seen', 'told', 'usual', 'supposed'])

const fault = z
  .strictObject({
    code: text,
    says: text.describe('What is wrong, with what was found.'),
    next: text.describe('What to do.'),
    file: text.exactOptional(),
    line: count.exactOptional(),
    column: count.exactOptional(),
  })
  .meta({ id: 'Fault' })

const question = z
  .strictObject({
    about: text,
    asks: text,
    holdsUp: text.describe('What cannot be said until it is known.'),
    rank: z.union([z.literal(1), z.literal(2), z.literal(3)]).describe('1 is asked first.'),
  })
  .meta({ id: 'Question' })

/** What every answer about a file says of it. */
const about = {
  file: text,
  unit: text,
  variant: text.nullable(),
  job: text.nullable(),
}

export const faultsAnswer = z
  .strictObject({ schema: z.literal('matchmark-faults/1'), faults: z.array(fault) })
  .meta({ title: 'Faults', description: 'What any command answers when its file cannot be used.' })

export const checkAnswer = z
  .strictObject({
    schema: z.literal('matchmark-check/1'),
    file: text,
    unit: text.nullable(),
    variant: text.nullable(),
    job: text.nullable(),
    counts: z
      .strictObject({
        parts: count.describe('Distinct parts of this variant, the housing among them.'),
        pieces: count,
        lines: count,
        ways: count.describe('Ways by which a part can get home; those that are blocked for good are not counted.'),
        openings: count,
        connections: count,
        operations: count,
        needs: count,
        needsByHand: count.describe('Needs that a person declared as an order; all others were derived.'),
        questions: count,
        faults: count,
      })
      .nullable()
      .describe('Missing when the file cannot be read.'),
    faults: z.array(fault),
    questions: z.array(question),
    sizesThatDecide: z
      .array(
        z.strictObject({
          part: text,
          line: text,
          steps: z.array(text).describe('Steps that wait for less without them.'),
        }),
      )
      .nullable()
      .describe('The diameters on which the sequence rests; only with --sizes.'),
  })
  .meta({ title: 'Check', description: 'What `matchmark check FILE --json` answers.' })

const step = z
  .strictObject({
    id: text,
    does: text,
    mode: text,
    start_s: count,
    end_s: count,
    people: z
      .array(text)
      .nullable()
      .describe('Who is at it, nobody where it goes on by itself; null where one person works.'),
    hands: count.describe('How many people it wants at once; 0 where it goes on by itself.'),
    workpiece: text.nullable(),
    attitude: text.nullable(),
    station: text.nullable(),
    tools: z.array(text),
    needIds: z.array(text).describe('The needs that hold when it starts.'),
  })
  .meta({ id: 'Step' })

const conflict = z
  .strictObject({
    members: z.array(
      z.strictObject({
        kind: z.enum(['need', 'lag', 'mode']),
        id: text,
        step: text,
        says: text,
        giveUp: z.union([z.number(), z.literal('never')]),
      }),
    ),
    cheapest: z.array(text),
    irreducible: z.boolean(),
  })
  .meta({ id: 'Conflict', description: 'Together they allow no sequence; take any one out and the others do.' })

export const sequenceAnswer = z
  .strictObject({
    schema: z.literal('matchmark-sequence/1'),
    ...about,
    inputHash: text.regex(/^[0-9a-f]{64}$/).describe('SHA-256 of the planning problem in canonical JSON (RFC 8785).'),
    effort: z.strictObject({ states: count, width: count, dropped: count }),
    seed: count.describe('The search draws no lots: always 0.'),
    value: value.nullable(),
    bound: value.nullable().describe('No sequence is better than this.'),
    proven: z.boolean().describe('No sequence is better than the value, for what was told; false where there is none.'),
    feasible: z
      .enum(['yes', 'no', 'not known'])
      .describe("'no': proven that nothing can be done, and the conflict says why."),
    tries: z
      .strictObject({
        low: value,
        usual: value,
        high: value,
        bound: value.describe('No sequence is better than this with usual tries.'),
        proven: z.boolean(),
        loops: z.array(
          z.strictObject({
            id: text,
            again: z.array(text).describe('What comes off and is done again in each further try.'),
            renews: z.array(text),
            noReturn: z.array(text),
            try_s: count.describe('Seconds of one further try.'),
          }),
        ),
      })
      .nullable()
      .describe('The values with what is tried until it is right; null where there is nothing of the kind.'),
    assumptions: z.array(
      z.strictObject({
        relation: text,
        says: text,
        standing,
        wouldChange: z.union([z.boolean(), z.literal('not tried')]),
      }),
    ),
    steps: z.array(step),
    turnovers: count,
    minutes: z.number().min(0).nullable(),
    noReturn: z.array(z.strictObject({ step: text, says: text })),
    conflict: conflict.nullable(),
    faults: z.array(fault).describe('What contradicts itself in the file; the sequence may rest on it.'),
    wall_s: z.number().min(0).describe('The only field that differs from run to run.'),
  })
  .meta({ title: 'Sequence', description: 'What `matchmark sequence FILE --json` answers.' })

export const judgementAnswer = z
  .strictObject({
    schema: z.literal('matchmark-judgement/1'),
    ...about,
    order: text,
    inputHash: text,
    breaches: z.array(z.strictObject({ rule: text, id: text, step: text, says: text })),
    value: value.nullable().describe('With the best modes and times for this order; null when no times hold.'),
    best: value.nullable(),
    costsMore: value.nullable(),
    repair: z
      .strictObject({
        moved: z.array(
          z.strictObject({
            step: text,
            from: count.describe('Its place as told, from 1.'),
            to: count,
            after: text.nullable(),
          }),
        ),
        otherModes: z.array(text).describe('Steps done in another way than told.'),
        least: count.describe('No repair moves fewer steps than this.'),
        value,
        order: z.array(text),
      })
      .nullable()
      .describe('The fewest steps moved so that all can be done; null where nothing is broken or no repair was found.'),
    differences: z
      .array(
        z.strictObject({
          steps: z.array(text),
          after: text.nullable().describe('What they come right after as told; null at the start.'),
          bestAfter: text.nullable(),
          mode: z.strictObject({ told: text, other: text }).nullable(),
          cures: z.array(z.strictObject({ rule: text, id: text, step: text, says: text })),
          gains: value.nullable(),
        }),
      )
      .describe('What the best does otherwise, move by move; the gains add up to what the order costs more.'),
  })
  .meta({ title: 'Judgement', description: 'What `matchmark sequence FILE --judge ORDERFILE --json` answers.' })

export const nearAnswer = z
  .strictObject({
    schema: z.literal('matchmark-near/1'),
    ...about,
    order: text,
    inputHash: text,
    undo: z.array(text).describe('Steps to take back first, in this order.'),
    renews: z.array(text),
    voids: z.array(text).describe('Checks that no longer count.'),
    outOfTurn: z
      .array(z.strictObject({ step: text, says: text, comesOff: z.boolean() }))
      .describe('Steps done although a need of them cannot have been met.'),
    steps: z.array(z.strictObject({ id: text, does: text, mode: text, start_s: count, end_s: count })),
    value: value.nullable(),
    best: value.nullable().describe('Without regard to the order told.'),
    proven: z.boolean(),
    moved: z.array(text),
    leastMoved: count.describe('No order that can be done moves fewer steps.'),
    differences: z.array(
      z.strictObject({
        steps: z.array(text),
        after: text.nullable(),
        nowAfter: text.nullable(),
        cures: z.array(z.strictObject({ rule: text, id: text, step: text, says: text })),
        gains: value.nullable(),
      }),
    ),
    waitsFor: z.array(text),
    conflict: conflict.nullable(),
  })
  .meta({ title: 'Near', description: 'What `matchmark sequence FILE --near ORDER --json` answers.' })

export const countAnswer = z
  .strictObject({
    schema: z.literal('matchmark-count/1'),
    ...about,
    inputHash: text,
    count: text.regex(/^\d+$/).describe('Orders of the steps that satisfy the needs, as a decimal numeral.'),
    estimate: z
      .strictObject({
        low: text.regex(/^\d+$/),
        high: text.regex(/^\d+$/),
        confidence: z.literal(0.95).describe('How often such an interval holds the number.'),
        seed: count,
        draws: count,
        kept: count.describe('Sets of steps kept in each layer of a draw.'),
      })
      .nullable()
      .describe('The interval, where the number is estimated; null where it was counted.'),
  })
  .meta({ title: 'Count', description: 'What `matchmark sequence FILE --count --json` answers.' })

const held = z
  .strictObject({ rule: text, id: text, step: text, says: text })
  .nullable()
  .describe('What would break one place further; null at the end of the order.')

export const slackAnswer = z
  .strictObject({
    schema: z.literal('matchmark-slack/1'),
    ...about,
    inputHash: text,
    value: value.nullable(),
    steps: z.array(
      z.strictObject({
        id: text,
        place: count.describe('From 1.'),
        first: count.describe('It may stand alone at any place from here to last, all others keeping their order.'),
        last: count,
        freeFirst: count.describe('The earliest of these places where the value is no worse.'),
        freeLast: count,
        heldBack: held,
        heldOn: held,
        waits_s: count.describe('It may start so much later without a later end.'),
        noReturn: text.nullable(),
        shuts: z.array(z.strictObject({ step: text, says: text })).describe('Steps that could not be done after it.'),
        couldComeBefore: z.array(text).describe('Later steps that could still be done before it.'),
      }),
    ),
  })
  .meta({ title: 'Slack', description: 'What `matchmark sequence FILE --slack --json` answers.' })

export const costlyAnswer = z
  .strictObject({
    schema: z.literal('matchmark-costly/1'),
    ...about,
    inputHash: text,
    value: value.nullable(),
    relations: z
      .array(
        z.strictObject({
          kind: z.enum(['need', 'lag', 'mode']),
          id: text,
          step: text,
          says: text,
          standing,
          gains: value.describe('How much better the best would be without it: at least, where it is not proven.'),
          proven: z.boolean(),
        }),
      )
      .describe('The dearest first.'),
    tried: count,
    of: count,
  })
  .meta({ title: 'Costly', description: 'What `matchmark sequence FILE --costly --json` answers.' })

const range = z.strictObject({ low: z.number(), high: z.number() })

export const holdsAnswer = z
  .strictObject({
    schema: z.literal('matchmark-holds/1'),
    ...about,
    inputHash: text,
    value: value.nullable(),
    assumed: z
      .strictObject({ chance: range, look_s: range, stop_s: count })
      .describe('What was taken for every step of which nothing is told.'),
    holds: z.array(
      z.strictObject({
        after: text,
        place: count,
        looksAt: z.array(text),
        saves_s: range,
        certain: z.boolean().describe('False where it is worth its time only in a part of the ranges.'),
      }),
    ),
    perhaps: z.array(z.strictObject({ after: text, place: count })).describe('Worth it only at the bad end.'),
    expected_s: range.describe('Looking and setting right, with these stops.'),
    withoutHolds_s: range,
    notKnown: z.array(text),
  })
  .meta({ title: 'Holds', description: 'What `matchmark sequence FILE --holds CHANCE --json` answers.' })

const basis = z.enum(['readings', 'nominal', 'mixed', 'table'])

const figure = z
  .strictObject({
    label: text,
    dimension: z.enum([
      'length',
      'force',
      'torque',
      'pressure',
      'temperature',
      'temperature difference',
      'angle',
      'mass',
      'time',
      'number',
    ]),
    low: z.number().describe('In SI: m, N, N·m, Pa, K, rad, kg, s.'),
    high: z.number(),
    standing,
    basis: basis.describe('What it was worked out from.'),
    source: text,
    limit: z
      .strictObject({ low: z.number().exactOptional(), high: z.number().exactOptional(), source: text })
      .exactOptional(),
    verdict: z.enum(['within', 'out', 'not known']).exactOptional(),
    note: text.exactOptional(),
  })
  .meta({ id: 'Figure' })

export const settingsAnswer = z
  .strictObject({
    schema: z.literal('matchmark-settings/1'),
    ...about,
    settings: z.array(
      z.strictObject({
        connection: text,
        kind: text,
        title: text,
        figures: z.array(figure),
        says: z.array(text),
        missing: z.array(text).describe('What has to be known before more can be said.'),
        cautions: z.array(text),
      }),
    ),
  })
  .meta({ title: 'Settings', description: 'What `matchmark settings FILE --json` answers.' })

const reason = {
  says: text,
  origin: z.enum(['geometry', 'connection', 'process', 'author', 'usual', 'observed']),
  standing,
  source: text.exactOptional(),
}

export const whyAnswer = z
  .strictObject({
    schema: z.literal('matchmark-why/1'),
    ...about,
    inputHash: text,
    first: text,
    second: text,
    order: z
      .enum(['first', 'second', 'free', 'never', 'not known'])
      .describe('Which of the two comes first in every sequence.'),
    says: text,
    chain: z
      .array(z.strictObject({ before: text, after: text, ...reason, from: z.array(text) }))
      .describe('From the earlier step to the later one, each link with the relations that it rests on.'),
    relations: z
      .array(z.strictObject({ id: text, ...reason }))
      .describe('What decides together where no chain does; where the order is free, what speaks of both.'),
  })
  .meta({ title: 'Why', description: 'What `matchmark why FILE A B --json` answers.' })

export const reachAnswer = z
  .strictObject({
    schema: z.literal('matchmark-reach/1'),
    ...about,
    inputHash: text,
    step: text,
    way: z
      .strictObject({
        undo: z.array(text).describe('Steps to take back, in this order.'),
        renews: z.array(text),
        voids: z.array(text).describe('Steps that no longer count by it.'),
        noReturn: z.array(z.strictObject({ step: text, says: text })),
        rebuild: z.array(text).describe('Steps to do again, in this order.'),
        cost_s: count,
        bound_s: count.describe('No way costs less than this.'),
      })
      .nullable(),
    ahead: z
      .strictObject({
        undo: z.array(text).describe('Steps to take back before that, where they shut the way.'),
        steps: z.array(text).describe('Steps to do first, and the one asked for, in this order.'),
        cost_s: count,
        bound_s: count.describe('No way is shorter than this.'),
        afterwards: z.array(text),
      })
      .nullable()
      .describe('The way forward, where the step is not done yet.'),
  })
  .meta({ title: 'Reach', description: 'What `matchmark reach FILE PART --json` answers.' })

export const bookAnswer = z
  .strictObject({ schema: z.literal('matchmark-book/1'), ...about, book: text.describe('The file that was written.') })
  .meta({ title: 'Book', description: 'What `matchmark book FILE -o DIR --json` answers.' })

export const serveAnswer = z
  .strictObject({ schema: z.literal('matchmark-serve/1'), url: text, shared: z.array(text) })
  .meta({ title: 'Serve', description: 'What `matchmark serve --json` answers once it can be asked.' })

export const kitAnswer = z
  .strictObject({
    schema: z.literal('matchmark-kit/1'),
    ...about,
    lines: z.array(
      z.strictObject({
        group: z.enum(['rejected', 'always renewed', 'completes a set', 'shims wanted', 'consumables']),
        part: text.exactOptional(),
        what: text.describe('As it is asked for over the counter.'),
        pieces: count.exactOptional(),
        amount: text.exactOptional(),
        why: z.array(z.strictObject({ says: text, standing, source: text.exactOptional() })),
        number: text.exactOptional(),
        from: text.exactOptional(),
        price: text.exactOptional(),
        lead: text.exactOptional(),
      }),
    ),
  })
  .meta({ title: 'Kit', description: 'What `matchmark kit FILE --json` answers.' })

const figureInput = z
  .strictObject({
    key: text.describe('As it is typed before the =.'),
    what: text.describe('What it is in the shop.'),
    wants: text.describe('How it is written.'),
    needed: z.boolean().describe('Without it nothing can be said. All others have a value that is taken for them.'),
  })
  .meta({ id: 'FigureInput' })

export const figuresAnswer = z
  .strictObject({
    schema: z.literal('matchmark-figures/1'),
    figures: z.array(
      z.strictObject({
        name: text,
        room: text,
        asks: text.describe('The question as it is asked at the bench.'),
        formula: text.describe('In words.'),
        holds: text.describe('What it means and within which limits.'),
        source: text,
        inputs: z.array(figureInput),
        example: text.describe('A line that can be typed behind the name.'),
      }),
    ),
  })
  .meta({
    title: 'Figures',
    description: 'What `matchmark figure --json` answers: every calculation that can be asked for.',
  })

const figureLine = z
  .strictObject({
    name: text,
    says: text.describe('For people, with its unit.'),
    dimension: text.nullable().describe('number and share have no unit; null for words.'),
    low: z.number().nullable().describe('In SI; null for words.'),
    high: z.number().nullable(),
  })
  .meta({ id: 'FigureLine' })

export const figureAnswer = z
  .strictObject({
    schema: z.literal('matchmark-figure/1'),
    name: text,
    asks: text,
    system: z.enum(['metric', 'inch']),
    given: z.array(z.strictObject({ key: text, text })),
    missing: z
      .array(z.strictObject({ key: text, wants: text }))
      .describe('What has to be known first; then there are no results and the exit code is 1.'),
    results: z.array(figureLine),
    margins: z.array(figureLine).describe('What is left to a limit.'),
    formula: text,
    taken: z.array(text).describe('What was not told, and what was taken for it.'),
    holds: text,
    cautions: z.array(text),
    sources: z.array(text),
  })
  .meta({ title: 'Figure', description: 'What `matchmark figure NAME key=value … --json` answers.' })

export type CheckAnswer = z.infer<typeof checkAnswer>
export type SequenceAnswer = z.infer<typeof sequenceAnswer>
export type WhyAnswer = z.infer<typeof whyAnswer>
export type ReachAnswer = z.infer<typeof reachAnswer>
export type JudgementAnswer = z.infer<typeof judgementAnswer>
export type CountAnswer = z.infer<typeof countAnswer>
export type FiguresAnswer = z.infer<typeof figuresAnswer>
export type FigureAnswer = z.infer<typeof figureAnswer>
export type SlackAnswer = z.infer<typeof slackAnswer>
export type CostlyAnswer = z.infer<typeof costlyAnswer>
export type HoldsAnswer = z.infer<typeof holdsAnswer>
export type NearAnswer = z.infer<typeof nearAnswer>
