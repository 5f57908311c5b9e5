// Parts become operations: the whole unit, for one variant, as a planning problem.
import type { Lag, Loop, Mode, Need, Operation, PlanningProblem, Standing } from '../../planning/model/problem.ts'
import type { Contribution, LoopDraft, StepDraft } from '../connections/kind.ts'
import { weaker } from '../lines/answer.ts'
import type { AddedStep, Part, Unit } from '../model/unit.ts'
import { heldFast } from './attitudes.ts'
import type { Doubt } from './blocks.ts'
import { checkStep, fillStep, homeSteps, plainMode } from './checks.ts'
import { columnNeeds } from './columns.ts'
import { durationOf, partDuration } from './durations.ts'
import { type Frame, frameOf } from './frame.ts'
import { mostHands, withHands } from './hands.ts'
import { type Openings, openingsOf } from './openings.ts'
import { after, reason, restingOn } from './reasons.ts'
import { type Way, waysOf } from './ways.ts'

export interface Derivation {
  readonly problem: PlanningProblem
  readonly ways: readonly Way[]
  /** What sizes do not settle: questions, never needs. */
  readonly doubts: readonly Doubt[]
  /** Parts that no way brings home, with what bars each way. */
  readonly noWayIn: readonly { readonly part: string; readonly bars: readonly string[] }[]
  readonly needs: { readonly all: number; readonly byHand: number }
  readonly holds: readonly Hold[]
  readonly frame: Frame
}

/** From one step to another something is held: by a hand, a wire, a strap, the floor. */
export interface Hold {
  readonly part: string
  readonly from: string
  readonly to: string
  readonly by: string
}

const FOLLOW_MINUTES = 3

/** @param people that there are; missing: nobody said, and as many as any step wants are taken to be there */
export function derive(unit: Unit, joints: Contribution, people?: number): Derivation {
  const frame = frameOf(unit, joints)
  const openings = openingsOf(frame)
  const ways = frame.movers.flatMap((part) => waysOf(part, frame, openings))
  const noWayIn = frame.movers.flatMap((part) => {
    const mine = ways.filter((way) => way.part === part.id)
    return mine.some((way) => way.mode)
      ? []
      : [{ part: part.id, bars: mine.flatMap((way) => way.dead.map((bar) => `${way.id}: ${bar}`)) }]
  })

  const columns = new Map(frame.movers.map((part) => [part.id, columnNeeds(part, frame)]))

  const steps: Operation[] = [
    ...frame.movers.map((part) => {
      const alone = partStep(part, ways, frame, openings)
      const step = { ...alone, needs: [...(columns.get(part.id)?.needs ?? []), ...alone.needs] }
      const barred = noWayIn.find((each) => each.part === part.id)
      return barred ? neverStep(step, barred.bars, frame) : step
    }),
    ...frame.movers.flatMap((part) => part.follows.map((follow) => followStep(part, follow, frame, openings))),
    ...joints.steps.map((draft) => draftStep(draft, ways, frame, openings)),
    ...[...unit.checks.values()].map((check) => checkStep(check, ways, frame, openings)),
    ...[...unit.fills.values()].map((fill) => fillStep(fill, frame, openings)),
    ...[...unit.addedSteps.values()].map((added) => addedStep(added, frame, openings)),
  ].filter((step) => !unit.dropped.has(step.id))
  const known = new Set(steps.map((step) => step.id))

  const extra = new Map<string, Need[]>()
  const add = (step: string, need: Need) => extra.set(step, [...(extra.get(step) ?? []), need])
  for (const { first, then, says, standing, source } of joints.orders) {
    const why = reason({ code: 'CONNECTION', says, origin: 'connection', standing, source })
    for (const step of homeSteps(then, frame, openings).slice(0, 1))
      add(step, after(`${step}: after ${first}`, [first], why))
  }
  for (const order of unit.addedOrders) {
    const says = `${order.first} before ${order.then}${order.why ? `: ${order.why}` : ', as told'}.`
    const why = reason({ code: 'TOLD', says, origin: 'author', standing: order.standing })
    add(order.then, after(`${order.then}: after ${order.first}`, homeSteps(order.first, frame, openings), why))
  }
  for (const added of unit.addedSteps.values()) {
    for (const later of added.before) {
      const says = `${added.id} before ${later}${added.why ? `: ${added.why}` : ', as told'}.`
      add(
        later,
        after(
          `${later}: after ${added.id}`,
          [added.id],
          reason({ code: 'TOLD', says, origin: 'author', standing: added.standing }),
        ),
      )
    }
  }
  const homeBringers = frame.movers.flatMap((part) => {
    const { homeWith, heldBy, resting } = frame.parking(part.id) ?? {}
    return homeWith ? [{ part: part.id, homeWith, by: heldBy ?? resting ?? 'not told' }] : []
  })
  for (const { part, homeWith } of homeBringers) {
    const says = `${homeWith} brings ${part} home: it has to be parked first.`
    add(
      homeWith,
      after(
        `${homeWith}: after ${part}`,
        [part],
        reason({ code: 'PARKED', says, origin: 'geometry', standing: 'told', facts: { part } }),
      ),
    )
  }
  for (const part of frame.movers) {
    for (const need of meetingNeeds(part, frame, openings)) add(need.step, need.need)
  }

  const operations = heldFast(steps, frame)
    .map((step) => ({ ...step, needs: [...step.needs, ...(extra.get(step.id) ?? [])] }))
    .map((step) => tidy(step, known))
    .map((step) => withHands(step, unit))

  const loops = joints.loops.filter(({ first, last }) => known.has(first) && known.has(last))
  const problem: PlanningProblem = {
    schema: 'matchmark-planning/1',
    operations,
    lags: lagsOf(unit, joints).filter((lag) => known.has(lag.from.op) && known.has(lag.to.op)),
    changes: {
      turn: { [unit.housing]: { s: unit.turning?.takes ?? 180, hazard: unit.turning?.hazard ?? 0 } },
      station_s: 60,
      workpiece_s: 30,
      tools_s: 20,
    },
    start: { attitudes: {} },
    people: people ?? mostHands(unit),
    ...(loops.length > 0 && { loops: loops.map(loopOf) }),
  }
  const needs = operations.flatMap((operation) => [
    ...operation.needs,
    ...operation.modes.flatMap((mode) => mode.needs),
  ])
  return {
    problem,
    ways,
    doubts: [
      ...ways.filter((way) => way.mode).flatMap((way) => way.doubts),
      ...[...columns.values()].flatMap(({ doubts }) => doubts),
    ],
    noWayIn,
    needs: { all: needs.length, byHand: needs.filter((need) => need.reason.origin === 'author').length },
    holds: homeBringers.map(({ part, homeWith, by }) => ({ part, from: part, to: homeWith, by })),
    frame,
  }
}

