// Numbers as people write them: 2050, 2,050, 63,5, .0015, 1.5e-3, 3/8, 2-1/2, 2 1/2, 2½, ¹⁵⁄₁₆.
import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import { add, powerOfTen, type Ratio, ratio, ZERO } from './ratio.ts'

/** A number read from a text, unsigned. */
export interface WrittenNumber {
  readonly value: Ratio
  /** The size of its last written digit; zero for a fraction, which is exact. */
  readonly step: Ratio
  readonly kind: 'whole' | 'decimal' | 'fraction' | 'mixed'
  /** Set where a comma may be a thousands or a decimal comma (`2,050`): `value` takes it for thousands. */
  readonly commaUnclear: boolean
  readonly text: string
  /** Where the text goes on. */
  readonly end: number
}

const MIXED = /(\d+)(?:-| +)(\d+)\/(\d+)(?![\d/.,])/y
const FRACTION = /(\d+)\/(\d+)(?![\d/.,])/y
const SIGN_FRACTION = /(\d*)[- ]?(?:([¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])|([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[⁄/]([₀₁₂₃₄₅₆₇₈₉]+))/y
const DECIMAL = /(\d[\d,\u2009\u202f\u00a0]*(?<!\u00a0|\u2009|\u202f))?(?:\.(?!\.)(\d*))?(?:[eE]([+-]?\d+))?/y
const THIN_SPACES = /[\u2009\u202f\u00a0]/
const SIGNS = '¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'
const SIGN_VALUES = [
  ...['1/4', '1/2', '3/4', '1/7', '1/9', '1/10', '1/3', '2/3', '1/5', '2/5', '3/5', '4/5', '1/6', '5/6'],
  ...['1/8', '3/8', '5/8', '7/8'],
]
const BIGGEST_EXPONENT = 30

/** The number that starts at `at`, or nothing when none does. Throws where one starts that cannot be right. */
export function readNumber(text: string, at: number): WrittenNumber | undefined {
  const mixed = match(MIXED, text, at)
  if (mixed) {
    return fraction({ whole: mixed[1]!, above: mixed[2]!, below: mixed[3]!, text: mixed[0], at })
  }
  const signs = match(SIGN_FRACTION, text, at)
  if (signs) {
    const [above, below] = signs[2]
      ? SIGN_VALUES[SIGNS.indexOf(signs[2])]!.split('/')
      : [plainDigits(signs[3]!), plainDigits(signs[4]!)]
    return fraction({ whole: signs[1]!, above: above!, below: below!, text: signs[0], at })
  }
  const simple = match(FRACTION, text, at)
  if (simple) return fraction({ whole: '', above: simple[1]!, below: simple[2]!, text: simple[0], at })
  const decimal = match(DECIMAL, text, at)
  if (!decimal || (decimal[1] === undefined && !decimal[2])) return undefined
  return decimalNumber({ whole: decimal[1] ?? '', part: decimal[2], power: decimal[3], text: decimal[0], at })
}

function fraction(of: { whole: string; above: string; below: string; text: string; at: number }): WrittenNumber {
  const below = BigInt(of.below)
  const above = BigInt(of.above)
  if (below === 0n || (of.whole !== '' && above >= below)) {
    throw new Problem('QUANTITY_FRACTION', { fraction: clip(of.text), column: of.at + 1 })
  }
  return {
    value: add(ratio(above, below), ratio(BigInt(of.whole || 0))),
    step: ZERO,
    kind: of.whole === '' ? 'fraction' : 'mixed',
    commaUnclear: false,
    text: of.text,
    end: of.at + of.text.length,
  }
}

function decimalNumber(of: {
  whole: string
  part: string | undefined
  power: string | undefined
  text: string
  at: number
}): WrittenNumber {
  const column = of.at + 1
  const power = Number(of.power ?? 0)
  if (Math.abs(power) > BIGGEST_EXPONENT) {
    throw new Problem('QUANTITY_EXPONENT', { number: clip(of.text), limit: BIGGEST_EXPONENT, column })
  }
  const groups = of.whole.split(/[,\u2009\u202f\u00a0]/)
  const commas = of.whole.includes(',')
  const grouped = /^[1-9]\d{0,2}$/.test(groups[0]!) && groups.slice(1).every((group) => group.length === 3)
  const decimalComma =
    commas && groups.length === 2 && of.part === undefined && !grouped && groups[0] !== '' && groups[1] !== ''
  if (groups.length > 1 && !grouped && !decimalComma) {
    throw new Problem('QUANTITY_COMMA', { number: clip(of.text), ...commaReadings(groups), column })
  }
  if (commas && THIN_SPACES.test(of.whole)) {
    throw new Problem('QUANTITY_COMMA', { number: clip(of.text), ...commaReadings(groups), column })
  }
  const whole = decimalComma ? groups[0]! : groups.join('')
  const part = decimalComma ? groups[1]! : (of.part ?? '')
  const step = powerOfTen(power - part.length)
  const digits = BigInt(whole + part)
  return {
    value: ratio(digits * step.n, step.d),
    step,
    kind: part === '' && of.power === undefined ? 'whole' : 'decimal',
    commaUnclear: commas && grouped && groups.length === 2 && of.part === undefined,
    text: of.text,
    end: of.at + of.text.length,
  }
}

/** The two ways out of a comma that can be read twice: `{thousands: '2050', decimal: '2.050'}`. */
export function commaReadings(groups: readonly string[]): { thousands: string; decimal: string } {
  return { thousands: clip(groups.join('')), decimal: clip(`${groups.slice(0, -1).join('')}.${groups.at(-1)}`) }
}

function plainDigits(text: string): string {
  return [...text].map((sign) => '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(sign) + '₀₁₂₃₄₅₆₇₈₉'.indexOf(sign) + 1).join('')
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  pattern.lastIndex = at
  const found = pattern.exec(text)
  return found && found[0] !== '' ? found : undefined
}
