// Reads the files of the published resource-constrained scheduling libraries as planning problems: resources are machines,
// activities go on by themselves.
import type { Lag, Need, Operation, PlanningProblem, Reason } from '../model/problem.ts'

/** What is wrong with a file, and where. */
export class RcpspFault extends Error {
  constructor(file: string, { line, column }: { line: number; column: number }, says: string) {
    super(`${file}:${line}:${column}: ${says}`)
  }
}

interface Word {
  readonly text: string
  readonly line: number
  readonly column: number
}

/** The words of a file, one after another. */
class Words {
  readonly file: string
  readonly #lines: readonly (readonly Word[])[]

  constructor(file: string, text: string) {
    this.file = file
    this.#lines = text
      .split(/\r?\n/)
      .map((row, line) =>
        [...row.matchAll(/\S+/g)].map((match) => ({ text: match[0], line: line + 1, column: match.index + 1 })),
      )
  }

  get count(): number {
    return this.#lines.length
  }

  line(number: number): readonly Word[] {
    return this.#lines[number - 1] ?? []
  }

  fault(line: number, says: string, column = 1): RcpspFault {
    return new RcpspFault(this.file, { line, column }, says)
  }

  /** The first line whose words begin so. */
  find(...begin: string[]): number {
    const at = this.#lines.findIndex((words) => begin.every((text, place) => words[place]?.text === text))
    if (at < 0) throw this.fault(this.count, `the file ends; expected was a line '${begin.join(' ')}'. Is it whole?`)
    return at + 1
  }

  number(line: number, place: number, what: string, least = 0): number {
    const word = this.line(line)[place]
    if (!word) throw this.fault(line, `${what} is missing; expected was a whole number. Is the file whole?`)
    const text = word.text.replace(/^\[|\]$/g, '')
    if (!/^-?\d+$/.test(text) || Number(text) < least) {
      throw this.fault(line, `${what} is '${word.text}'; expected was a whole number from ${least}.`, word.column)
    }
    return Number(text)
  }
}

const because = (says: string): Reason => ({ code: 'RCPSP', says, facts: {}, origin: 'author', standing: 'told' })
const NOTHING = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } as const

interface Activity {
  readonly duration: number
  readonly wants: readonly number[]
}

function problemOf(
  activities: readonly Activity[],
  capacities: readonly number[],
  { first, needsOf, lags }: { first: number; needsOf: (activity: number) => readonly Need[]; lags: readonly Lag[] },
): PlanningProblem {
  const name = (resource: number) => `R${resource + 1}`
  const wanted = (wants: readonly number[]) =>
    Object.fromEntries(wants.flatMap((count, resource) => (count > 0 ? [[name(resource), count]] : [])))
  return {
    schema: 'matchmark-planning/1',
    operations: activities.map(({ duration, wants }, at): Operation => {
      const machines = wanted(wants)
      return {
        id: `${at + first}`,
        does: `Activity ${at + first}`,
        duration_s: { low: duration, usual: duration, high: duration },
        modes: [{ id: 'only', setup: NOTHING, people: 0, needs: [], machines }],
        needs: needsOf(at + first),
      }
    }),
    lags,
    changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0 },
    start: { attitudes: {} },
    people: 1,
    crew: [{ id: 'foreman', skills: [] }],
    machines: Object.fromEntries(capacities.map((capacity, resource) => [name(resource), capacity])),
  }
}

/**
 * A file of PSPLIB's single-mode sets (`.sm`): job 1 and the last are dummies, so that job 2 becomes operation '1'.
 * @throws RcpspFault with the line and column
 * @source R. Kolisch, A. Sprecher, PSPLIB, European Journal of Operational Research 96 (1996) 205-216
 */
