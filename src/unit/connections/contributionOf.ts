// What all the connections of a unit add to its sequence, together.

import type { Unit } from '../model/unit.ts'
import type { Connections } from './connectionsOf.ts'
import type { Contribution } from './kind.ts'
import { KINDS } from './kinds.ts'
import { NOTHING } from './nothing.ts'

/**
 * Adds up what each connection brings.
 *
 * @example contributionOf(connectionsOf(unit), unit).steps.map((step) => step.id)   // ['warm bearing', 'feel bearing seated']
 */
export function contributionOf({ connections, overlaps }: Connections, unit: Unit): Contribution {
  const order = [...KINDS.keys()]
  const inOrderOfWork = connections.toSorted((a, b) => order.indexOf(a.kind.name) - order.indexOf(b.kind.name))
  const brought = inOrderOfWork.map(({ connection, kind, given }) => kind.steps(connection, given, unit))
  const all = [NOTHING, ...brought]
  return {
    steps: all.flatMap((each) => each.steps),
    orders: all.flatMap((each) => each.orders),
    clocks: all.flatMap((each) => each.clocks),
    loops: all.flatMap((each) => each.loops),
    within: all.flatMap((each) => each.within),
    fast: all.flatMap((each) => each.fast),
    closing: all.flatMap((each) => each.closing),
    carried: all.flatMap((each) => each.carried),
    mayOverlap: [...all.flatMap((each) => each.mayOverlap), ...overlaps],
    stations: all.flatMap((each) => each.stations),
    noReturns: all.flatMap((each) => each.noReturns),
    renewals: connections.flatMap(({ connection, kind, given }) => kind.renewals(connection, given, unit)),
  }
}
