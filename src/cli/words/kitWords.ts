// The buying list for people: one line for each thing, with why it is wanted.
import type { KitLine } from '../../job/model/kit.ts'
import { type Pen, wrapped } from './pen.ts'

const HEADS: Readonly<Record<KitLine['group'], string>> = {
  rejected: 'Rejected',
  'always renewed': 'Always renewed',
  'completes a set': 'Completes a set',
  'shims wanted': 'Shims wanted',
  consumables: 'Used up',
}

export function kitWords(lines: readonly KitLine[], pen: Pen): string[] {
  if (lines.length === 0) return ['Nothing has to be got, for what is known.']
  return lines.flatMap(({ group, what, pieces, amount, why, number, from, price, lead }, place) => {
    const details = [number, from, price, lead].filter(Boolean).join(' · ')
    const much = amount ?? (pieces === undefined ? '' : `${pieces} ×`)
    return [
      ...(group === lines[place - 1]?.group ? [] : [pen.strong(HEADS[group])]),
      ...wrapped(`${much} ${what}${details ? ` (${details})` : ''}`, { width: pen.width, first: '  ', rest: '    ' }),
      ...wrapped(why.map(({ says }) => says).join(' '), { width: pen.width, first: '      ' }).map(pen.faint),
    ]
  })
}
