// A job worked out into what its sheets show. Plain data that can cross to a worker and lie in a store; drawings are made when asked for.
import type { Job } from '../../job/model/job.ts'
import { verdictsOf } from '../../job/verdicts.ts'
import { sequenceOf, settingsOf, type WorkUp, workUp } from '../../job/workUp.ts'
import type { JobBookInput } from '../../paper/documents/jobBookInput.ts'
import { type StepFacts, stepFacts } from '../../paper/documents/stepFacts.ts'
import { placeText } from '../../paper/documents/stepSheet.ts'
import type { Hold } from '../../paper/documents/whyHere.ts'
import { figureText, limitText } from '../../paper/figureText.ts'
import { itemNumbers } from '../../paper/items.ts'
import { judge } from '../../planning/judge.ts'
import type { Lag, LagEvent, Standing } from '../../planning/model/problem.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import type { PlanProgress } from '../../planning/plan.ts'
import { printProblem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Figure, HoleMap, Setting } from '../../unit/connections/kind.ts'
import { signOffsOf } from '../../unit/derive/signOffs.ts'
import type { Check, Limit, Unit } from '../../unit/model/unit.ts'
import { type DeskSheet, kitLines, readingRows, unmeasuredRows } from './desk.ts'
import { hotGrip } from './hotGrip.ts'
import { type Doubt, doubtOf, spoken } from './spoken.ts'
import { type TrySheet, trySheets } from './trySheets.ts'

/** A step of a sequence that stands: what the journal keeps of it. */
export interface StandingStep {
  readonly step: string
  readonly mode?: string
  /** Who of a crew does it. */
  readonly people?: readonly string[]
}

export interface Wanted {
  readonly unit: Unit
  readonly job: Job
  /** The sequence that the job is built by; missing: the best one is worked out. */
  readonly sequence?: readonly StandingStep[]
  readonly system: System
}

export interface Bounds {
  readonly low?: number
  readonly high?: number
}

/** A limit, SI inside. */
export interface LimitSheet extends Bounds {
  readonly text: string
  readonly standing: Standing
  readonly source?: string
}

export interface WhySheet {
  readonly side: 'after' | 'before'
  /** 0 where that step stood before this sequence began. */
  readonly number: number
  readonly step: string
  readonly says: string
  readonly standing: Standing
  readonly source?: string
}

export interface ClockSheet {
  readonly id: string
  readonly from: LagEvent
  readonly to: LagEvent
  readonly min_s?: number
  readonly max_s?: number
  readonly says: string
  readonly standing: Standing
}

export interface FigureSheet {
  readonly label: string
  readonly dimension: Figure['dimension']
  readonly text: string
  readonly other?: string
  readonly limit?: string
  readonly verdict?: Figure['verdict']
  /** Half known: on which side of its limit it may lie, and where that limit is. */
  readonly doubt?: { readonly is: Doubt; readonly at: string }
  readonly rests: Standing
  readonly basis: Figure['basis']
  readonly source: string
  readonly note?: string
}

export interface SettingSheet {
  readonly connection: string
  readonly title: string
  readonly figures: readonly FigureSheet[]
  readonly says: readonly string[]
  readonly missing: readonly string[]
}

export interface SizeSheet {
  readonly part: string
  readonly feature: string
  readonly what?: string
  readonly size?: Bounds
  readonly limitNew?: LimitSheet
  readonly limitWorn?: LimitSheet
}

/** What the record of a step wants beside the name of the one who did it. */
export interface WantedSheet {
  readonly secondPerson: boolean
  /** What the photo has to show that is taken before it is signed. */
  readonly photo?: string
  readonly why?: string
  readonly standing: Standing
  readonly source?: string
  /** What it shuts for hand and eye. */
  readonly shuts: readonly string[]
}

/** What a check can measure and a person can type. */
export type Measured = 'length' | 'torque' | 'pressure' | 'force' | 'angle' | 'temperature' | 'time'

