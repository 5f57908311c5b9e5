// Every figure answers its own example, in both systems, for people and for machines; bad input is told.
import { expect, test } from 'vitest'
import { wordsOf } from '../../../docs/shownCommands.ts'
import { noteOf } from '../../figures/frame/note.ts'
import { FIGURES, ROOMS } from '../../figures/list.ts'
import { WITHOUT } from '../../figures/without.ts'
import * as mechanics from '../../mechanics/index.ts'
import * as constructors from '../../quantity/constructors.ts'
import * as answers from '../answers/schema.ts'
import { say } from '../testing/desk.ts'

const ask = (...words: string[]) => say(['figure', ...words])

test('every calculation has a figure, or a reason why it has none', () => {
  const calculations = Object.entries(mechanics)
    .filter(([name, value]) => typeof value === 'function' && !(name in constructors))
    .map(([name]) => name)
  const worked = new Set(FIGURES.flatMap(({ of }) => of))
  expect(calculations.filter((name) => !worked.has(name) && !(name in WITHOUT))).toEqual([])
  expect([...worked, ...Object.keys(WITHOUT)].filter((name) => !calculations.includes(name))).toEqual([])
  expect(Object.keys(WITHOUT).filter((name) => worked.has(name))).toEqual([])
})

test('every figure has its own name and its own question', () => {
  for (const of of ['name', 'asks'] as const) {
    const all = FIGURES.map((figure) => figure[of])
    expect(all.filter((each, at) => all.indexOf(each) !== at)).toEqual([])
  }
})

test('every figure has a source and says what it means', () => {
  expect(
    FIGURES.filter(({ of }) => noteOf(of[0]).says === '' || of.every((name) => noteOf(name).source === '')).map(
      ({ name }) => name,
    ),
  ).toEqual([])
})

test('every input says what it is', () => {
  const dumb = FIGURES.flatMap(({ name, of, inputs }) =>
    Object.entries(inputs).flatMap(([input, { what, wants }]) =>
      what || noteOf(of[0]).params[input] || wants.includes('|') || wants.startsWith('thread')
        ? []
        : [`${name} ${input}`],
    ),
  )
  expect(dumb).toEqual([])
})

