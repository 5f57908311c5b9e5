// Every command on one described housing: what it tells people, and that machines get what the schema promises.
import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import type { z } from 'zod'
import { readUnit } from '../../unit/file/readUnit.ts'
import * as answers from '../answers/schema.ts'
import { memoryFiles, type Said, say } from '../testing/desk.ts'

const text = readFileSync(new URL('../../unit/housings/tail-box.unit.yaml', import.meta.url), 'utf8')
const job = 'matchmark: job/1\njob: J7\nunit: box.unit.yaml\nowner: nobody (invented)\n'
const desk = new Map([
  ['box.unit.yaml', text],
  ['J7.job.yaml', job],
  ['two.job.yaml', `${job}plant: {people: [{name: M. Ashdown, skills: [fitter]}, {name: J. Tarn}]}\n`],
])
const files = memoryFiles(desk)
const ask = (...words: string[]) => say(words, { files })
const json = async (...words: string[]) => JSON.parse((await ask(...words, '--json')).out)

let best: string[]
beforeAll(async () => {
  best = (await json('sequence', 'box.unit.yaml')).steps.map(({ id }: { id: string }) => id)
})

const ORDERS = {
  /** As a person would write it: numbered, with remarks, capitals and a sentence instead of a name. */
  good: () => ['# in our way', ...best.map((id, place) => `${place + 1}. ${id.toUpperCase()}`)].join('\n'),
  seal: () => [...best.filter((id) => id !== 'float'), 'float   # after all'].join('\n'),
  short: () => best.slice(2).join('\n'),
  odd: () => [...best.slice(1), 'wheel ky', 'bearing'].join('\n'),
}

test.each<[words: string[], schema: z.ZodType, code: number]>([
  [['check', 'box.unit.yaml'], answers.checkAnswer, 0],
  [['check', 'box.unit.yaml', '--sizes'], answers.checkAnswer, 0],
  [['check', 'bad.yaml'], answers.checkAnswer, 1],
  [['sequence', 'box.unit.yaml'], answers.sequenceAnswer, 0],
  [['sequence', 'J7.job.yaml', '--effort', '50'], answers.sequenceAnswer, 0],
  [['sequence', 'two.job.yaml', '--effort', '20000'], answers.sequenceAnswer, 0],
  [['sequence', 'two.job.yaml', '--judge', 'good'], answers.judgementAnswer, 0],
  [['sequence', 'two.job.yaml', '--near', 'good'], answers.nearAnswer, 0],
  [['why', 'two.job.yaml', 'float', 'seal'], answers.whyAnswer, 0],
  [['reach', 'two.job.yaml', 'wheel ring'], answers.reachAnswer, 0],
  [['book', 'two.job.yaml', '-o', 'books'], answers.bookAnswer, 0],
  [['sequence', 'circle.yaml'], answers.sequenceAnswer, 1],
  [['sequence', 'box.unit.yaml', '--count'], answers.countAnswer, 0],
  [['sequence', 'box.unit.yaml', '--judge', 'good'], answers.judgementAnswer, 0],
  [['sequence', 'box.unit.yaml', '--judge', 'seal'], answers.judgementAnswer, 1],
  [['sequence', 'box.unit.yaml', '--slack'], answers.slackAnswer, 0],
  [['sequence', 'box.unit.yaml', '--costly'], answers.costlyAnswer, 0],
  [['sequence', 'circle.yaml', '--slack'], answers.slackAnswer, 1],
  [['sequence', 'box.unit.yaml', '--holds', '1..20'], answers.holdsAnswer, 0],
  [['sequence', 'circle.yaml', '--holds', '5'], answers.holdsAnswer, 1],
  [['sequence', 'box.unit.yaml', '--near', 'good'], answers.nearAnswer, 0],
  [['sequence', 'J8.job.yaml', '--near', 'good', '--failed', 'wheel', '--late', 'seal=2'], answers.nearAnswer, 0],
  [['sequence', 'circle.yaml', '--near', 'good'], answers.nearAnswer, 1],
  [['reach', 'J8.job.yaml', 'float'], answers.reachAnswer, 0],
  [['sequence', 'circle.yaml', '--costly'], answers.costlyAnswer, 1],
  [['why', 'box.unit.yaml', 'float', 'seal'], answers.whyAnswer, 0],
  [['why', 'box.unit.yaml', 'drain plug', 'lid'], answers.whyAnswer, 0],
  [['settings', 'J7.job.yaml'], answers.settingsAnswer, 0],
  [['kit', 'J7.job.yaml'], answers.kitAnswer, 0],
  [['reach', 'box.unit.yaml', 'wheel ring'], answers.reachAnswer, 0],
  [['book', 'box.unit.yaml', '-o', 'books'], answers.bookAnswer, 0],
  [['sequence', 'bad.yaml'], answers.faultsAnswer, 1],
])('%j answers as its schema says', async (words, schema, code) => {
  desk.set('bad.yaml', text.replace('housing:', 'housng:'))
  desk.set('circle.yaml', `${text}\norders:\n  - {first: float, then: cover A}\n`)
  desk.set('J8.job.yaml', `${job.replace('J7', 'J8')}done: [${best.slice(0, 5).join(', ')}]\n`)
  for (const [name, order] of Object.entries(ORDERS)) desk.set(name, order())
  const said = await ask(...words, '--json')
  expect(said.err).toBe('')
  expect(schema.safeParse(JSON.parse(said.out)).error?.issues ?? []).toEqual([])
  expect(said.code).toBe(code)
})