export function readSm(file: string, text: string): PlanningProblem {
  const words = new Words(file, text)
  const jobsLine = words.find('jobs', '(incl.')
  const jobs = words.number(jobsLine, words.line(jobsLine).length - 1, 'the number of jobs', 3)
  const resourcesLine = words.find('-', 'renewable')
  const resources = words.number(resourcesLine, 3, 'the number of renewable resources')
  const relations = words.find('jobnr.', '#modes')
  const successors: number[][] = []
  for (let job = 1; job <= jobs; job++) {
    const line = relations + job
    if (words.number(line, 0, 'the job') !== job) throw words.fault(line, `this is not job ${job}.`)
    if (words.number(line, 1, 'the number of modes') !== 1) {
      throw words.fault(line, 'more than one mode; expected was a file of one mode for each job.')
    }
    const count = words.number(line, 2, 'the number of successors')
    successors.push(
      Array.from({ length: count }, (_, at) => {
        const next = words.number(line, 3 + at, 'a successor', 1)
        if (next <= jobs) return next
        const { column } = words.line(line)[3 + at]!
        throw words.fault(line, `the successor is ${next}; there are ${jobs} jobs.`, column)
      }),
    )
  }
  const requests = words.find('jobnr.', 'mode', 'duration') + 1
  const activities: Activity[] = []
  for (let job = 1; job <= jobs; job++) {
    const line = requests + job
    if (words.number(line, 0, 'the job') !== job) throw words.fault(line, `this is not job ${job}.`)
    const wants = Array.from({ length: resources }, (_, at) => words.number(line, 3 + at, 'a demand'))
    activities.push({ duration: words.number(line, 2, 'the duration'), wants })
  }
  const last = words.find('RESOURCEAVAILABILITIES:') + 2
  const capacities = Array.from({ length: resources }, (_, at) => words.number(last, at, 'a capacity', 1))
  return problemOf(activities.slice(1, -1), capacities, {
    first: 1,
    lags: [],
    needsOf: (activity) =>
      successors.flatMap((list, job) =>
        job > 0 && list.includes(activity + 1)
          ? [
              {
                id: `${job} before ${activity}`,
                anyOf: [{ done: [`${job}`], notDone: [] }],
                reason: because(`Activity ${job} comes before ${activity}.`),
                giveUp: 1,
              },
            ]
          : [],
      ),
  })
}

/**
 * A file of the sets with minimum and maximum time lags (ProGen/max, `.sch`): each lag binds two starts; a negative one is a
 * maximum the other way round. The dummies at the ends, 0 and the last, are operations without duration.
 * @throws RcpspFault with the line and column
 * @source R. Kolisch, C. Schwindt, A. Sprecher, Benchmark instances for project scheduling problems, in: Project Scheduling (1999) 197-212
 */
export function readSch(file: string, text: string): PlanningProblem {
  const words = new Words(file, text)
  const size = words.number(1, 0, 'the number of activities', 1)
  const resources = words.number(1, 1, 'the number of resources')
  const activities: Activity[] = []
  const lags: Lag[] = []
  for (let at = 0; at <= size + 1; at++) {
    const line = size + 4 + at
    if (words.number(line, 0, 'the activity') !== at) throw words.fault(line, `this is not activity ${at}.`)
    const wants = Array.from({ length: resources }, (_, place) => words.number(line, 3 + place, 'a demand'))
    activities.push({ duration: words.number(line, 2, 'the duration'), wants })
  }
  for (let at = 0; at <= size + 1; at++) {
    const line = at + 2
    if (words.number(line, 0, 'the activity') !== at) throw words.fault(line, `this is not activity ${at}.`)
    const count = words.number(line, 2, 'the number of successors')
    for (let place = 0; place < count; place++) {
      const next = words.number(line, 3 + place, 'a successor', 1)
      const least = words.number(line, 3 + count + place, 'a lag', -1_000_000)
      if (next > size + 1) {
        const { column } = words.line(line)[3 + place]!
        throw words.fault(line, `the successor is ${next}; the last is ${size + 1}.`, column)
      }
      const [from, to] = least >= 0 ? [at, next] : [next, at]
      lags.push({
        id: `${at} to ${next}, ${place + 1}`,
        from: { op: `${from}`, edge: 'start' },
        to: { op: `${to}`, edge: 'start' },
        ...(least >= 0 ? { min_s: least } : { max_s: -least }),
        reason: because(`${to} starts ${least >= 0 ? 'at least' : 'at most'} ${Math.abs(least)} after ${from}.`),
        giveUp: 1,
      })
    }
  }
  const capacities = Array.from({ length: resources }, (_, at) => words.number(2 * size + 6, at, 'a capacity', 1))
  return problemOf(activities, capacities, { first: 0, needsOf: () => [], lags })
}
