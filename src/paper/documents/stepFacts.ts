// Everything that one step sheet shows, gathered from the unit, its connections and the sequence.
import type { Lag, Mode, Operation } from '../../planning/model/problem.ts'
import { beforeEach } from '../../planning/relations/before.ts'
import type { SetUpChange } from '../../planning/relations/setUpChanges.ts'
import type { Connected } from '../../unit/connections/connectionsOf.ts'
import type { HoleMap, Setting } from '../../unit/connections/kind.ts'
import { carriedWith } from '../../unit/derive/frame.ts'
import type { Check, End, LineId, Part, PartId } from '../../unit/model/unit.ts'
import type { JobBookInput } from './jobBookInput.ts'
import { type Hold, whyHere } from './whyHere.ts'

export interface StepFacts {
  readonly number: number
  readonly operation: Operation
  readonly mode: Mode
  readonly start_s: number
  readonly end_s: number
  /** Who of a crew is at it; missing where one person works. */
  readonly people?: readonly string[]
  /** Seconds of waiting before it. */
  readonly wait_s: number
  /** What is set up anew before it, in words. */
  readonly setUp: readonly string[]
  /** The part under work, where it is one. */
  readonly part?: Part
  readonly check?: Check
  /** The line that its drawing shows; missing where nothing of it was measured. */
  readonly line?: LineId
  readonly from?: End
  readonly home: ReadonlySet<PartId>
  readonly toCome: ReadonlySet<PartId>
  readonly why: readonly Hold[]
  readonly within: readonly string[]
  readonly settings: readonly Setting[]
  readonly maps: readonly HoleMap[]
  readonly cautions: readonly string[]
  readonly warnings: readonly string[]
  readonly proofs: readonly string[]
  readonly clocks: readonly Lag[]
}

function setUpText({ what, to, workpiece, person }: SetUpChange): string {
  if (what === 'attitude') return `turn ${workpiece} over: ${to}`
  return `${person === undefined ? '' : `${person}: `}${what === 'tools' ? `take up ${to}` : `go to ${to}`}`
}

/** One sheet for each step of the sequence, in its order. */
export function stepFacts(input: JobBookInput): readonly StepFacts[] {
  const { work, result } = input
  const { unit, joints, problem } = work
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const placed = result.steps.flatMap((step) => {
    const operation = operations.get(step.op)
    const mode = operation?.modes.find(({ id }) => id === step.mode)
    return operation && mode ? [{ step, operation, mode }] : []
  })
  const before = beforeEach(
    problem,
    placed.map(({ step, mode }) => ({ ...step, mode })),
  )
  const why = whyHere(problem, result)
  const joined = joinedAt(input)
  const done = new Set(work.job?.done.map(({ step }) => step) ?? [])
  const parts = placed.map(({ operation }) => partOf(operation.id, input))
  return placed.map(({ step, operation, mode }, index) => {
    const part = parts[index]
    const check = unit.checks.get(operation.id)
    const earlier = new Set(done)
    done.add(operation.id)
    const home = presentAt({ input, workpiece: mode.setup.workpiece, done: earlier, part })
    const next = goesOn(placed[index + 1]?.mode, mode) ? parts[index + 1] : undefined
    const mine = joined.get(operation.id) ?? []
    const { changes, wait_s } = before[index]!
    const line = lineOf(part, check, home, input)
    const way = work.derivation.ways.find((each) => each.part === operation.id && each.id === mode.id)
    return {
      number: index + 1,
      operation,
      mode,
      start_s: step.start_s,
      end_s: step.end_s,
      ...(step.people && { people: step.people }),
      wait_s,
      setUp: changes.map(setUpText),
      ...(part && { part }),
      ...(check && { check }),
      ...(line !== undefined && { line }),
      ...(way?.from && { from: way.from }),
      home,
      toCome: new Set([...waiting(earlier, input), ...(next && !home.has(next.id) ? [next.id] : [])]),
      why: why.get(operation.id) ?? [],
      within: [
        ...joints.within.filter((each) => each.part === operation.id).map(({ does }) => does),
        ...(joints.steps.find(({ id }) => id === operation.id)?.within ?? []),
      ],
      settings: input.settings.filter(({ connection }) => mine.some((each) => each.connection.id === connection)),
      maps: mine.flatMap(({ connection, kind, given }) => kind.drawing(connection, given, unit).maps),
      cautions: once([
        ...(part?.id === operation.id ? part.cautions : []),
        // What is said of these very sizes comes before what is said of every fit.
        ...input.settings
          .filter(({ connection }) => mine.some((each) => each.connection.id === connection))
          .flatMap(({ cautions }) => cautions),
        ...mine.flatMap(({ connection, kind, given }) => kind.cautions(connection, given)),
      ]),
      warnings: once(mine.flatMap(({ connection, kind, given }) => kind.warnings(connection, given, unit))),
      proofs: once(mine.flatMap(({ connection, kind, given }) => kind.checks(connection, given))),
      clocks: problem.lags.filter(({ from, to }) => from.op === operation.id || to.op === operation.id),
    }
  })
}

