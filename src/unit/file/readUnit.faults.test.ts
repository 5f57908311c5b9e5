// Every kind of fault of a unit file, with its whole sentence and its place.
import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from './readUnit.ts'

const faults = (text: string) => readUnit(text, 'w.yaml').faults.map(printProblem)
const HEAD = 'matchmark: unit/1\nunit: incline winch\nhousing: frame\nsizes: {in: mm}\n'
const LINES = 'lines:\n  1: {at: [0, 0], ends: [drum end, motor end]}\n  2: {at: [90, 0]}\n'
/** One part named drum on line 6 of the file, line 11 with lines. */
const drum = (keys: string) => faults(`${HEAD}parts:\n  drum: ${keys}\n`)
const onLines = (keys: string) => faults(`${HEAD}${LINES}parts:\n  drum: ${keys}\n`)
const AS_IT_IS = 'Write it that way, or leave it out when it is not known.'
const YAML_NEXT = "Mend the line named here; the file is left as it is. A '?' or '-' that stands alone needs quotes."
const RING = 'A ring is from..to: outside/inside, as in "5..23: 80/40, 23..36: 54"; ? stands for what was not measured.'

test('an unknown key is refused with the nearest one, or with all that are known', () => {
  expect(drum('{meshs: frame}')).toEqual([
    "w.yaml:6:10: 'meshs' is not known here; did you mean 'meshes'? Write it that way, or take it out.",
  ])
  expect(faults(`${HEAD}turning: {colour: red}\n`)).toEqual([
    "w.yaml:5:11: 'colour' is not known here. Known here: takes, hazard.",
  ])
})

test('an unknown name is told with the nearest one', () => {
  expect(faults(`${HEAD}parts:\n  drum gear: {closes: top, onto: drum geer}\n`)).toEqual([
    "w.yaml:6:23: 'closes' names 'top', which is no opening of this file. None is written down yet.",
    "w.yaml:6:34: 'onto' names 'drum geer', which is no part of this file; did you mean 'drum gear'? Known are: drum gear, frame.",
  ])
  expect(onLines('{line 3: "1..2: 3"}')).toEqual([
    "w.yaml:9:18: 'line 3' names '3', which is no line of this file. Known are: 1, 2.",
  ])
  expect(faults(`${HEAD}checks:\n  float: {wants: [frame], without: flaot}\n`)).toEqual([
    "w.yaml:6:36: 'without' names 'flaot', which is no step of this file; did you mean 'float'? Known are: frame, float.",
  ])
  expect(drum('{variants: late}')).toEqual([
    "w.yaml:6:20: 'variants' names 'late', which is no variant of this file. None is written down yet.",
  ])
})

test('a step that a connection may make is left for later, a mistyped one is not', () => {
  expect(faults(`${HEAD}parts:\n  drum:\nlies:\n  up: [drum, warm drum, drun]\n`)).toEqual([
    "w.yaml:8:25: 'up' names 'drun', which is no step of this file; did you mean 'drum'? Known are: drum, frame.",
  ])
})

test('a value of the wrong sort is told with what was expected', () => {
  expect(drum('{pieces: many, half: lowr, features: [1], way: true, reach: [{a: 1}]}')).toEqual([
    `w.yaml:6:18: 'pieces' is 'many'; expected a whole number, 1 or more. ${AS_IT_IS}`,
    "w.yaml:6:30: 'half' is 'lowr'; expected one of lower · upper. Did you mean 'lower'?",
    `w.yaml:6:36: 'features' is a list; expected a block of names, each with its own block. ${AS_IT_IS}`,
    `w.yaml:6:56: 'way' is 'true'; expected a way, such as {through: top, path: by hand}, or a list of ways. ${AS_IT_IS}`,
    `w.yaml:6:70: 'reach' is a block of keys; expected a name. ${AS_IT_IS}`,
  ])
  expect(faults(`${HEAD}parts:\n  drum: steel\n  pin: {onto: drum}\n`)).toEqual([
    `w.yaml:6:9: 'drum' is 'steel'; expected a block of keys and values. ${AS_IT_IS}`,
  ])
  expect(drum('{pieces: .nan, mass: .inf}')).toEqual([
    `w.yaml:6:18: 'pieces' is '.nan'; expected a whole number, 1 or more. ${AS_IT_IS}`,
    `w.yaml:6:30: 'mass' is '.inf'; expected a mass: 2.4 (kg) or 5 lb. ${AS_IT_IS}`,
  ])
})