for (const { name, example } of FIGURES) {
  test(`${name} answers its example in both systems`, async () => {
    const metric = await ask(name, ...wordsOf(example), '--metric', '--json')
    expect(metric.err).toBe('')
    const answer = JSON.parse(metric.out)
    expect(answers.figureAnswer.safeParse(answer).error?.issues ?? answer.faults ?? []).toEqual([])
    expect(answer.missing).toEqual([])
    expect(answer.results.length + answer.margins.length).toBeGreaterThan(0)
    for (const { low, high, dimension } of answer.results) if (dimension !== null) expect(low).toBeLessThanOrEqual(high)
    const inch = JSON.parse((await ask(name, ...wordsOf(example), '--inch', '--json')).out)
    expect(inch.results.map(({ low, high }: { low: number; high: number }) => [low, high])).toEqual(
      answer.results.map(({ low, high }: { low: number; high: number }) => [low, high]),
    )
    const { out, err } = await ask(name, ...wordsOf(example))
    expect(err).toBe('')
    expect(out).not.toMatch(/undefined|NaN|\[object/)
    expect(out).toContain('Source')
  })
}

test('without a name all figures are listed by room, each with its question', async () => {
  const { out, code } = await ask()
  expect(code).toBe(0)
  for (const { name } of FIGURES) expect(out).toContain(`  ${name} `)
  const list = JSON.parse((await ask('--json')).out)
  expect(answers.figuresAnswer.safeParse(list).error?.issues ?? []).toEqual([])
  expect(list.figures.length).toBe(FIGURES.length)
  expect(new Set(list.figures.map(({ room }: { room: string }) => room)).size).toBe(Object.keys(ROOMS).length)
})

test('a name without inputs says what it wants and shows an example', async () => {
  const told = await ask('nut-angle')
  expect(told.code).toBe(0)
  expect(told.out).toContain('Wants\n  travel=… wanted along the shaft, low to high')
  expect(told.out).toContain('matchmark figure nut-angle travel=2-3 thou lead=1/16 in')
  expect((await ask('nut-angle', '--help')).out).toBe(told.out)
})

test('words need no quotes: a name may be said in words, a unit stands behind its number', async () => {
  const said = await ask('nut', 'angle', 'travel=2-3', 'thou', 'Lead', '=', '1/16', 'in')
  expect(said.code).toBe(2)
  const { out, code } = await ask('Nut', 'angle', 'travel=2-3', 'thou', 'lead=1/16', 'in')
  expect(code).toBe(0)
  expect(out).toContain('turn the nut: 11.52..17.28°')
})

// 2 thou of a lead of 1/16 in: 360° × 0.002 ÷ 0.0625 = 11.52°.
test('the answer comes in the system that was asked in, unless another is wished', async () => {
  const travel = ['nut-travel', 'angle=45°', 'lead=1.5 mm']
  expect((await ask(...travel)).out).toContain('travel: 0.188 mm')
  expect((await ask(...travel, '--inch')).out).toContain('travel: 7.4 thou')
  expect((await ask('nut-travel', 'angle=45°', 'lead=1/16 in')).out).toContain('travel: 7.8 thou')
})

test('what is missing is told, with how it is written; a question mark is the same', async () => {
  const { out, code } = await ask('nut-angle', 'travel=0.05 mm', 'lead=?')
  expect(code).toBe(1)
  expect(out).toContain('Not known. It wants:\n  ? lead distance for one turn: pitch, as 1.5 mm or 12 tpi')
  const answer = JSON.parse((await ask('nut-angle', 'travel=0.05 mm', '--json')).out)
  expect(answers.figureAnswer.safeParse(answer).success).toBe(true)
  expect(answer).toMatchObject({ results: [], missing: [{ key: 'lead' }] })
})

test('what was not told is taken at its worst, and it says so', async () => {
  const { out } = await ask('heat-limit', 'kind=?')
  expect(out).toContain('kind: not told; taken with the narrowest limits')
  const seat = await ask('taper-draw-up', 'interference=60 µm', 'taper=1:12')
  expect(seat.out).toContain('draw up from first touch: 0.72 mm')
})

test('a range in a number that the calculation wants exactly is worked at its ends and between', async () => {
  const run = async (angle: string) =>
    JSON.parse(
      (
        await ask(
          'wrench-setting',
          'torque=100 N·m',
          'wrench-length=400 mm',
          'extension=100 mm',
          `angle=${angle}`,
          '--json',
        )
      ).out,
    )
  // T L / (L + E cos angle): 80 N·m straight on, 100 at a right angle, and 133.3 turned back.
  const answer = await run('0..180°')
  expect(answer.results[0].low).toBeCloseTo(80, 9)
  expect(answer.results[0].high).toBeCloseTo(400 / 3, 9)
  expect(answer.taken.join()).toMatch(/the range of angle: worked at its ends and between, \d+ places/)
})

test('between the ends is looked at too: a full turn of the angle is more than its ends', async () => {
  const answer = JSON.parse(
    (
      await ask(
        'ring-stress',
        'inner-diameter=50 mm',
        'outer-diameter=90 mm',
        'inner-pressure=0..30 MPa',
        'outer-pressure=0 MPa',
        'at=50..90 mm',
        '--json',
      )
    ).out,
  )
  // Lamé at the bore: 30 MPa × (90² + 50²) / (90² − 50²) = 56.786 MPa.
  expect(answer.results[0].high / 1e6).toBeCloseTo((30 * (90 ** 2 + 50 ** 2)) / (90 ** 2 - 50 ** 2), 9)
  expect(answer.results[0].low).toBe(0)
})

test('teeth in a range are worked one by one', async () => {
  const answer = JSON.parse(
    (await ask('gear-sizes', 'module=2 mm', 'teeth=20..22', 'pressure-angle=20°', '--json')).out,
  )
  const pitch = answer.results.find(({ name }: { name: string }) => name === 'pitch diameter')
  expect([pitch.low, pitch.high]).toEqual([0.04, 0.044])
  expect(answer.taken.join()).toContain('3 places')
})

test('a name that is far from all others, and one that several questions have in them', async () => {
  const none = await ask('crankshaft')
  expect(none.err).toBe("There is no figure called 'crankshaft'. 'matchmark figure' lists what can be asked.")
  const several = await ask('shim')
  expect([none.code, several.code]).toEqual([2, 2])
  expect(several.err).toContain("'shim' may be more than one figure: ")
  expect((await ask('drop', 'on')).out).toContain('drop-on: How hot must the bearing or hub be to drop on?')
})

test('what rounding left of nothing is printed as nothing', async () => {
  const pair = ['module=3 mm', 'pressure-angle=20°', 'pinion-teeth=17', 'wheel-teeth=34', 'centre-distance=76.5 mm']
  expect((await ask('gear-pair', ...pair)).out).toMatch(/backlash \(below zero they jam\): +0 mm/)
})

test.each([
  ['nut-angel', ['lead=1 mm'], "Matchmark has no figure called 'nut-angel'. Did you mean 'nut-angle'?"],
  ['nut-angle', ['led=1 mm'], "The figure nut-angle has no input called 'led'. Did you mean 'lead'?"],
  [
    'nut-angle',
    ['lead=1 mm', 'lead=2 mm'],
    'lead is told twice. Tell it once; several values stand in one list, with commas between.',
  ],
  [
    'nut-angle',
    ['lead=1'],
    "lead: '1' has no unit (wanted: length). Write the unit behind the number: m, cm, mm, µm, in, ft, thou, µin.",
  ],
  [
    'nut-angle',
    ['lead=12 kg'],
    "lead: 'kg' (kilogram) is a unit of mass, not of length. Write the length in one of m, cm, mm, µm, in, ft, thou, µin.",
  ],
  ['gear-sizes', ['teeth=20.5'], "teeth: '20.5': this is no whole number. Count again."],
  [
    'gear-sizes',
    ['teeth=20 mm'],
    "teeth: '20 mm' has a unit (mm); wanted is a plain number. Write the number alone: a count (20), a share (0.9 or 90 %), a taper (1:12).",
  ],
  ['torque', ['thread=M9x'], 'thread: '],
  [
    'bearing-life',
    ['kind=balls'],
    "kind: 'balls': this is not one of the words held here. Write one of: ball | roller.",
  ],
  [
    'journal-taper',
    ['stations=0 mm'],
    "stations: '0 mm': this has no diameter in row 1. Wanted is length, as 30.02 mm or 1-3/16 in.",
  ],
  ['journal-taper', ['stations=0, 1, 2 mm'], "stations: '0, 1, 2 mm': this has 3 columns. A row has: along, diameter."],
])('wrong use of %s %j is told and ends with 2', async (name, inputs, says) => {
  const { err, code } = await ask(name, ...inputs)
  expect(err).toContain(says)
  expect(code).toBe(2)
})

test('a value outside what the formula holds for is a fault of the work: exit code 1', async () => {
  const { err, code } = await ask('tolerance-grade', 'nominal=5 m', 'grade=7')
  expect(err).toContain('ISO 286 gives no limits for IT7 at 5000 mm')
  expect(code).toBe(1)
})

test('what speaks against the work ends with 1', async () => {
  const press = ['joint-diameter=50 mm', 'length=40 mm', 'hub-outside=60 mm', 'hub=grey iron class 40', 'shaft=steel']
  expect((await ask('press-fit', ...press, 'interference=400 µm')).code).toBe(1)
  expect((await ask('press-fit', ...press, 'interference=2 µm')).code).toBe(0)
})

test('a list takes its unit from the last, and decimal commas with semicolons', async () => {
  const mean = async (readings: string) =>
    JSON.parse((await ask('readings', `readings=${readings}`, '--json')).out).results[0].low
  expect(await mean('30.012, 30.015, 30.012 mm')).toBeCloseTo(0.030013, 12)
  expect(await mean('30,01; 30,02; 30,03 mm')).toBeCloseTo(0.03002, 12)
  expect(await mean('1.1816, 1.1817, 1.1818 in')).toBeCloseTo(1.1817 * 0.0254, 12)
})
