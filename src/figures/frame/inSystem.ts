import { Problem } from '../../problem/problem.ts'
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
const IN_A_SENTENCE =
  /(?<![\d.,×])(?:([−-]?\d+(?:\.\d+)?) to )?([−-]?\d+(?:\.\d+)?) (mm|N·m|kN|N|MPa|kPa|kg|kW|l\/min)(?![\p{L}\d·/²³]| \([\d−-])/gu
const TEMPERATURE = /([−-]?\d+(?:\.\d+)?) °C/g

/**
 * A sentence of a calculation in the system of the answer: the calculations write metric ones.
 *
 * @example inSystem('measured 0.58 mm below its 10 mm', 'inch')   // 'measured 22.8 thou below its 0.3937 in'
 */
export function inSystem(sentence: string, system: System): string {
  if (system === 'metric') return sentence
  return sentence.replace(IN_A_SENTENCE, (_written, from: string | undefined, number: string, unit: string) => {
    const print = (each: string) => inches(`${each} ${unit}`, DIMENSIONS[unit]!)
    return from === undefined ? print(number) : `${print(from)} to ${print(number)}`
  })
}

const inches = (written: string, as: Dimension) => printQuantity(readQuantity(written, { as }), as, { system: 'inch' })

/** A refusal of a calculation in the system that was asked in; its facts are metric, temperatures too. */
export function problemInSystem(problem: Problem, system: System): Problem {
  if (system === 'metric') return problem
  const facts = Object.entries(problem.facts).map(([name, fact]) => [
    name,
    typeof fact === 'string'
      ? rounded(inSystem(fact, system).replace(TEMPERATURE, (written) => inches(written, 'temperature')))
      : fact,
  ])
  return new Problem(problem.code, Object.fromEntries(facts), problem.place)
}

/** The metric fact had four digits that count: 88.96 kN was 20000 lbf, not 19999. */
const rounded = (text: string) =>
  text.replace(/(?<![\d.])\d{5,}(?![\d.])/g, (digits) => String(Number(Number(digits).toPrecision(4))))