export interface CheckSheet {
  readonly id: string
  readonly measures: Measured
  /** Missing: it is good or it is not, there is no figure. */
  readonly limit?: LimitSheet
  /** The limit in words, or of a kind that is not typed here. */
  readonly told?: string
  readonly settles?: string
}

export interface StepSheetData {
  readonly number: number
  readonly step: string
  readonly mode: string
  readonly does: string
  readonly place: string
  readonly people: number
  /** Who of a crew does it, by name; none: it goes on by itself. Missing: one works, or the sequence that stands names nobody. */
  readonly crew?: readonly string[]
  readonly usual_s: number
  readonly wait_s: number
  readonly tools: readonly string[]
  readonly setUp: readonly string[]
  readonly within: readonly string[]
  readonly why: readonly WhySheet[]
  readonly noReturn?: string
  readonly cautions: readonly string[]
  readonly warnings: readonly string[]
  readonly proofs: readonly string[]
  readonly clocks: readonly ClockSheet[]
  readonly settings: readonly SettingSheet[]
  readonly sizes: readonly SizeSheet[]
  readonly check?: CheckSheet
  /** The setting that is tried at this step, or made with it. */
  readonly tries?: TrySheet
  readonly part?: { readonly id: string; readonly number: number; readonly note?: string; readonly mass_kg?: number }
  /** Is there anything to draw? */
  readonly isDrawn: boolean
  /** Tightening maps: places, order, stages. */
  readonly maps: readonly HoleMap[]
  /** Missing: one name is enough. */
  readonly wants?: WantedSheet
}

export interface PlanSheet {
  readonly value: PlanResult['value']
  readonly proven: boolean
  /** On what doubtful things it rests. */
  readonly rests: readonly {
    readonly says: string
    readonly standing: Standing
    readonly matters: boolean | 'not tried'
  }[]
  readonly breaches: readonly string[]
  readonly conflict?: { readonly members: readonly { readonly says: string; readonly cheapest: boolean }[] }
}

export interface WorkedJob {
  readonly unit: string
  readonly revision?: string
  readonly variant?: string
  readonly owner?: string
  readonly lengthUnit: 'mm' | 'in'
  readonly taken: readonly string[]
  readonly faults: readonly string[]
  readonly questions: readonly {
    readonly about: string
    readonly asks: string
    readonly holdsUp: string
    readonly rank: number
  }[]
  readonly instruments: readonly { readonly name: string; readonly uncertainty_m?: number; readonly due?: string }[]
  readonly wrenches: readonly {
    readonly name: string
    /** N·m */
    readonly range?: { readonly low: number; readonly high: number; readonly text: string }
  }[]
  /** Readings beyond every limit of parts that are to be used again. */
  readonly bad: number
  readonly lines: readonly string[]
  readonly items: readonly { readonly number: number; readonly part: string }[]
  readonly plan: PlanSheet
  readonly steps: readonly StepSheetData[]
  readonly desk: DeskSheet
}

/** What the drawings are made from; it stays where it was made. */
export interface Workings {
  readonly input: JobBookInput
  readonly facts: readonly StepFacts[]
  readonly numbers: ReadonlyMap<string, number>
}

/**
 * Works a job out: from its unit, its readings and the sequence that stands to everything that the sheets say.
 *
 * @param onProgress called while a sequence is being looked for
 */