test('check counts what is there', async () => {
  expect((await json('check', 'box.unit.yaml')).counts).toMatchObject({
    parts: 17,
    pieces: 17,
    lines: 2,
    openings: 7,
    operations: 20,
    needsByHand: 0,
    faults: 0,
  })
})

test('the sequence is the same on every run, apart from the time it took', async () => {
  const [one, other] = await Promise.all([json('sequence', 'box.unit.yaml'), json('sequence', 'box.unit.yaml')])
  const rest = ({ wall_s: _, ...kept }: { wall_s: number }) => kept
  expect(rest(one)).toEqual(rest(other))
  expect(one).toMatchObject({ proven: true, seed: 0, turnovers: 3, minutes: 100.5 })
})

test('the input is known by its content: another size, another number', async () => {
  desk.set('other.yaml', text.replace('takes: ', 'takes: '))
  desk.set('slower.yaml', text.replace('coupling key: { ', 'coupling key: { takes: 9, '))
  const hash = async (file: string) => (await json('sequence', file)).inputHash
  const own = await hash('box.unit.yaml')
  expect(await hash('other.yaml')).toBe(own)
  expect(await hash('slower.yaml')).not.toBe(own)
})

test('the sequence tells people its worth, its proof, and why a step does not stand earlier', async () => {
  const { out } = await ask('sequence', 'box.unit.yaml')
  expect(out).toContain('20 steps, 1 h 40 min 30 s, 4 changes of set-up, of them 3 turn-overs.')
  expect(out).toContain('No sequence is better: proven, for what was told.')
  const lines = out.split('\n')
  const seal = lines.findIndex((line) => line.includes('seal onto cover A'))
  const float = lines
    .find((line) => line.includes('Check: float'))!
    .trim()
    .split(/\s+/)[1]
  expect(lines[seal + 1]!.trim()).toBe(`after ${float}: float is made without seal.`)
})

test('an order written by hand is judged as it stands', async () => {
  const { out, code } = await ask('sequence', 'box.unit.yaml', '--judge', 'good')
  expect(out).toContain('Every need and every clock holds.')
  expect(out).toContain('This order costs nothing more.')
  expect(code).toBe(0)
})

test('an order that fits the seal first is told where it breaks, and what it costs', async () => {
  const { out, code } = await ask('sequence', 'box.unit.yaml', '--judge', 'seal')
  expect(out).toContain('It cannot be done like this: 1 breach.')
  expect(out).toMatch(/\d+: .*“Check: float”.*seal/)
  expect(code).toBe(1)
})

test('an order that leaves steps out, or names none, is told line by line', async () => {
  const short = await ask('sequence', 'box.unit.yaml', '--judge', 'short')
  expect(short.err).toBe(
    `short:18:1: The order leaves out: ${best[0]}, ${best[1]}. An order lists every step once, one on a line.`,
  )
  const odd = await ask('sequence', 'box.unit.yaml', '--judge', 'odd')
  expect(odd.err.split('\n')).toEqual([
    "odd:20:1: 'wheel ky' is no step of this unit. Did you mean 'wheel key'?",
    "odd:21:1: 'bearing' may be more than one step: bearing A, bearing B. Write it out.",
  ])
  expect([short.code, odd.code]).toEqual([1, 1])
})