const once = (texts: readonly string[]): readonly string[] => [...new Set(texts)]

/** Is the next step done on the same workpiece? Then its part is shown as what comes next. */
const goesOn = (next: Mode | undefined, mode: Mode): boolean =>
  mode.setup.workpiece !== 'any' && next?.setup.workpiece === mode.setup.workpiece

/** The part that a step handles: its own, the one it follows, or the one whose connection it serves. */
function partOf(step: string, { work }: JobBookInput): Part | undefined {
  const { unit, joints } = work
  const own = unit.parts.get(step)
  if (own) return own
  const followed = [...unit.parts.values()].find(({ follows }) => follows.some(({ id }) => id === step))
  if (followed) return followed
  const draft = joints.steps.find(({ id }) => id === step)
  const tried = unit.checks.get(step)?.trial[0]
  return unit.parts.get(draft?.as ?? tried ?? '')
}

/**
 * The step at which each connection is made: its own step where it has one of its name, else the first of its own steps and
 * the step that brings its parts together.
 */
function joinedAt({ work, result }: JobBookInput): ReadonlyMap<string, readonly Connected[]> {
  const { unit, joints, connections, derivation } = work
  const place = new Map(result.steps.map(({ op }, index) => [op, index]))
  const at = new Map<string, Connected[]>()
  const add = (step: string, connected: Connected) => at.set(step, [...(at.get(step) ?? []), connected])
  const stepOf = (id: PartId): PartId => {
    const part = unit.parts.get(id)
    return (part && carriedWith(part, joints)) ?? id
  }
  for (const connected of connections.connections) {
    const { connection, kind, given } = connected
    const own = kind.steps(connection, given, unit).steps.filter(({ id }) => place.has(id))
    if (own.some(({ id }) => id === connection.id)) {
      add(connection.id, connected)
      continue
    }
    const [first, ...others] = [...new Set(kind.parts(given).map(stepOf))]
    const links = others.length
      ? others.flatMap((other) => derivation.frame.link(first ?? unit.housing, other))
      : derivation.frame.chain(first ?? unit.housing)
    const together = links
      .filter((step) => place.has(step))
      .sort((a, b) => (place.get(b) ?? 0) - (place.get(a) ?? 0))[0]
    for (const step of new Set([own[0]?.id, together])) if (step !== undefined) add(step, connected)
  }
  return at
}

interface Moment {
  readonly input: JobBookInput
  readonly workpiece: string
  readonly done: ReadonlySet<string>
  readonly part: Part | undefined
}

/** What hangs together on the workpiece at hand before the step, and the part under work with what goes along. */
function presentAt({ input: { work }, workpiece, done, part }: Moment): ReadonlySet<PartId> {
  const { unit, derivation } = work
  const { frame } = derivation
  const waits = waiting(done, { work })
  const there = frame.movers.filter(({ id }) => {
    const chain = frame.chain(id)
    if (workpiece === unit.housing)
      return chain.every((link) => done.has(link)) && !chain.some((link) => waits.has(link))
    const reach = chain.indexOf(workpiece)
    return reach >= 0 && chain.slice(0, reach).every((link) => done.has(link))
  })
  const ids = [...there.map(({ id }) => id), ...(part ? [part.id] : [])]
  const along = ids.flatMap((id) => frame.together(id).map((each) => each.id))
  return new Set([...(workpiece === unit.housing ? [unit.housing] : []), ...ids, ...along])
}

/** Parked parts: in the housing, but not at home yet. */
function waiting(done: ReadonlySet<string>, { work }: Pick<JobBookInput, 'work'>): ReadonlySet<PartId> {
  const { frame } = work.derivation
  return new Set(
    frame.movers
      .filter(({ id }) => {
        const homeWith = frame.parking(id)?.homeWith
        return homeWith !== undefined && done.has(id) && !done.has(homeWith)
      })
      .map(({ id }) => id),
  )
}

/** The line on which most of what is there can be seen; for a check, of what it looks at. */
function lineOf(
  part: Part | undefined,
  check: Check | undefined,
  home: ReadonlySet<PartId>,
  { work }: JobBookInput,
): LineId | undefined {
  const { unit } = work
  const looked = part ? [part] : (check?.wants ?? []).flatMap((id) => unit.parts.get(id) ?? [])
  const count = (line: LineId, parts: Iterable<PartId>) =>
    [...parts].filter((id) => unit.parts.get(id)?.rings.has(line)).length
  const lines = [...unit.lines.keys()]
    .map((line) => ({
      line,
      own: count(
        line,
        looked.map(({ id }) => id),
      ),
      all: count(line, home),
    }))
    .filter(({ own }) => own > 0)
    .sort((a, b) => b.own - a.own || b.all - a.all)
  return lines[0]?.line
}
