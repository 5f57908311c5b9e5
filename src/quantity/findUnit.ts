// From what a person wrote to a row of the unit table.
import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import type { Dimension } from './dimension.ts'
import { TWO_MEANINGS, TWO_MEANINGS_SPELT, UNITS, type Unit } from './units.ts'

/** Exactly as written first; text that is all small or all capital letters is then tried without regard to capitals. */
const BY_SPELLING = new Map<string, Unit[]>()
const WITHOUT_CAPITALS = new Map<string, Unit[]>()
for (const unit of UNITS) {
  const keys = [unit.symbol, unit.name, ...unit.spellings].map(spellingKey)
  for (const key of new Set(keys)) put(BY_SPELLING, key, unit)
  for (const key of new Set(keys.map((each) => each.toLowerCase()))) put(WITHOUT_CAPITALS, key, unit)
}

/**
 * The unit that a spelling stands for where a dimension is wanted: `lb` is a mass or a force, `'` is feet or minutes of arc.
 *
 * @param spelling as written: `mm`, `ft-lb`, `lbs.`, `"`
 * @param as the dimension that is wanted
 * @throws UNIT_UNKNOWN, UNIT_TWO_MEANINGS, QUANTITY_WRONG_DIMENSION, QUANTITY_FORCE_FOR_TORQUE
 * @example findUnit('ft-lb', 'torque').symbol   // 'lbf·ft'
 */
export function findUnit(spelling: string, as: Dimension, column = 1): Unit {
  const key = spellingKey(spelling)
  const found = candidates(key)
  const unit = found.find(({ dimension }) => dimension === as)
  if (unit) return unit

  const facts = { unit: clip(spelling), expected: as, units: unitsOf(as), column }
  const twoMeanings = TWO_MEANINGS_SPELT[key.toLowerCase()]
  if (found.length === 0 && twoMeanings) {
    throw new Problem('UNIT_TWO_MEANINGS', { ...facts, meanings: TWO_MEANINGS[twoMeanings]! })
  }
  if (found.length === 0) throw new Problem('UNIT_UNKNOWN', facts)
  if (as === 'torque' && found.some(({ dimension }) => dimension === 'force' || dimension === 'mass')) {
    throw new Problem('QUANTITY_FORCE_FOR_TORQUE', { ...facts, name: found[0]!.name })
  }
  const received = [...new Set(found.map(({ dimension }) => dimension))].join(' or ')
  throw new Problem('QUANTITY_WRONG_DIMENSION', { ...facts, name: found[0]!.name, received })
}

/** The symbols that can be written for a dimension, for a sentence: `m, cm, mm, …`. */
export const unitsOf = (as: Dimension): string =>
  UNITS.filter(({ dimension }) => dimension === as)
    .map(({ symbol }) => symbol)
    .join(', ')

function candidates(key: string): readonly Unit[] {
  const exact = BY_SPELLING.get(key)
  if (exact) return exact
  const small = key.toLowerCase()
  const oneCase = key === small || key === key.toUpperCase()
  return (oneCase && WITHOUT_CAPITALS.get(small)) || []
}

/** One form for `ft-lb`, `ft.lb.`, `ft lb`, `ft * lb`; for `in2` and `in^2`; for straight and curved primes. */
function spellingKey(text: string): string {
  return text
    .trim()
    .replace(/[′’]/g, "'")
    .replace(/[″”]/g, '"')
    .replace(/μ/g, 'µ')
    .replace(/[ .·*-]+/g, '·')
    .replace(/^·|·$/g, '')
    .replace(/\^?2(?!\d)/g, '²')
    .replace(/\^?3(?!\d)/g, '³')
}

function put(map: Map<string, Unit[]>, key: string, unit: Unit): void {
  const rows = map.get(key)
  if (rows) rows.push(unit)
  else map.set(key, [unit])
}