test('the answer for machines is an order too', async () => {
  desk.set('best.json', (await ask('sequence', 'box.unit.yaml', '--json')).out)
  const { out } = await ask('sequence', 'box.unit.yaml', '--judge', 'best.json')
  expect(out).toContain('This order costs nothing more.')
})

test('why says it from either side', async () => {
  const says = (said: Said) => said.out.split('\n')[1]
  expect(says(await ask('why', 'box.unit.yaml', 'Float', 'seal'))).toBe(
    '“Check: float” always comes before “seal onto cover A”.',
  )
  expect(says(await ask('why', 'box.unit.yaml', 'seal', 'float'))).toBe(
    'The other way round: “Check: float” always comes before “seal onto cover A”.',
  )
  expect(says(await ask('why', 'box.unit.yaml', 'drain-plug', 'lid'))).toBe(
    '“drain plug onto box” and “lid onto box” may be done in either order.',
  )
})

test('a name that is not there gets the nearest one', async () => {
  const { code, err } = await ask('why', 'box.unit.yaml', 'drain plg', 'lid')
  expect(err).toBe("box.unit.yaml has no step or part with a step called 'drain plg'. Did you mean 'drain plug'?")
  expect(code).toBe(2)
})

test('a part without a step of its own stands for the step that it goes in with', async () => {
  desk.set('shim.yaml', text.replace('  lid: {', '  lid gasket: { kind: gasket, goes with: lid }\n  lid: {'))
  expect(await json('why', 'shim.yaml', 'lid gasket', 'backlash')).toMatchObject({
    first: 'lid',
    second: 'backlash',
    order: 'second',
  })
})