/** A part that no way brings home keeps its step, which can never be done: then there is no sequence, and this is why. */
function neverStep(step: Operation, bars: readonly string[], frame: Frame): Operation {
  const says = `No way brings ${step.id} home. ${bars.join('; ')}.`
  const why = reason({ code: 'NO_WAY_IN', says, origin: 'geometry', standing: 'told', facts: { part: step.id } })
  return {
    ...step,
    modes: [plainMode({ frame, id: step.id, tools: [] })],
    needs: [{ id: `${step.id}: no way in`, anyOf: [], reason: why, giveUp: 'never' }],
  }
}

/** Needs that every way asks move up to the step; relations to steps that are not there fall away; ids become unique. */
function tidy(step: Operation, known: ReadonlySet<string>): Operation {
  const key = (need: Need) => JSON.stringify(need.anyOf)
  const cut = (needs: readonly Need[]): readonly Need[] =>
    needs.flatMap((need) => {
      // What is no step of this unit is taken as done with: it neither holds anything up nor stands in the way.
      const others = (ids: readonly string[]) => ids.filter((id) => known.has(id) && id !== step.id)
      const anyOf = need.anyOf.map((each) => ({ done: others(each.done), notDone: others(each.notDone) }))
      const holds = anyOf.some((each) => each.done.length === 0 && each.notDone.length === 0)
      return holds ? [] : [{ ...need, anyOf }]
    })
  // Of needs that ask the same the best known stays.
  const once = (needs: readonly Need[]) => {
    const best = new Map<string, Need>()
    for (const need of needs) {
      const other = best.get(key(need))
      if (!other || weaker(other.reason.standing, need.reason.standing) !== need.reason.standing)
        best.set(key(need), need)
    }
    return [...best.values()]
  }
  const modes = step.modes.map((mode) => ({ ...mode, needs: once(cut(mode.needs)) }))
  const common = (modes[0]?.needs ?? []).flatMap((need) => {
    const same = modes.map((mode) => mode.needs.find((other) => key(other) === key(need)))
    const standings = same.map((other) => other?.reason.standing)
    return standings.includes(undefined) ? [] : [restingOn(need, (standings as Standing[]).reduce(weaker))]
  })
  const commonKeys = new Set(common.map(key))
  const needs = once([...cut(step.needs), ...common])
  const taken = new Map<string, number>()
  const unique = (need: Need): Need => {
    const count = (taken.get(need.id) ?? 0) + 1
    taken.set(need.id, count)
    return count === 1 ? need : { ...need, id: `${need.id} (${count})` }
  }
  return {
    ...step,
    needs: needs.map(unique),
    modes: modes.map((mode) => ({
      ...mode,
      needs: mode.needs.filter((need) => !commonKeys.has(key(need))).map(unique),
    })),
  }
}