test('what cannot be left out is asked for', () => {
  expect(faults('matchmark: unit/1\nparts: {}\n')).toEqual([
    "w.yaml:1:1: 'unit' is missing in this file. Write 'unit:' and text.",
    "w.yaml:1:1: 'housing' is missing in this file. Write 'housing:' and a name.",
  ])
  expect(faults(`${HEAD}orders:\n  - {first: frame, why: x}\n`)).toEqual([
    "w.yaml:6:5: 'then' is missing in orders › 1. Write 'then:' and a name.",
  ])
  expect(faults(`${HEAD}connections:\n  seat:\n  fit: {parts: [frame]}\n`)).toEqual([
    "w.yaml:6:3: 'kind' is missing in connections › seat. Write 'kind:' and a word such as press fit.",
    "w.yaml:7:3: 'kind' is missing in connections › fit. Write 'kind:' and text.",
  ])
})

test('a value in the wrong unit is told by the quantity itself', () => {
  expect(drum('{mass: 5 mm, features: {seat: {size: abc}}}')).toEqual([
    "w.yaml:6:18: 'mm' (millimetre) is a unit of length, not of mass. Write the mass in one of kg, g, t, lb, oz, imp cwt, long ton, short ton.",
    "w.yaml:6:46: 'abc' was received where a number was expected. Write a number with its unit (2-1/2 in, 63.5 mm) or a range with two dots (0.05..0.20 mm).",
  ])
  expect(faults(`${HEAD}checks:\n  a: {limit: 3..1 mm}\n`)).toEqual([
    "w.yaml:6:14: '3..1 mm' runs from the larger to the smaller. Write the smaller value first.",
  ])
})

test('a name that stands twice is told, and so are two steps of one name', () => {
  expect(faults(`${HEAD}parts:\n  drum: {}\n  drum: {}\nchecks: {drum: {}}\n`)).toEqual([
    "w.yaml:7:3: 'drum' stands twice in one block; first on line 6. Keep one, or give the second another name.",
    "w.yaml:8:10: The check 'drum' has the name of the part on line 6; every step has a name of its own. Give one of them another name.",
  ])
  expect(faults(`${HEAD}lines:\n  1:\n  "1": {}\n`)).toEqual([
    "w.yaml:7:3: '1' stands twice in one block; first on line 6. Keep one, or give the second another name.",
  ])
})

test('a ring that cannot be read is told at its own place in the file, over folded lines too', () => {
  const text = '{line 1: "5..23: 80/40,\n        3..4 80, 3: 80, 3..: 4, 3..5: 80,01/4, 1..2: 4 # x, 1..2: -3"}'
  expect(onLines(text)).toEqual([
    `w.yaml:10:9: In 'line 1' was received '3..4 80'; expected was from..to, then ':' and the size (decimals have a point). ${RING}`,
    `w.yaml:10:18: In 'line 1' was received '3'; expected was two distances with '..' between them. ${RING}`,
    `w.yaml:10:28: In 'line 1' was received ': 4'; expected was a size or ?. ${RING}`,
    `w.yaml:10:42: In 'line 1' was received '01/4'; expected was from..to, then ':' and the size (decimals have a point). ${RING}`,
    `w.yaml:10:56: In 'line 1' was received '# x'; expected was no note inside the text. ${RING}`,
    `w.yaml:10:67: In 'line 1' was received '-3'; expected was diameters, which are not below 0. ${RING}`,
  ])
  expect(onLines('{line 1: "5..23: 80/4 kg"}')).toEqual([
    "w.yaml:9:31: 'kg' (kilogram) is a unit of mass, not of length. Write the length in one of m, cm, mm, µm, in, ft, thou, µin.",
  ])
  expect(onLines('{line 1: "1..2: 3, "}')).toEqual([
    `w.yaml:9:27: In 'line 1' was received 'nothing'; expected was a ring between the commas. ${RING}`,
  ])
  expect(onLines(`{line 1: "${'1..2: 3, '.repeat(200)}1..2: 3"}`)).toEqual([
    "w.yaml:9:18: 'line 1' has 201 rings; at most 200 are read. Leave out what is not a shape of its own: a thread or a spline is one ring.",
  ])
})

