import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import type { Need, Operation, PlanningProblem } from '../../planning/model/problem.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import type { Setting } from '../../unit/connections/kind.ts'
import type { CostlyAnswer, HoldsAnswer } from '../answers/schema.ts'
import { becauseOf } from '../because.ts'
import { costlyWords } from '../commands/costly.ts'
import { countWords } from '../commands/count.ts'
import { holdWords } from '../commands/holds.ts'
import { costWords, differenceWords, repairWords } from '../commands/judgeOrder.ts'
import { placesWords, runsOf } from '../commands/slack.ts'
import { inputHash } from '../inputHash.ts'
import { progressOf } from '../progress.ts'
import { penFor, wrapped } from './pen.ts'
import { questionWords } from './questionWords.ts'
import { proofWords, triesWords, valueWords } from './sequenceWords.ts'
import { settingWords } from './settingWords.ts'
import { clockWords, counted, spanOfTime } from './timeWords.ts'

const pen = penFor({ colour: false, width: 60 })

test('sentences are broken between words, never inside one', () => {
  expect(wrapped('lower case on the bench', { width: 12, first: '1 ', rest: '  ' })).toEqual([
    '1 lower case',
    '  on the',
    '  bench',
  ])
  expect(wrapped('Antidisestablishmentarianism', { width: 10 })).toEqual(['Antidisestablishmentarianism'])
  expect(wrapped('', { width: 10, first: '- ' })).toEqual(['- '])
})

test.each([
  [0, '0:00'],
  [59, '0:00'],
  [5430, '1:30'],
  [360_000, '100:00'],
])('%d s after the start is %s', (time_s, words) => {
  expect(clockWords(time_s)).toBe(words)
})

test('counts and times as they are said', () => {
  expect([counted(1, 'breach', 'breaches'), counted(2, 'turn-over'), spanOfTime(5400)]).toEqual([
    '1 breach',
    '2 turn-overs',
    '1 h 30 min',
  ])
  expect(valueWords([0, 90, 1])).toBe('1 min 30 s, 1 change of set-up')
  expect(valueWords([2, 60, 0])).toBe('2 points of hazard, 1 min, 0 changes of set-up')
  expect(costWords([0, -60, 2])).toBe('1 min less, 2 changes of set-up more')
  expect(costWords([0, 0, 0])).toBe('nothing more')
})

test('what is claimed for a result is what it holds', () => {
  const effort = { states: 1, width: 1, dropped: 0 }
  const result = {
    value: [0, 60, 0],
    bound: [0, 60, 0],
    proven: true,
    feasible: 'yes',
    steps: [],
    assumptions: [],
    conflict: null,
    effort,
  } as const
  expect(proofWords(result)).toBe('No sequence is better: proven, for what was told.')
  expect(proofWords({ ...result, proven: false, bound: [0, 30, 0] })).toBe(
    'The best that was found; not proven. None can be better than 30 s, 0 changes of set-up.',
  )
  expect(proofWords({ ...result, value: null, proven: false, feasible: 'no' })).toBe(
    'No sequence is possible, for what was told.',
  )
  expect(proofWords({ ...result, value: null, proven: false, feasible: 'not known' })).toBe(
    'None was found within the effort; whether there is one is not known.',
  )
})

const does = (
  id: string,
  ...needs: readonly (readonly [id: string, done: string[], notDone: string[]])[]
): Operation => ({
  id,
  does: id,
  duration_s: { low: 1, usual: 1, high: 1 },
  modes: [
    { id: 'so', people: 1, needs: [], setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } },
  ],
  needs: needs.map(
    ([name, done, notDone]): Need => ({
      id: name,
      anyOf: [{ done, notDone }],
      giveUp: 'never',
      reason: { code: 'X', says: name, facts: {}, origin: 'author', standing: 'told' },
    }),
  ),
})
const problemOf = (...operations: Operation[]): PlanningProblem => ({
  schema: 'matchmark-planning/1',
  operations,
  lags: [],
  changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0 },
  start: { attitudes: {} },
  people: 1,
})
const placed = (...ids: string[]) => ids.map((op, place) => ({ op, mode: 'so', start_s: place, end_s: place + 1 }))

test('a step says the need that was met last, also one of another step that it must not forestall', () => {
  const problem = problemOf(
    does('a'),
    does('b'),
    does('c', ['c wants a', ['a'], []], ['c wants b', ['b'], []]),
    does('d'),
    does('e', ['d bars e', [], ['d']]),
  )
  const because = becauseOf(problem, placed('a', 'b', 'c', 'e', 'd'))
  expect(because.map((each) => each && [each.after, each.reason.says])).toEqual([
    undefined,
    undefined,
    [1, 'c wants b'],
    undefined,
    [3, 'd bars e'],
  ])
})

