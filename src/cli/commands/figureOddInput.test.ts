// Whatever number stands for an input of a figure: it is answered, asked about or refused in words, never with an infinite or missing
// number, never with a fault of the program.
import { expect, test } from 'vitest'
import { wordsOf } from '../../../docs/shownCommands.ts'
import { FIGURES } from '../../figures/list.ts'
import { say } from '../testing/desk.ts'

const NEVER = /\bNaN\b|Infinity|∞|\bundefined\b|\[object|TypeError|low end first|\b[a-z]{3,}[A-Z][a-z]+/

/** A number and what follows it, such as a unit; of a range its low end. */
const FIGURE = /^(-?[\d./]+)(?:\.\.-?[\d./]+)?(.*)$/

/** What may stand in the place of a value that was meant well. */
function oddly(value: string): readonly string[] {
  if (/[,;]/.test(value)) return [value.split(';')[0]!, value.replace(/\d+(\.\d+)?/, '0'), value.replace(/(\d)/, '-$1')]
  const [, number, unit = ''] = FIGURE.exec(value) ?? []
  if (number === undefined) return ['', 'no such thing']
  const three = `${number}..${Number(number) * 3 || 3}`
  return [...['0', '-1', '1e9', '0.0001', '-5..5', three].map((odd) => odd + unit), 'two of them']
}

/** For an input that the example leaves out: numbers in the unit that it is asked in. */
function oddlyWanted(wants: string): readonly string[] {
  const unit = /as -?[\d./]+ ?(\S*)/.exec(wants)?.[1] ?? ''
  return ['0', '1', '-1', '20', '1e6', '0..3'].map((odd) => `${odd} ${unit}`.trim())
}

/** A unit behind its number is the next word: `bore=50 mm`. */
function inputsOf(example: string): [key: string, value: string][] {
  const given: [string, string][] = []
  for (const word of wordsOf(example)) {
    const at = word.indexOf('=')
    if (at < 0) given.at(-1)![1] += ` ${word}`
    else given.push([word.slice(0, at), word.slice(at + 1)])
  }
  return given
}

const keyOf = (input: string): string => input.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

for (const { name, example, inputs } of FIGURES) {
  test(`${name} answers odd inputs in words`, async () => {
    const given = inputsOf(example)
    expect((await say(['figure', name, ...given.map((pair) => pair.join('='))])).code).toBeLessThan(2)
    const left = Object.entries(inputs).filter(([input]) => given.every(([key]) => key !== keyOf(input)))
    const all = [
      ...given.flatMap(([key, value]) => oddly(value).map((odd) => ({ key, odd }))),
      ...left.flatMap(([input, { wants }]) => oddlyWanted(wants).map((odd) => ({ key: keyOf(input), odd }))),
    ]
    const told: string[] = []
    for (const { key, odd } of all) {
      const others = given.filter(([each]) => each !== key).map(([each, good]) => `${each}=${good}`)
      const words = [...others, `${key}=${odd}`]
      const { code, out, err } = await say(['figure', name, ...words])
      const said = out + err
      if (![0, 1, 2].includes(code) || said === '' || NEVER.test(said))
        told.push(`${words.join(' ')} → ${code} ${said.slice(0, 400)}`)
    }
    expect(told).toEqual([])
  })
}
