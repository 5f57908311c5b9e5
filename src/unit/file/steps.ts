// What a person adds to the steps: steps of his own, orders, what is dropped, how the housing lies, how many hands they want.
import type { AddedOrder, AddedStep, AttitudeId, Hands } from '../model/unit.ts'
import type { Item } from './item.ts'
import { listed, many, type Names, stepName, stepNames } from './names.ts'
import { sentence } from './parts.ts'
import type { WrittenUnit } from './schema.ts'
import { known, minutes } from './values.ts'

export function readAddedSteps(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, AddedStep> {
  const steps = new Map<string, AddedStep>()
  for (const [id, step] of unit.get('steps').entries()) {
    const why = step.get('why').text()
    const takes = known(step.get('takes'), minutes)
    steps.set(id, {
      id,
      at: step.at,
      does: step.get('does').text() || sentence(id),
      after: stepNames(step.get('after'), names),
      before: stepNames(step.get('before'), names),
      ...(why && { why }),
      standing: step.value?.standing ?? 'told',
      ...(takes && { takes }),
      tools: listed(step.get('tools')),
      reach: many(step.get('reach'), names, 'opening'),
      variants: many(step.get('variants'), names, 'variant'),
    })
  }
  return steps
}

export function readAddedOrders(unit: Item<WrittenUnit>, names: Names): readonly AddedOrder[] {
  return unit
    .get('orders')
    .list()
    .flatMap((order) => {
      const first = stepName(order.get('first'), names)
      const then = stepName(order.get('then'), names)
      const why = order.get('why').text()
      const standing = order.value.standing ?? 'told'
      return first && then ? [{ at: order.at, first, then, ...(why && { why }), standing }] : []
    })
}

export function readDropped(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, string> {
  const dropped = new Map<string, string>()
  for (const [step, why] of unit.get('drop').entries()) {
    if (stepName(why, names, step)) dropped.set(step, why.text() ?? '')
  }
  return dropped
}

/** Step → how the housing lies for it. */
export function readLies(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, AttitudeId> {
  const lies = new Map<string, AttitudeId>()
  for (const [attitude, steps] of unit.get('lies').entries()) {
    for (const item of steps.list()) {
      const step = stepName(item, names)
      const before = step && lies.get(step)
      if (before && before !== attitude) item.fault('STEP_LIES_TWICE', { step, one: before, other: attitude })
      else if (step) lies.set(step, attitude)
    }
  }
  return lies
}

/** Step → what it wants of people. */
export function readHands(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, Hands> {
  const hands = new Map<string, Hands>()
  for (const [step, item] of unit.get('hands').entries()) {
    const { value } = item
    const isNumber = typeof value === 'number'
    const people = isNumber ? value : (value?.hands ?? 1)
    const skills = isNumber ? [] : listed((item as Item<Exclude<typeof value, number>>).get('skills'))
    if (stepName(item as Item<null>, names, step)) hands.set(step, { at: item.at, people, skills })
  }
  return hands
}