test('the number of an input is SHA-256 over its canonical JSON (RFC 8785): keys sorted, nothing between', () => {
  const canonical =
    '{"changes":{"station_s":0,"tools_s":0,"turn":{},"workpiece_s":0},"lags":[],"operations":[],"people":1,"schema":"matchmark-planning/1","start":{"attitudes":{}}}'
  expect(inputHash(problemOf())).toBe(createHash('sha256').update(canonical).digest('hex'))
})

test('a long search tells how far it is, at most once a second', () => {
  const told: string[] = []
  let time = 0
  const tell = progressOf({ now: () => time, err: (text) => void told.push(text) })
  for (time of [300, 900, 1500, 1600, 2400, 2600])
    tell({ value: time > 2000 ? [0, 90, 1] : null, bound: [0, 60, 1], states: time })
  expect(told).toEqual([
    'looking: none found so far; none can be under 1 min, 1 change of set-up (2 s, 1500 states)',
    'looking: best so far 1 min 30 s, 1 change of set-up; none can be under 1 min, 1 change of set-up (3 s, 2600 states)',
  ])
})

test('questions stand by rank, and what is too many is counted', () => {
  const question = (about: string, rank: 1 | 2 | 3) => ({ about, asks: 'How wide?', holdsUp: 'the fit', rank })
  expect(questionWords([question('lid', 1), question('cap', 2), question('cap', 2)], pen, 1)).toEqual([
    'Holds up the sequence or a setting (1)',
    '  ? lid: How wide?',
    '    holds up: the fit',
    'Would sharpen an answer (2)',
    '  ? cap: How wide?',
    '    holds up: the fit',
    '    and 1 more question',
  ])
})

test('a setting shows its figures with limit and basis; cautions and sources stand once', () => {
  const setting = (title: string, verdict: 'within' | 'out'): Setting => ({
    connection: title,
    kind: 'cylindrical fit',
    title,
    figures: [
      {
        label: 'press load',
        dimension: 'force',
        low: 1000,
        high: 2000,
        standing: 'seen',
        basis: 'readings',
        source: 'a book',
        limit: { high: verdict === 'within' ? 5000 : 900, source: 'rating' },
        verdict,
      },
    ],
    says: [],
    missing: ['the bore'],
    cautions: ['Stand aside.'],
  })
  expect(settingWords([setting('seat A', 'within'), setting('seat B', 'out')], pen, 'metric')).toEqual([
    'seat A',
    '  press load: 1000..2000 N, from readings [1]',
    '    kept: at most 5000 N (rating)',
    '  ? the bore',
    '',
    'seat B',
    '  press load: 1000..2000 N, from readings [1]',
    '    BROKEN: at most 900 N (rating)',
    '  ? the bore',
    '',
    'Cautions',
    '  ! Stand aside. (seat A; seat B)',
    '',
    'What the figures rest on',
    '  [1] a book',
  ])
})

test('a number of orders is told as counted, or as estimated', () => {
  expect(countWords({ count: '1234567', estimate: null }, 12)).toBe('1,234,567 orders of 12 steps satisfy every need.')
  const estimate = { low: '1190000', high: '1250000', confidence: 0.95, seed: 1, draws: 32, kept: 400 } as const
  expect(countWords({ count: '1230000', estimate }, 12)).toBe(
    'About 1,230,000 orders of 12 steps satisfy every need: too many to count one by one.\n' +
      'Estimated: between 1,190,000 and 1,250,000, 95 times in 100 (32 draws, seed 1).',
  )
})

test('a mended order says what moves, and what the best does otherwise what each move is good for', () => {
  const problem = problemOf(does('lid'), does('seal'), does('float'))
  const breach = { rule: 'need', id: 'n', step: 'seal', says: '“seal” cannot start.' }
  const answer = {
    schema: 'matchmark-judgement/1',
    file: 'f',
    unit: 'u',
    variant: null,
    job: null,
    order: 'o',
    inputHash: 'h',
    breaches: [breach],
    value: null,
    best: null,
    costsMore: null,
    repair: {
      moved: [{ step: 'seal', from: 2, to: 3, after: 'float' }],
      otherModes: [],
      least: 1,
      value: [0, 60, 0] as [number, number, number],
      order: ['lid', 'float', 'seal'],
    },
    differences: [
      {
        steps: ['seal'],
        after: 'lid',
        bestAfter: 'float',
        mode: null,
        cures: [breach],
        gains: [0, 90, -1] as [number, number, number],
      },
      {
        steps: ['lid'],
        after: null,
        bestAfter: 'seal',
        mode: null,
        cures: [],
        gains: [0, 0, 0] as [number, number, number],
      },
    ],
  } as const
  const told = JSON.parse(JSON.stringify(answer))
  expect(repairWords(told, problem, pen)).toEqual([
    'Mended by moving 1 step (no repair moves fewer)',
    '  2: “seal” right after “float”',
    'Mended like this it takes 1 min, 0 changes of set-up.',
  ])
  const places = new Map([
    ['lid', 1],
    ['seal', 2],
    ['float', 3],
  ])
  expect(differenceWords(told, { problem, places, pen })).toEqual([
    'What the best does otherwise',
    '  · “seal” after “float”, not after “lid”:',
    '      mends 1 breach at step 2.',
    '      saves 1 min 30 s; costs 1 change of set-up.',
    '  · “lid” after “seal”, not first of all:',
    '      by itself it saves nothing; it goes with the others.',
  ])
})