function partStep(part: Part, ways: readonly Way[], frame: Frame, openings: Openings): Operation {
  const needs: Need[] = [
    ...part.reach.flatMap((opening) => openings.open({ opening, step: part.id, whatFor: part.id })),
    ...part.engages.map((other) =>
      after(
        `${part.id}: engages ${other}`,
        homeSteps(other, frame, openings),
        reason({
          code: 'ENGAGES',
          says: `${part.id} engages ${other} blind: that has to be home first.`,
          origin: 'connection',
          standing: 'told',
          facts: { other },
        }),
      ),
    ),
  ]
  const noReturn = frame.joints.noReturns
    .filter((each) => each.part === part.id)
    .map((each) => each.says)
    .join(' ')
  return {
    id: part.id,
    does: verb(part, frame),
    duration_s: partDuration(part),
    modes: ways.flatMap((way) => (way.part === part.id && way.mode ? [way.mode] : [])),
    needs,
    ...(noReturn ? { noReturn } : {}),
    ...undoneAgain(part, frame),
  }
}

/** Taken off again, what is always renewed has to be new. */
function undoneAgain(part: Part, { unit, together, joints }: Frame): Pick<Operation, 'undo'> {
  const along = together(part.id).map(({ id }) => id)
  const renews = along.filter(
    (id) => unit.parts.get(id)?.life === 'renew' || joints.renewals.some((renewal) => renewal.part === id),
  )
  return renews.length ? { undo: { duration_s: partDuration(part), needs: [], renews, voids: [] } } : {}
}

function verb(part: Part, frame: Frame): string {
  const parked = frame.parking(part.id)
  if (parked?.homeWith) {
    const held = parked.heldBy ? `, held by ${parked.heldBy}` : parked.resting ? `, resting ${parked.resting}` : ''
    return `Park ${part.id}${parked.through ? ` through the ${parked.through}` : ''}${held}`
  }
  const carrier = part.onto ?? frame.unit.housing
  const brought = frame.movers.filter((other) => frame.parking(other.id)?.homeWith === part.id).map((other) => other.id)
  return `${part.id} onto ${carrier}${brought.length ? `, bringing ${brought.join(' and ')} home` : ''}`
}

function followStep(part: Part, follow: Part['follows'][number], frame: Frame, openings: Openings): Operation {
  const says = `${follow.id} follows ${part.id}.`
  const mode = plainMode({ frame, id: frame.unit.lies.has(follow.id) ? follow.id : part.id, tools: follow.tools })
  return {
    id: follow.id,
    does: follow.does,
    duration_s: durationOf(follow.takes, FOLLOW_MINUTES),
    modes: [mode],
    needs: [
      after(
        `${follow.id}: after ${part.id}`,
        [part.id],
        reason({ code: 'FOLLOWS', says, origin: 'process', standing: 'told' }),
      ),
      ...follow.reach.flatMap((opening) => openings.open({ opening, step: follow.id, whatFor: follow.id })),
    ],
    ...(follow.noReturn ? { noReturn: follow.noReturn } : {}),
  }
}

