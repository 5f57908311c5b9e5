import { type Correlation, type UncertaintyBudget, uncertaintyBudget } from './uncertaintyBudget.ts'

/** A value with its doubt. */
export interface Estimate {
  readonly value: number
  /** Symbol u, standard uncertainty. */
  readonly uncertainty: number
  /** Symbol ν; left out it is known well. */
  readonly degreesOfFreedom?: number
}

export interface Propagated extends UncertaintyBudget {
  readonly value: number
}

/**
 * A result worked from doubtful values, with its own doubt: how far each value carries is found by working the formula one
 * standard uncertainty up and down.
 *
 * @param estimates each value with its uncertainty, by name
 * @param formula symbol f, from the values to the result
 * @param correlations pairs that go together; left out none does
 * @param confidence symbol p; left out 0.95
 * @returns symbol y with u_c, U and every part
 * @throws VALUE_OUTSIDE, NAME_NOT_THERE, CORRELATIONS_IMPOSSIBLE
 * @source JCGM 100:2008 (GUM) 5.1.2, 5.1.3 note 2, 5.2.2
 * @example propagate({ estimates: { turns: { value: 20, uncertainty: 0.1 }, lead: { value: mm(1.5), uncertainty: mm(0.01) } }, formula: ({ turns, lead }) => turns * lead }).combined   // 0.25 mm
 */
export function propagate<Name extends string>({
  estimates,
  formula,
  ...rest
}: {
  readonly estimates: Readonly<Record<Name, Estimate>>
  readonly formula: (values: Readonly<Record<Name, number>>) => number
  readonly correlations?: readonly Correlation[]
  readonly confidence?: number
}): Propagated {
  const entries = Object.entries<Estimate>(estimates)
  const values = Object.fromEntries(entries.map(([name, { value }]) => [name, value])) as Record<Name, number>
  const doubts = entries.map(([name, { value, uncertainty, ...freedom }]) => {
    const at = (size: number) => formula({ ...values, [name]: size })
    return { name, uncertainty, sensitivity: slope(at, value, uncertainty), ...freedom }
  })
  return { value: formula(values), ...uncertaintyBudget({ doubts, ...rest }) }
}

function slope(formula: (value: number) => number, value: number, uncertainty: number): number {
  return uncertainty === 0 ? 0 : (formula(value + uncertainty) - formula(value - uncertainty)) / (2 * uncertainty)
}