test('the places of a step are told, and what they cost', () => {
  const at = { place: 4, first: 4, last: 4, freeFirst: 4, freeLast: 4 }
  expect(placesWords(at)).toBe('stays at 4')
  expect(placesWords({ ...at, last: 9 })).toBe('may stand at 4 to 9; anywhere else it costs something')
  expect(placesWords({ ...at, last: 9, freeLast: 6 })).toBe('may stand at 4 to 9; 4 to 6 at no cost')
  expect(placesWords({ ...at, last: 9, freeLast: 9 })).toBe('may stand at 4 to 9 at no cost')
  expect(runsOf([5, 3, 4, 9])).toEqual(['3 to 5', '9'])
})

test('what costs time is told with its reason, and how much was tried', () => {
  const relation = { kind: 'lag', id: 'l', step: 's', says: 'The sealant cures.', standing: 'told' } as const
  const gains: [number, number, number] = [0, 600, -1]
  const answer = { relations: [{ ...relation, gains, proven: false }], tried: 3, of: 9 } as unknown as CostlyAnswer
  expect(costlyWords(answer, pen)).toEqual([
    'Left out one at a time (3 of 9; with more effort the others',
    'too), 1 costs something:',
    '  · without this it saves 10 min; costs 1 change of set-up',
    '    at least:',
    '      The sealant cures. (told)',
  ])
})

test('stops are told with what they save, and with what was taken for granted', () => {
  const seconds = (low: number, high: number) => ({ low, high })
  const answer = {
    assumed: { chance: seconds(0.01, 0.05), look_s: seconds(60, 180), stop_s: 120 },
    holds: [
      { after: 'a', place: 3, looksAt: ['a', 'b'], saves_s: seconds(600, 900), certain: true },
      { after: 'b', place: 9, looksAt: ['b'], saves_s: seconds(-120, 300), certain: false },
    ],
    perhaps: [{ after: 'c', place: 12 }],
    expected_s: seconds(600, 1200),
    withoutHolds_s: seconds(1800, 2400),
    notKnown: ['a', 'b'],
  } as unknown as HoldsAnswer
  expect(
    holdWords(answer, new Map([['a', 'Fit a']]), pen)
      .join(' ')
      .replace(/\s+/g, ' '),
  ).toBe(
    'How often a step is not right is not known for 2 steps; taken for each: 1 to 5 in a hundred, 1 min to 3 min to look, ' +
      'and a late fault costs the way back from the end. A stop takes 2 min. Stop and look (2) ' +
      '· after 3, “Fit a”: look at “Fit a”, “b” saves 10 min to 15 min, to be expected ' +
      '· after 9, “b”: look at “b” worth it only if faults are not rare: from 2 min lost to 5 min saved, to be expected ' +
      'At the bad end of what is half known also after 12. ' +
      'To be expected for looking and setting right: 10 min to 20 min; with no stop at all 30 min to 40 min.',
  )
})

test('what is tried until it is right is told with what that makes of the whole', () => {
  const problem = {
    ...problemOf(does('shim'), does('float')),
    loops: [
      {
        id: 't',
        first: 'shim',
        last: 'float',
        tries: { low: 1, usual: 3, high: 5 },
        reason: { code: 'X', says: 'x', facts: {}, origin: 'usual', standing: 'usual' },
      },
    ],
  } as const
  const loops = [{ id: 't', again: ['shim', 'float'], renews: ['paper'], noReturn: ['shim'], try_s: 300 }]
  const tries = { low: [0, 60, 0], usual: [0, 660, 0], high: [0, 1260, 2], bound: [0, 660, 0], proven: true, loops }
  const words = triesWords({ tries } as unknown as PlanResult, problem, pen)
  expect(words.join(' ').replace(/\s+/g, ' ')).toBe(
    'With the usual tries 11 min, 0 changes of set-up; at worst 21 min, 2 changes of set-up. ' +
      'until “float” is right: 1 to 5 tries, usually 3; each further one takes 2 steps and 5 min, and new paper ' +
      'each try breaks into “shim”',
  )
  expect(triesWords({} as PlanResult, problem, pen)).toEqual([])
})