test('a ring that contradicts itself is told', () => {
  expect(onLines('{line 1: "9..4: 3, 1..2: 40/80"}')).toEqual([
    "w.yaml:9:19: 'line 1' has a ring from 9 to 4, which has no length. Give the smaller distance first.",
    "w.yaml:9:28: 'line 1' has a ring that is 40 outside and 80 inside. Write outside / inside; one diameter alone is solid.",
  ])
})

test('rings of one part that contradict each other are told; a rim over its hub is none', () => {
  expect(onLines('{line 1: "0..50: 40, 20..22: 36"}')).toEqual([
    "w.yaml:9:30: 'line 1' has the ring '20..22: 36' hidden inside the ring '0..50: 40'. Two sizes stand in one place: end the larger ring where the smaller one begins, or take one out.",
  ])
  expect(onLines('{wall on 1: "0..20: 80, 18..30: 82"}')).toEqual([
    "w.yaml:9:33: 'wall on 1' gives two bores in one place: '0..20: 80' and '18..30: 82'. End one where the other begins.",
  ])
  expect(onLines('{line 1: "36..82: 72/46, 38..74: 136/46"}')).toEqual([])
})

test('an end, a line, a way that is not clear is asked for', () => {
  expect(onLines('{line 1: "0..50: 40", comes from: motr end, way: {from: left}}')).toEqual([
    "w.yaml:9:43: 'comes from' is 'motr end'; expected an end of its line: drum end · motor end · - · +. Did you mean 'motor end'?",
    "w.yaml:9:65: 'from' is 'left'; expected an end of its line: drum end · motor end · - · +. Write one of them; '-' alone needs quotes.",
  ])
  expect(onLines('{passing: "1..2: 3"}')).toEqual([
    "w.yaml:9:19: 'passing' does not say on which line, and there is more than one: 1, 2. Write 'passing on' and the line.",
  ])
  expect(onLines('{columns: {x: 3, from: +, diameter: 5..6, circle: 4, line: 1}}')).toEqual([
    "w.yaml:9:10: 'angles' is missing in columns. Write 'angles:' and [45, 135], degrees from the right towards up.",
    `w.yaml:9:45: 'diameter' is '5..6'; expected one size. ${AS_IT_IS}`,
  ])
  expect(
    faults(
      `${HEAD}openings: {top: }\nparts:\n  a: {way: {park through: top}}\n  b: {way: {park through: top, through: top, home with: a}}\n`,
    ),
  ).toEqual([
    "w.yaml:7:7: The way of 'a' parks it, but no step brings it home. Add 'home with' and the part whose step takes it home.",
    "w.yaml:8:7: The way of 'b' has both 'through' and 'park through'. Keep 'park through' if it hangs or lies in the housing first, 'through' if it goes straight home.",
  ])
})

test('what a person adds may not contradict itself', () => {
  expect(
    faults(
      `${HEAD}parts:\n  drum:\nlies:\n  up: drum\n  down: drum\nclocks:\n  c: {from: drum, to: start of drum, least: 4 min, most: 2 min}\nvariants:\n  a: {serials: 5..3}\n`,
    ),
  ).toEqual([
    "w.yaml:9:9: 'drum' lies 'up' and 'down'. Name a step under one attitude only.",
    "w.yaml:11:3: The clock 'c' wants at least 4 min and at most 2 min. Give the smaller time as least.",
    `w.yaml:11:13: 'from' is 'drum'; expected 'start of' or 'end of' and a step, such as 'end of warm bearing A'. ${AS_IT_IS}`,
    `w.yaml:13:16: 'serials' is '5..3'; expected serial numbers, the smaller first: ..1204, 1205.. or 1187..1204. ${AS_IT_IS}`,
  ])
})

test('a part in a variant needs what it goes onto there', () => {
  expect(
    faults(`${HEAD}parts:\n  sleeve: {variants: late}\n  ring: {onto: sleeve}\nvariants:\n  early:\n  late:\n`),
  ).toEqual([
    "w.yaml:7:16: In the variant 'early' 'ring' stands, but 'sleeve', which it names under 'onto', does not. Give both the same variants, or write the part once for each variant under two names.",
  ])
})