export function workedJob(
  { unit, job, sequence, system }: Wanted,
  onProgress?: (progress: PlanProgress) => void,
): { readonly worked: WorkedJob; readonly workings: Workings } {
  const inSequence = new Set(sequence?.map(({ step }) => step))
  // Steps of the sequence that are done stay in it: their sheets can be read again.
  const before: Job = { ...job, done: job.done.filter(({ step }) => !inSequence.has(step)) }
  const work = workUp({ unit, job: before })
  const { result, breaches } = sequence ? standing(work, sequence) : { result: planned(work, onProgress), breaches: [] }
  const settings = settingsOf(work)
  const input: JobBookInput = { work, result, settings, kit: [], system, date: '' }
  const facts = stepFacts(input)
  const numbers = itemNumbers(work.unit)
  const tries = trySheets(work, system)
  const crews = new Map(sequence?.map(({ step, people }) => [step, people]))
  const crewOf = (step: StepFacts): { readonly crew?: readonly string[] } => {
    const crew = sequence ? crews.get(step.operation.id) : step.people
    return crew ? { crew } : {}
  }
  const verdicts = verdictsOf(work.unit, job)
  const wanted = signOffsOf(
    work.unit,
    work.joints,
    facts.map(({ operation }) => operation.id),
  )
  return {
    workings: { input, facts, numbers },
    worked: {
      unit: sentence(work.unit.name),
      ...(work.unit.revision !== undefined && { revision: work.unit.revision }),
      ...(work.variant !== undefined && { variant: work.variant }),
      ...(job.owner !== undefined && { owner: job.owner }),
      lengthUnit: job.lengthUnit,
      taken: work.taken,
      faults: work.faults.map(printProblem),
      questions: work.questions,
      instruments: [...job.plant.instruments].map(([name, { uncertainty, due }]) => ({
        name,
        ...(uncertainty && { uncertainty_m: uncertainty.high }),
        ...(due !== undefined && { due }),
      })),
      wrenches: job.plant.wrenches.map(({ name, range }) => ({
        name,
        ...(range && { range: { low: range.low, high: range.high, text: figureText(range, 'torque', system) } }),
      })),
      bad: verdicts.readings.filter(({ is, part }) => is === 'out' && job.asFound.get(part)?.decision === 'reuse')
        .length,
      lines: [...work.unit.lines.keys()],
      items: [...numbers].map(([part, number]) => ({ number, part })),
      plan: planSheet(result, breaches),
      steps: facts.map((step) => ({
        ...stepSheetData(step, { input, numbers, wanted, tries }),
        ...crewOf(step),
      })),
      desk: {
        kit: kitLines(work, system),
        readings: readingRows(verdicts, system),
        unmeasured: unmeasuredRows(verdicts, system),
        settings: settings.map((setting) => settingSheet(setting, system, true)),
        checks: [...work.unit.checks.values()].map((check) => ({
          ...checkSheet(check, system),
          does: work.derivation.problem.operations.find(({ id }) => id === check.id)?.does ?? check.does ?? check.id,
        })),
      },
    },
  }
}

const planned = (work: WorkUp, onProgress: ((progress: PlanProgress) => void) | undefined): PlanResult =>
  sequenceOf(work, onProgress ? { onProgress } : {})

/** The sequence that was adopted, with its times worked out anew; what it no longer fits is said. */
function standing(
  work: WorkUp,
  sequence: readonly StandingStep[],
): { readonly result: PlanResult; readonly breaches: readonly string[] } {
  const operations = new Map(work.problem.operations.map((operation) => [operation.id, operation]))
  const kept = sequence.filter(({ step }) => operations.has(step))
  const gone = sequence.filter(({ step }) => !operations.has(step)).map(({ step }) => step)
  const listed = new Set(kept.map(({ step }) => step))
  const added = [...operations.keys()].filter((id) => !listed.has(id))
  const crew = new Set(work.problem.crew?.map(({ id }) => id))
  const told = [...kept, ...added.map((step): StandingStep => ({ step }))].map(({ step, mode, people }) => ({
    op: step,
    ...(mode !== undefined && operations.get(step)?.modes.some(({ id }) => id === mode) && { mode }),
    // Who is no longer at this job cannot be asked for.
    ...(people?.every((name) => crew.has(name)) && { people }),
  }))
  const judged = judge(work.problem, told)
  const steps = judged.steps.length > 0 ? judged.steps : inRow(work, told)
  return {
    result: {
      value: judged.value,
      bound: null,
      feasible: judged.value ? 'yes' : 'not known',
      proven: false,
      steps,
      assumptions: [],
      conflict: null,
      effort: { states: 0, width: 0, dropped: 0 },
    },
    breaches: [
      ...gone.map((step) => `The step “${step}” of this sequence is no longer in the unit.`),
      ...added.map((step) => `The step “${step}” is not in this sequence; it stands at its end.`),
      ...judged.breaches.map(({ says }) => spoken(says)),
    ],
  }
}

