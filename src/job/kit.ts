// What to get, after measuring: one buying list.
import type { Standing } from '../planning/model/problem.ts'
import { litre } from '../quantity/constructors.ts'
import { printQuantity, type System } from '../quantity/printQuantity.ts'
import type { Renewal } from '../unit/connections/kind.ts'
import type { Connection, Part, PartId, Unit } from '../unit/model/unit.ts'
import type { Job } from './model/job.ts'
import type { KitGroup, KitLine } from './model/kit.ts'
import { verdictsOf } from './verdicts.ts'

type Why = KitLine['why'][number]

const ORDER: readonly KitGroup[] = ['rejected', 'always renewed', 'completes a set', 'shims wanted', 'consumables']

/**
 * Rejected parts, what is always renewed, what completes a set, shims that are not in stock, consumables. Each part stands once, with all its
 * reasons. A decision to reuse or repair keeps a rejected part off the list, but never one that is always renewed.
 *
 * @param job missing: nothing was measured yet, and the list says what will be wanted anyway
 * @param renewals what the connections renew
 * @example kitOf(unit, job, renewals).map((line) => line.what)   // ['jack bearing A', 'seal B', 'gear oil']
 */
export function kitOf(
  unit: Unit,
  job: Job | undefined,
  renewals: readonly Renewal[],
  system: System = 'metric',
): readonly KitLine[] {
  const wanted = new Map<PartId, { group: KitGroup; why: Why[] }>()
  const want = (part: PartId, group: KitGroup, why: Why) => {
    const line = wanted.get(part)
    if (!line) wanted.set(part, { group, why: [why] })
    else if (!line.why.some(({ says }) => says === why.says)) line.why.push(why)
  }
  const kept = (part: PartId) => ['reuse', 'repair'].includes(job?.asFound.get(part)?.decision ?? '')

  for (const { part, decision, condition } of job?.asFound.values() ?? []) {
    if (decision === 'renew')
      want(part, 'rejected', { says: `Decided: renew${condition ? ` (${condition})` : ''}.`, standing: 'seen' })
  }
  for (const { part, feature, is, because, limitWorn, limitNew } of job ? verdictsOf(unit, job).readings : []) {
    if (is !== 'out' || kept(part)) continue
    const source = (limitWorn ?? limitNew)?.source
    want(part, 'rejected', {
      says: `${feature}: ${because ?? 'out.'}`,
      standing: 'seen',
      ...(source !== undefined && { source }),
    })
  }
  for (const part of unit.parts.values()) {
    if (part.life === 'renew') want(part.id, 'always renewed', { says: 'Always renewed.', standing: 'told' })
  }
  for (const { part, why, standing, source } of renewals) {
    if (unit.parts.has(part) && !kept(part))
      want(part, 'always renewed', { says: why, standing, ...(source !== undefined && { source }) })
  }
  for (const { parts, why } of unit.sets.values()) {
    const bought = parts.filter((part) => wanted.get(part)?.group === 'rejected')
    if (bought.length === 0) continue
    for (const part of parts.filter((each) => !bought.includes(each) && unit.parts.has(each)))
      want(part, 'completes a set', {
        says: `Goes only with ${bought.join(' and ')}${why ? `: ${why}` : ''}.`,
        standing: 'told',
      })
  }
  for (const part of shimParts(unit)) {
    if (job?.shims.some(({ for: use, reads, nominal }) => (use === undefined || use === part) && (reads ?? nominal)))
      continue
    want(part, 'shims wanted', {
      says: 'No shims for it in stock: a set of thicknesses to choose from.',
      standing: 'told',
    })
  }

  const parts = [...wanted].flatMap(([id, { group, why }]) => {
    const part = unit.parts.get(id)
    return part ? [lineOf(part, group, why)] : []
  })
  return [...parts, ...consumables(unit, system)].sort((a, b) => ORDER.indexOf(a.group) - ORDER.indexOf(b.group))
}

const lineOf = (part: Part, group: KitGroup, why: readonly Why[]): KitLine => ({
  group,
  part: part.id,
  what: part.id,
  ...(group === 'shims wanted' ? {} : { pieces: part.pieces }),
  why,
  ...(part.number !== undefined && { number: part.number }),
  ...(part.from !== undefined && { from: part.from }),
  ...(part.price !== undefined && { price: part.price }),
  ...(part.lead !== undefined && { lead: part.lead }),
})

/** Parts that are packs of shims: by their own word, or named as such by a connection. */
function shimParts(unit: Unit): readonly PartId[] {
  const named = [...unit.connections.values()].flatMap(({ kind, given }) =>
    kind === 'bearing shims' ? names(given.shims) : [],
  )
  const own = [...unit.parts.values()].filter(({ kind }) => kind === 'shims').map(({ id }) => id)
  return [...new Set([...own, ...named])].filter((id) => unit.parts.has(id))
}

const names = (value: unknown): readonly string[] =>
  (Array.isArray(value) ? value : [value]).filter((each) => typeof each === 'string')

/** Fills, sealants, and locks that are no part (wire). */
function consumables(unit: Unit, system: System): readonly KitLine[] {
  const told = (says: string, standing: Standing = 'told'): Why => ({ says, standing })
  const fills = [...unit.fills.values()].map(
    (fill): KitLine => ({
      group: 'consumables',
      what: fill.what ?? fill.id,
      ...(fill.litres !== undefined && { amount: printQuantity(litre(fill.litres), 'volume', { system }) }),
      why: [told(`Fill: ${fill.id}.`)],
    }),
  )
  const byName = new Map<string, Why[]>()
  for (const connection of unit.connections.values()) {
    for (const what of consumedBy(connection))
      byName.set(what, [...(byName.get(what) ?? []), told(`For ${connection.id}.`)])
  }
  return [...fills, ...[...byName].map(([what, why]): KitLine => ({ group: 'consumables', what, why }))]
}

function consumedBy({ given }: Connection): readonly string[] {
  const block = (value: unknown): Readonly<Record<string, unknown>> =>
    value !== null && typeof value === 'object' ? (value as Record<string, unknown>) : {}
  const { what } = block(given.sealant)
  const { with: lock, part } = block(given.lock)
  return [
    ...(typeof what === 'string' ? [what] : []),
    ...(typeof lock === 'string' && part === undefined ? [lock] : []),
  ]
}
