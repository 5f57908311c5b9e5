import type { Dimension } from '../../quantity/dimension.ts'
import { printQuantity, type System } from '../../quantity/printQuantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'

/** Units that sentences of the calculations use → dimension. Temperatures stand there in both systems already. */
const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  mm: 'length',
  N: 'force',
  kN: 'force',
  N·m: 'torque',
  MPa: 'pressure',
  kPa: 'pressure',
  kg: 'mass',
  kW: 'power',
  'l/min': 'flow',
}
const IN_A_SENTENCE = /(?<![\d.,×])([−-]?\d+(?:\.\d+)?) (mm|N·m|kN|N|MPa|kPa|kg|kW|l\/min)(?![\p{L}\d·/²³]| \()/gu

/**
 * A sentence of a calculation in the system of the answer: the calculations write metric ones.
 *
 * @example inSystem('measured 0.58 mm below its 10 mm', 'inch')   // 'measured 22.8 thou below its 0.3937 in'
 */
export function inSystem(sentence: string, system: System): string {
  if (system === 'metric') return sentence
  return sentence.replace(IN_A_SENTENCE, (written, _number, unit: string) => {
    const as = DIMENSIONS[unit]!
    return printQuantity(readQuantity(written, { as }), as, { system })
  })
}