/** One after the other, for a sequence whose clocks no times satisfy: it can still be read. */
function inRow(work: WorkUp, told: readonly { readonly op: string; readonly mode?: string }[]): PlanResult['steps'] {
  let at = 0
  return told.map(({ op, mode }) => {
    const operation = work.problem.operations.find(({ id }) => id === op)
    const start_s = at
    at += operation?.duration_s.usual ?? 0
    return { op, mode: mode ?? operation?.modes[0]?.id ?? '', start_s, end_s: at }
  })
}

function planSheet({ value, proven, assumptions, conflict }: PlanResult, breaches: readonly string[]): PlanSheet {
  return {
    value,
    proven,
    breaches,
    rests: assumptions.map(({ reason, wouldChange }) => ({
      says: spoken(reason.says),
      standing: reason.standing,
      matters: wouldChange,
    })),
    ...(conflict && {
      conflict: {
        members: conflict.members.map(({ id, reason }) => ({
          says: spoken(reason.says),
          cheapest: conflict.cheapest.includes(id),
        })),
      },
    }),
  }
}

/** `end cover onto upper case` begins a line like any sentence. */
const sentence = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

interface About {
  readonly input: JobBookInput
  readonly numbers: ReadonlyMap<string, number>
  readonly wanted: ReturnType<typeof signOffsOf>
  readonly tries: ReadonlyMap<string, TrySheet>
}

function stepSheetData(facts: StepFacts, { input, numbers, wanted, tries }: About): StepSheetData {
  const { operation, mode, part, check, maps } = facts
  const isOwn = part?.id === operation.id
  const grip = hotGrip(facts, input)
  const wants = wanted.get(operation.id)
  const tried = tries.get(operation.id)
  return {
    number: facts.number,
    step: operation.id,
    mode: mode.id,
    does: sentence(operation.does),
    place: placeText(facts),
    people: mode.people,
    usual_s: operation.duration_s.usual,
    wait_s: facts.wait_s,
    tools: mode.setup.tools === 'any' ? [] : mode.setup.tools,
    setUp: facts.setUp,
    within: facts.within,
    why: facts.why.map(whySheet),
    ...(operation.noReturn !== undefined && { noReturn: sentence(operation.noReturn) }),
    cautions: facts.cautions,
    warnings: facts.warnings,
    proofs: facts.proofs,
    clocks: [...facts.clocks.map(clockSheet), ...(grip ? [grip] : [])],
    settings: facts.settings.map((setting) => settingSheet(setting, input.system)),
    sizes: isOwn && part ? sizesOf(part.id, input) : [],
    ...(check && { check: checkSheet(check, input.system) }),
    ...(tried && { tries: tried }),
    ...(part && {
      part: {
        id: part.id,
        number: numbers.get(part.id) ?? 0,
        ...(isOwn && part.note !== undefined && { note: part.note }),
        ...(isOwn && part.mass && { mass_kg: part.mass.high }),
      },
    }),
    isDrawn: facts.line !== undefined,
    maps,
    ...(wants && { wants }),
  }
}

const whySheet = ({ side, number, op, reason }: Hold): WhySheet => ({
  side,
  number,
  step: op,
  says: spoken(reason.says),
  standing: reason.standing,
  ...(reason.source !== undefined && { source: reason.source }),
})

const clockSheet = ({ id, from, to, min_s, max_s, reason }: Lag): ClockSheet => ({
  id,
  from,
  to,
  ...(min_s !== undefined && { min_s }),
  ...(max_s !== undefined && { max_s }),
  says: reason.says,
  standing: reason.standing,
})

