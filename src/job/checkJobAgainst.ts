// Whether what a job file names is there in its unit.
import { Problem } from '../problem/problem.ts'
import { nearest } from '../unit/file/nearest.ts'
import type { At, Unit } from '../unit/model/unit.ts'
import { variantOf } from '../unit/variants.ts'
import type { Job } from './model/job.ts'

/** A name that a job gives and its unit does not have, at its place in the job file; nothing where it is there. */
function unknownName(
  { unit, job }: { unit: Unit; job: Job },
  {
    key,
    what,
    name,
    known,
    at: { line, column },
  }: { key: string; what: string; name: string; known: Iterable<string>; at: At },
): Problem[] {
  const names = [...known]
  if (names.includes(name)) return []
  const few = names.length > 12 ? `${names.slice(0, 12).join(', ')}, …` : names.join(', ')
  const facts = { key, name, what, of: unit.file, nearest: nearest(name, names) ?? '', known: few }
  return [new Problem('NAME_NOT_KNOWN', facts, { file: job.file, line, column })]
}

/** Steps that a job says stand already and that its unit does not have; a part that goes in with another has no step of its own. */
export const checkDone = (unit: Unit, job: Job, steps: Iterable<string>): readonly Problem[] => {
  const known = [...steps]
  return job.done
    .filter(({ step }) => !unit.parts.has(step))
    .flatMap(({ step, at }) => unknownName({ unit, job }, { key: 'done', what: 'step', name: step, known, at }))
}

/**
 * Every part, feature, variant and shim place that a job names and its unit does not have, each at its place in the job file.
 * The steps under `done` are judged by checkDone, when all steps are known.
 */
export function checkJobAgainst(unit: Unit, job: Job): readonly Problem[] {
  const faults: Problem[] = []
  const lookUp = (key: string, what: string, name: string, known: Iterable<string>, at: At) => {
    faults.push(...unknownName({ unit, job }, { key, what, name, known, at }))
  }
  for (const { part, at } of job.asFound.values()) lookUp('as found', 'part', part, unit.parts.keys(), at)
  for (const { part, feature, at } of job.readings) {
    const measured = unit.parts.get(part)
    if (!measured) lookUp('part', 'part', part, unit.parts.keys(), at)
    else
      lookUp(
        'feature',
        `feature of '${part}'`,
        feature,
        measured.features.map(({ id }) => id),
        at,
      )
  }
  for (const { for: use, at } of job.shims) {
    if (use) lookUp('for', 'part or connection', use, [...unit.parts.keys(), ...unit.connections.keys()], at)
  }
  if (job.variant !== undefined)
    lookUp(
      'variant',
      'variant',
      job.variant,
      unit.variants.map(({ id }) => id),
      job.variantAt,
    )
  else if (job.serial !== undefined && unit.variants.some(({ serials }) => serials) && !variantOf(unit, job.serial)) {
    const { line, column } = job.variantAt
    const ranges = unit.variants
      .map(({ id, serials }) => `${id} ${serials?.low ?? ''}..${serials?.high ?? ''}`)
      .join(', ')
    faults.push(new Problem('SERIAL_NOT_KNOWN', { serial: job.serial, ranges }, { file: job.file, line, column }))
  }
  return faults
}