test('the book is one page that loads nothing', async () => {
  const { code, out } = await ask('book', 'J7.job.yaml', '-o', 'books')
  expect(out.split('\n')[0]).toBe('books/J7.html')
  expect(code).toBe(0)
  const html = desk.get('books/J7.html')!
  expect(html).toMatch(/^<!doctype html>/)
  expect(html).not.toMatch(/<script|(?:src|href)="(?!#|data:)|url\((?!data:)/)
})

test('start tells all of it and writes the book', async () => {
  const { code, out } = await ask('start', 'J7.job.yaml', '--once', '-o', 'all')
  expect(out.split('\n').filter((line) => /^[A-Z ]+$/.test(line))).toEqual([
    'SEQUENCE',
    'SETTINGS',
    'TO GET',
    'NOT KNOWN',
  ])
  expect(out).toContain('The job book is all/J7.html')
  expect(desk.has('all/J7.html')).toBe(true)
  expect(code).toBe(0)
})

test('lengths in inches or millimetres, as asked', async () => {
  desk.set('fit.yaml', FIT)
  expect((await ask('settings', 'fit.yaml', '--metric')).out).toMatch(/nterference: 0\.04 mm/)
  expect((await ask('settings', 'fit.yaml', '--inch')).out).toMatch(/nterference: 1\.6 thou/)
})

const FIT = `
matchmark: unit/1
unit: one bearing on one shaft
invented: true
housing: block
parts:
  block: {}
  shaft: { material: steel, features: { seat: 50.04 } }
  ring: { onto: shaft, material: steel, features: { bore: 50 } }
connections:
  seat: { kind: press fit, shaft: shaft.seat, bore: ring.bore, length: 40, hub outside: 80 }
`

const faulty = `${job}readings:\n  - { part: wheel ring, feature: no such thing, reads: 1 }\n`

test.each([['settings'], ['kit'], ['reach', 'float'], ['why', 'float', 'wheel ring'], ['sequence', '--count']])(
  'a job with a fault: %s tells the fault and ends with 1',
  async (verb, ...more) => {
    const told = memoryFiles(new Map([...desk, ['bad.job.yaml', faulty]]))
    const { code, err } = await say([verb, 'bad.job.yaml', ...more], { files: told })
    expect(err).toContain('no such thing')
    expect(code).toBe(1)
  },
)

test('a sequence beside faults is claimed for the rest only', async () => {
  const told = memoryFiles(new Map([...desk, ['bad.job.yaml', faulty]]))
  const { out } = await say(['sequence', 'bad.job.yaml'], { files: told })
  expect(out).toContain('proven, for the rest; 1 fault stands below.')
})

test('slack is for one person: with two at the bench it is refused and says what to ask instead', async () => {
  const { code, err } = await ask('sequence', 'two.job.yaml', '--slack')
  expect(code).toBe(1)
  expect(err).toContain('cannot be told where several people work together')
})

test('a step against itself, the housing, and a certificate without its key are wrong use', async () => {
  const { housing } = readUnit(text, 'box.unit.yaml').unit!
  expect(await ask('why', 'box.unit.yaml', 'float', 'FLOAT')).toMatchObject({
    code: 2,
    err: expect.stringContaining('these are the same step'),
  })
  expect(await ask('reach', 'box.unit.yaml', housing)).toMatchObject({
    code: 2,
    err: expect.stringContaining(`${housing} is the housing`),
  })
  expect(await ask('serve', 'no-such-folder', '--share', '--certificate', 'shop.pem')).toMatchObject({
    code: 2,
    err: expect.stringContaining('--certificate was given without --key'),
  })
})

test('the way back is told by what each step is, and other units than the file has are told of', async () => {
  const { out } = await ask('reach', 'box.unit.yaml', 'wheel ring')
  expect(out).toMatch(/^ +\d+ (take off |undo: )/m)
  expect((await ask('sequence', 'box.unit.yaml', '--inch')).out).toContain('Sizes in the reasons are in mm')
  expect((await ask('sequence', 'box.unit.yaml')).out).not.toContain('Sizes in the reasons')
})

test('what stands and what is late: the order told is kept where it can be, and it is said what moves', async () => {
  desk.set('J8.job.yaml', `${job.replace('J7', 'J8')}done: [${best.slice(0, 5).join(', ')}]\n`)
  desk.set('good', ORDERS.good())
  const kept = await ask('sequence', 'J8.job.yaml', '--near', 'good')
  expect(kept).toMatchObject({ code: 0, err: '' })
  expect(kept.out).toContain('Nothing moves: the order told is kept.')
  const { moved, steps, waitsFor } = await json('sequence', 'J8.job.yaml', '--near', 'good', '--late', best[5]!)
  expect(waitsFor).toEqual([best[5]])
  expect(moved.length).toBeGreaterThan(0)
  expect(steps[0].id).not.toBe(best[5])
  const wrong = await ask('sequence', 'J8.job.yaml', '--near', 'good', '--late', `${best[5]}=soon`)
  expect(wrong.code).toBe(2)
  expect(wrong.err).toContain('expected the hours from now as a number from 0 to 2000')
  const undone = await ask('sequence', 'J8.job.yaml', '--near', 'good', '--failed', best.at(-1)!)
  expect([undone.code, undone.err]).toEqual([
    1,
    `The operation '${best.at(-1)}' cannot be undone: it is not done. Name an operation that is done, or tell what is done.`,
  ])
})

test('a step that is not done yet is reached by going on', async () => {
  desk.set('J8.job.yaml', `${job.replace('J7', 'J8')}done: [${best.slice(0, 5).join(', ')}]\n`)
  const { way, ahead } = await json('reach', 'J8.job.yaml', 'float')
  expect([way, ahead.steps.at(-1), ahead.cost_s]).toEqual([null, 'float', ahead.bound_s])
  expect((await ask('reach', 'J8.job.yaml', 'float')).out).toContain('“Check: float” is not done yet:')
})

test('of two people the sequence says who is at each step, how much each has to do, and who waits', async () => {
  const { steps, value } = await json('sequence', 'two.job.yaml')
  const alone = await json('sequence', 'J7.job.yaml')
  expect(alone.steps.every(({ people }: { people: unknown }) => people === null)).toBe(true)
  expect(value[1]).toBeLessThan(alone.value[1])
  const of = (person: string) => steps.filter(({ people }: { people: string[] }) => people.includes(person))
  const { out } = await ask('sequence', 'two.job.yaml')
  for (const person of ['M. Ashdown', 'J. Tarn']) {
    expect(of(person).length).toBeGreaterThan(3)
    expect(out).toContain(`${person} is at ${of(person).length} steps, `)
  }
  for (const { does, people } of steps) expect(out.replace(/\s+/g, ' ')).toContain(`${does} · ${people.join(' and ')}`)
  expect(out).toMatch(/(M\. Ashdown|J\. Tarn) waits \d+ (min|h)/)
})