function draftStep(draft: StepDraft, ways: readonly Way[], frame: Frame, openings: Openings): Operation {
  const { unit } = frame
  const inHousing = ways.some((way) => way.part === draft.as && way.mode?.setup.workpiece === unit.housing)
  const mode = plainMode({
    frame,
    id: unit.lies.has(draft.id) ? draft.id : draft.as,
    tools: draft.tools,
    workpiece: inHousing ? undefined : frame.benchBody(frame.chain(draft.as)[1] ?? draft.as),
  })
  const reach = draft.apart ? draft.reach : [...new Set([...draft.reach, ...doorsOf(draft.as, ways, frame)])]
  const setup: Mode['setup'] = draft.apart
    ? { workpiece: 'any', attitude: 'any', station: draft.station ?? 'any', tools: 'any' }
    : { ...mode.setup, station: draft.station ?? mode.setup.station }
  return {
    id: draft.id,
    does: draft.does,
    duration_s: durationOf(draft.takes, FOLLOW_MINUTES),
    modes: [{ ...mode, setup }],
    needs: reach.flatMap((opening) => openings.open({ opening, step: draft.id, whatFor: draft.id })),
    ...(draft.noReturn ? { noReturn: draft.noReturn } : {}),
  }
}

/** The openings that every way of a part comes through, but for those that it closes: work on it reaches in there too. */
function doorsOf(id: string, ways: readonly Way[], frame: Frame): readonly string[] {
  const { openings, parts } = frame.unit
  const part = parts.get(id)
  const live = ways.filter((way) => way.part === id && way.mode && way.place === 'in the housing')
  if (!part || live.length === 0) return []
  return [...openings.values()]
    .filter((opening) => {
      const crosses = (way: Way) => opening.end === way.from && opening.lines.some((line) => part.rings.has(line))
      return live.every((way) => way.through === opening.id || (way.from !== undefined && crosses(way)))
    })
    .map((opening) => opening.id)
    .filter((opening) => !part.closes.includes(opening))
}

function addedStep(added: AddedStep, frame: Frame, openings: Openings): Operation {
  const why = reason({
    code: 'TOLD',
    says: `${added.id} after ${added.after.join(', ')}${added.why ? `: ${added.why}` : ', as told'}.`,
    origin: 'author',
    standing: added.standing,
  })
  const wanted = added.after.flatMap((step) => homeSteps(step, frame, openings))
  return {
    id: added.id,
    does: added.does,
    duration_s: durationOf(added.takes, FOLLOW_MINUTES),
    modes: [plainMode({ frame, id: added.id, tools: added.tools })],
    needs: [
      ...(wanted.length ? [after(`${added.id}: after ${added.after.join(', ')}`, wanted, why)] : []),
      ...added.reach.flatMap((opening) => openings.open({ opening, step: added.id, whatFor: added.id })),
    ],
  }
}

/** Whichever of two parts comes second, somebody watches them come together. */
function meetingNeeds(part: Part, frame: Frame, openings: Openings): readonly { step: string; need: Need }[] {
  return part.watched.flatMap(({ meets, through }) => {
    const heads = [frame.chain(part.id).at(-1) ?? part.id, frame.chain(meets).at(-1) ?? meets] as const
    return heads.flatMap((step, index) => {
      const other = heads[1 - index] as string
      return openings
        .open({ opening: through, step, whatFor: `Watching ${part.id} and ${meets} come together` })
        .map((need) => ({
          step,
          need: { ...need, id: `${step}: watched, ${need.id}`, anyOf: [{ done: [], notDone: [other] }, ...need.anyOf] },
        }))
    })
  })
}

const loopOf = ({ id, first, last, tries, says, standing, source }: LoopDraft): Loop => ({
  id,
  first,
  last,
  tries,
  reason: reason({ code: 'TRIES', says, origin: 'connection', standing, source }),
})

function lagsOf(unit: Unit, joints: Contribution): readonly Lag[] {
  const whole = (seconds: number | undefined) => (seconds === undefined ? undefined : Math.round(seconds))
  const told = unit.clocks.map(({ least, most, why, ...clock }) => ({
    ...clock,
    least_s: whole(least),
    most_s: whole(most),
    says: why ?? clock.id,
    origin: 'author' as const,
  }))
  const brought = joints.clocks.map((clock) => ({ ...clock, origin: 'connection' as const }))
  const edge = (each: { step: string; edge: 'start' | 'end' }) => ({ op: each.step, edge: each.edge })
  return [...told, ...brought].map(
    ({ id, from, to, least_s, most_s, says, origin, standing, source }): Lag => ({
      id,
      from: edge(from),
      to: edge(to),
      ...(least_s === undefined ? {} : { min_s: least_s }),
      ...(most_s === undefined ? {} : { max_s: most_s }),
      reason: reason({ code: 'CLOCK', says, origin, standing, source }),
      giveUp: 'never',
    }),
  )
}
