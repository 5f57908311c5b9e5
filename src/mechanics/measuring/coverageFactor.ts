import { requireWithin } from '../limits.ts'
import { studentQuantile } from './distributions.ts'

/**
 * Factor from a standard uncertainty to one that covers the wanted share of what the size may be. Few readings make it
 * large: two readings alone, 12.7 at 95 %. Degrees of freedom that are no whole number are cut down to one.
 *
 * @param degreesOfFreedom symbol ν, 1 and above; Infinity where the spread is known well
 * @param confidence symbol p, 0.5 to 0.9999; left out 0.95
 * @returns symbol k_p = t_p(ν), two-sided
 * @throws VALUE_OUTSIDE
 * @source JCGM 100:2008 (GUM), G.3 and table G.2; G.4.1 for the cutting down
 * @example coverageFactor({ degreesOfFreedom: 16.7, confidence: 0.99 })   // 2.921
 */
export function coverageFactor({
  degreesOfFreedom,
  confidence = 0.95,
}: {
  readonly degreesOfFreedom: number
  readonly confidence?: number
}): number {
  requireWithin('the confidence', confidence, { low: 0.5, high: 0.9999, unit: '' })
  // A sum that rounds to 7.9999999999 is eight degrees of freedom.
  const whole = Math.floor(degreesOfFreedom + 1e-9)
  return studentQuantile({ share: (1 + confidence) / 2, degreesOfFreedom: whole })
}