test('what is no YAML is told where it goes wrong', () => {
  const yaml = (text: string) => faults(HEAD + text)
  expect(yaml('parts:\n  a: {mass: ?}\n')).toEqual([
    `w.yaml:6:14: This is not readable YAML: Missing , between flow map items. ${YAML_NEXT}`,
  ])
  expect(yaml('parts:\n  a: {mass: 1\n')).toEqual([
    `w.yaml:7:1: This is not readable YAML: a bracket that was opened has no '}' before here. ${YAML_NEXT}`,
  ])
  expect(yaml('parts:\n  a: b: c\n')).toEqual([
    `w.yaml:6:6: This is not readable YAML: a second ':' stands in one value; text that holds ': ' needs quotes. ${YAML_NEXT}`,
  ])
  expect(yaml('parts:\n\ta: {}\n')).toEqual([
    `w.yaml:6:1: This is not readable YAML: a tab stands where spaces belong. ${YAML_NEXT}`,
  ])
  expect(yaml('---\nparts: {}\n')).toEqual([
    `w.yaml:5:1: This is not readable YAML: a second document begins here. ${YAML_NEXT}`,
  ])
  expect(yaml('parts:\n  wheel rin')).toEqual([
    `w.yaml:6:3: 'parts' is 'wheel rin'; expected a block of names, each with its own block. ${AS_IT_IS}`,
  ])
})

test('a file of another form is told at once', () => {
  expect(faults('')).toEqual([
    "w.yaml:1:1: Nothing stands here; expected 'matchmark: unit/1'. Start with the two lines that name the form and the thing, as in docs/reference/unit-file.md.",
  ])
  const next = 'Give the file of the right form, or write the form in its first line.'
  expect(faults('hello')).toEqual([
    `w.yaml:1:1: This file does not say what it is; expected 'matchmark: unit/1'. ${next}`,
  ])
  expect(faults('matchmark: job/1\njob: J1\n')).toEqual([
    `w.yaml:1:12: This file says 'matchmark: job/1'; expected 'matchmark: unit/1'. ${next}`,
  ])
})

test('anchors, aliases and tags are refused before anything is built from them', () => {
  const next = 'Write the value out where it is wanted; put quotes round it if it is meant as text.'
  expect(faults(`${HEAD}about: *x\n`)).toEqual([
    `w.yaml:5:8: '*x' is an alias of YAML, which is not read here. ${next}`,
  ])
  expect(faults(`${HEAD}about: &x y\n`)).toEqual([
    `w.yaml:5:8: '&x' is an anchor of YAML, which is not read here. ${next}`,
  ])
  expect(faults(`${HEAD}about: !!binary y\n`)).toEqual([
    `w.yaml:5:8: '!!binary' is a tag of YAML, which is not read here. ${next}`,
  ])
})

test('no name can reach into the program', () => {
  expect(faults(`${HEAD}parts:\n  __proto__: {}\n  constructor: {onto: toString}\n`)).toEqual([
    "w.yaml:6:3: '__proto__' cannot be a name here. Give a name of one line: words, numbers, no brackets.",
    "w.yaml:7:23: 'onto' names 'toString', which is no part of this file. Known are: constructor, frame.",
  ])
})

test('at most a hundred faults are told', () => {
  const list = faults(`${HEAD}parts:\n${Array.from({ length: 150 }, (_, i) => `  p${i}: {onto: q${i}}\n`).join('')}`)
  expect(list).toHaveLength(101)
  expect(list.at(-1)).toBe('w.yaml:106:16: 50 more faults are not listed. Mend the ones above first.')
})

test.each([
  ['10 million letters', 'x'.repeat(1e7), 'The file is 10 million letters long; at most 1 million are read.'],
  ['brackets in brackets', '['.repeat(900_000), 'more than 40 deep'],
  ['lists in lists', '- '.repeat(400_000), 'more than 40 deep'],
  ['keys in keys', '? '.repeat(400_000), 'more than 40 deep'],
  ['quotes', '"'.repeat(30_000), 'This is not readable YAML'],
  ['noughts', '\0'.repeat(900_000), 'This file does not say what it is'],
  ['anchors', '&a '.repeat(300_000), 'is an anchor of YAML'],
])('junk is refused at once: %s', (_, text, sentence) => {
  const start = performance.now()
  expect(faults(text)[0]).toContain(sentence)
  expect(performance.now() - start).toBeLessThan(3000)
})