/** What judges only the strength of the parts is for the desk, unless it says no. */
const isForTheBench = ({ dimension, verdict }: Figure): boolean =>
  (dimension !== 'pressure' && dimension !== 'number') || verdict === 'out' || verdict === 'not known'

function settingSheet(
  { connection, title, figures, says, missing }: Setting,
  system: System,
  isDesk = false,
): SettingSheet {
  const other: System = system === 'metric' ? 'inch' : 'metric'
  return {
    connection,
    title,
    says: says.map(spoken),
    missing: missing.map(spoken),
    figures: figures
      .filter((figure) => isDesk || isForTheBench(figure))
      .map((figure) => {
        const text = spoken(figureText(figure, figure.dimension, system))
        const otherText = spoken(figureText(figure, figure.dimension, other))
        const limit = figure.limit && limitText(figure.limit, figure.dimension, system)
        const is = figure.verdict === 'not known' ? doubtOf(figure, figure.limit) : undefined
        return {
          label: figure.label,
          dimension: figure.dimension,
          text,
          ...(otherText !== text && { other: otherText }),
          ...(limit !== undefined && { limit: spoken(limit) }),
          ...(figure.verdict && { verdict: figure.verdict }),
          ...(is && { doubt: { is, at: edgeText(figure, is, system) } }),
          rests: figure.standing,
          basis: figure.basis,
          source: figure.source,
          ...(figure.note !== undefined && { note: figure.note }),
        }
      }),
  }
}

/** The edge of the limit that is in doubt, without `at most`. */
function edgeText({ limit, dimension }: Figure, is: Doubt, system: System): string {
  const edge = is === 'may be over' ? limit?.high : is === 'may be under' ? limit?.low : undefined
  if (edge !== undefined) return figureText({ low: edge, high: edge }, dimension, system)
  return spoken(limitText(limit ?? {}, dimension, system) ?? '')
}

function sizesOf(id: string, { work, system }: JobBookInput): readonly SizeSheet[] {
  const part = work.unit.parts.get(id)
  return (part?.features ?? [])
    .filter(({ limitNew, limitWorn }) => limitNew || limitWorn)
    .map(({ id: feature, what, size, limitNew, limitWorn }) => ({
      part: id,
      feature,
      ...(what !== undefined && { what }),
      ...(size && { size: { low: size.low, high: size.high } }),
      ...(limitNew && { limitNew: limitSheet(limitNew, system) }),
      ...(limitWorn && { limitWorn: limitSheet(limitWorn, system) }),
    }))
}

const limitSheet = ({ low, high, standing: word, source }: Limit, system: System): LimitSheet => ({
  ...(low !== undefined && { low }),
  ...(high !== undefined && { high }),
  text: spoken(
    limitText({ ...(low !== undefined && { low }), ...(high !== undefined && { high }) }, 'length', system) ?? '',
  ),
  standing: word,
  ...(source !== undefined && { source }),
})

/** The SI unit in which the unit file's reader gives a limit. */
const MEASURED: Readonly<Record<string, Measured>> = {
  m: 'length',
  N·m: 'torque',
  Pa: 'pressure',
  N: 'force',
  rad: 'angle',
  K: 'temperature',
  s: 'time',
}

function checkSheet({ id, limit, settles }: Check, system: System): CheckSheet {
  const measures = limit && MEASURED[limit.unit]
  const bounds = {
    ...(limit?.low !== undefined && { low: limit.low }),
    ...(limit?.high !== undefined && { high: limit.high }),
  }
  return {
    id,
    measures: measures ?? 'length',
    ...(limit && measures
      ? {
          limit: {
            ...bounds,
            text: spoken(limitText(bounds, measures, system) ?? limit.text),
            standing: limit.standing,
            ...(limit.source !== undefined && { source: limit.source }),
          },
        }
      : limit && { told: limit.text }),
    ...(settles !== undefined && { settles }),
  }
}
