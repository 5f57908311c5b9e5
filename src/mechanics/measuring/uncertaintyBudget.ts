import { Problem } from '../../problem/problem.ts'
import { requireWithin } from '../limits.ts'
import { coverageFactor } from './coverageFactor.ts'

/** One thing that makes a result doubtful. */
export interface Doubt {
  readonly name: string
  /** Symbol u, standard uncertainty, in its own unit. */
  readonly uncertainty: number
  /** Symbol c: how far the result moves for one unit of it; left out 1. */
  readonly sensitivity?: number
  /** Symbol ν; left out it is known well. */
  readonly degreesOfFreedom?: number
}

/** Two doubts that go together: the same gauge read twice, parts cut in one set-up. */
export interface Correlation {
  readonly between: readonly [string, string]
  /** Symbol r, from -1 to 1. */
  readonly coefficient: number
}

export interface UncertaintyBudget {
  /** Symbol u_c. */
  readonly combined: number
  readonly parts: readonly {
    readonly name: string
    /** Symbol |c| u, in the unit of the result. */
    readonly part: number
    /** Of the variance; together 1, correlations shared between the two. */
    readonly share: number
  }[]
  /** Symbol ν_eff after Welch and Satterthwaite. */
  readonly degreesOfFreedom: number
  /** Symbol k. */
  readonly coverageFactor: number
  /** Symbol U = k u_c, plus and minus, with the confidence that was asked for. */
  readonly expanded: number
  readonly confidence: number
  readonly cautions: readonly string[]
}

/**
 * What several doubts make together, and how wide plus and minus has to be to cover the result. True while the result
 * moves nearly in a straight line over each doubt; else simulate.
 *
 * @param doubts each with standard uncertainty, sensitivity and degrees of freedom
 * @param correlations pairs that go together; left out none does
 * @param confidence symbol p; left out 0.95
 * @returns combined and expanded uncertainty with every part
 * @throws VALUE_OUTSIDE, NAME_NOT_THERE, CORRELATIONS_IMPOSSIBLE
 * @source JCGM 100:2008 (GUM) 5.1, 5.2, G.4
 * @example uncertaintyBudget({ doubts: [{ name: 'repeating', uncertainty: mm(0.003), degreesOfFreedom: 4 }, { name: 'gauge', uncertainty: mm(0.004) }] }).combined   // 5.000 µm
 */
export function uncertaintyBudget({
  doubts,
  correlations = [],
  confidence = 0.95,
}: {
  readonly doubts: readonly Doubt[]
  readonly correlations?: readonly Correlation[]
  readonly confidence?: number
}): UncertaintyBudget {
  for (const { name, uncertainty, degreesOfFreedom = Number.POSITIVE_INFINITY } of doubts) {
    requireWithin(`the uncertainty of ${name}`, uncertainty, { low: 0, high: Number.MAX_VALUE, unit: '' })
    const whole = { low: 1, high: Number.POSITIVE_INFINITY, unit: '' } as const
    requireWithin(`the degrees of freedom of ${name}`, degreesOfFreedom, whole)
  }
  const signed = doubts.map(({ uncertainty, sensitivity = 1 }) => sensitivity * uncertainty)
  const variances = signed.map((part) => part ** 2)
  for (const { between, coefficient } of correlations) {
    const [a, b] = placesOf(between, doubts)
    requireWithin(`the correlation of ${between.join(' and ')}`, coefficient, { low: -1, high: 1, unit: '' })
    const shared = coefficient * (signed[a] as number) * (signed[b] as number)
    variances[a] = (variances[a] as number) + shared
    variances[b] = (variances[b] as number) + shared
  }
  const sum = variances.reduce((total, variance) => total + variance, 0)
  const scale = signed.reduce((total, part) => total + part ** 2, 0)
  if (sum < -1e-12 * scale) throw new Problem('CORRELATIONS_IMPOSSIBLE')
  const combined = Math.sqrt(Math.max(0, sum))
  const fourths = doubts.reduce(
    (total, { degreesOfFreedom = Number.POSITIVE_INFINITY }, at) =>
      total + (signed[at] as number) ** 4 / degreesOfFreedom,
    0,
  )
  const degreesOfFreedom = fourths > 0 ? Math.max(1, combined ** 4 / fourths) : Number.POSITIVE_INFINITY
  const factor = coverageFactor({ degreesOfFreedom, confidence })
  return {
    combined,
    parts: doubts.map(({ name }, at) => ({
      name,
      part: Math.abs(signed[at] as number),
      share: sum > 0 ? (variances[at] as number) / sum : 0,
    })),
    degreesOfFreedom,
    coverageFactor: factor,
    expanded: factor * combined,
    confidence,
    cautions: cautions({ isCorrelated: correlations.length > 0, degreesOfFreedom }),
  }
}

/** Where the two named doubts stand in the list. */
export function placesOf(
  between: readonly [string, string],
  named: readonly { readonly name: string }[],
): readonly [number, number] {
  const [a, b] = between.map((wanted) => named.findIndex(({ name }) => name === wanted)) as [number, number]
  const missing = a < 0 ? between[0] : between[1]
  if (a < 0 || b < 0 || a === b) {
    throw new Problem('NAME_NOT_THERE', { received: missing, expected: named.map(({ name }) => name).join(', ') })
  }
  return [a, b]
}

function cautions({ isCorrelated, degreesOfFreedom }: { isCorrelated: boolean; degreesOfFreedom: number }): string[] {
  const said: string[] = []
  if (degreesOfFreedom < 5) said.push('It rests on few readings: more readings narrow it most.')
  if (isCorrelated && Number.isFinite(degreesOfFreedom)) {
    said.push('The degrees of freedom are worked as if nothing were correlated (GUM G.4.1 knows no other).')
  }
  return said
}
