import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { type Edit, editUnit } from './editUnit.ts'
import { readUnit } from './readUnit.ts'
import { tailBox } from './tailBox.example.ts'

/** The lines that an edit took away and the ones that it brought. */
function changes(edits: readonly Edit[], text = tailBox): { out: string[]; in: string[] } {
  const [before, after] = [text.split('\n'), editUnit(text, edits).split('\n')]
  const left = [...after]
  const out = before.filter((line) => {
    const at = left.indexOf(line)
    if (at >= 0) left.splice(at, 1)
    return at < 0
  })
  return { out, in: left }
}

test('without edits the text stays as it was, letter by letter', () => {
  expect(editUnit(tailBox, [])).toBe(tailBox)
})

test('a changed value leaves every other letter, its own comment too', () => {
  expect(changes([{ path: ['invented'], value: false }])).toEqual({
    out: ['invented: true                                # demo data says so'],
    in: ['invented: false                                # demo data says so'],
  })
  expect(changes([{ path: ['openings', 'hole A', 'in'], value: 'lid' }])).toEqual({
    out: ['  hole A: {in: cover A}                       # a hole in a part that closes another opening'],
    in: ['  hole A: {in: lid}                       # a hole in a part that closes another opening'],
  })
  expect(changes([{ path: ['lines', 1, 'at', 0], value: '≈ 3' }]).in).toEqual([
    '  1: {at: [≈ 3, 0], ends: [coupling end, wall B end], datum: outside face of wall A}',
  ])
})

test('a new key stands at the end of its block, in the form of the block', () => {
  expect(changes([{ path: ['parts', 'box', 'material'], value: 'grey iron' }])).toEqual({
    out: [],
    in: ['    material: grey iron'],
  })
  expect(changes([{ path: ['parts', 'lid', 'mass'], value: 1.2 }]).in).toEqual([
    '  lid:           {closes: top, pieces: 1, supply: {from: own shop, lead: 2 weeks}, mass: 1.2}',
  ])
  expect(changes([{ path: ['openings', 'drain', 'size'], value: 'M16, in the floor' }]).in).toEqual([
    '  drain: {size: "M16, in the floor"}',
  ])
  expect(changes([{ path: ['parts', 'shim pack', 'onto'], value: 'box' }])).toEqual({
    out: [],
    in: ['  shim pack: {onto: box}'],
  })
  expect(changes([{ path: ['orders', 1], value: { first: 'lid', why: 'habit' } }])).toEqual({
    out: [],
    in: ['  - {first: lid, why: habit}'],
  })
  expect(changes([{ path: ['lies', 'wall A up', 4], value: 'drain plug' }]).in).toEqual([
    '  wall A up:        [bearing A, cover A, float, seal, drain plug]',
  ])
})

test('what is taken out goes with its line; in braces it goes alone', () => {
  expect(changes([{ path: ['parts', 'box', 'mass'], value: undefined }])).toEqual({ out: ['    mass: ≈ 41'], in: [] })
  expect(changes([{ path: ['parts', 'lid', 'closes'], value: undefined }]).in).toEqual([
    '  lid:           {pieces: 1, supply: {from: own shop, lead: 2 weeks}}',
  ])
  expect(changes([{ path: ['parts', 'lid', 'supply'], value: undefined }]).in).toEqual([
    '  lid:           {closes: top, pieces: 1}',
  ])
  expect(changes([{ path: ['parts', 'no such part'], value: undefined }])).toEqual({ out: [], in: [] })
  expect(changes([{ path: ['parts', 'wheel ring'], value: undefined }]).out).toHaveLength(6)
})

test('the edited text is read with the edits in it', () => {
  const edits = [
    { path: ['parts', 'shaft', 'features', 'seat A', 'size'], value: '40.009..40.012' },
    { path: ['parts', 'shaft', 'number'], value: '0043' },
    { path: ['parts', 'bearing A', 'takes'], value: '20 min' },
    { path: ['parts', 'bearing A', 'life'], value: 'renew' },
    { path: ['fills', 'grease', 'what'], value: 'grease: the soft one # not oil' },
    { path: ['about'], value: 'two\nlines' },
  ]
  const { unit, faults } = readUnit(editUnit(tailBox, edits), 'x')
  expect(faults).toEqual([])
  expect(unit!.parts.get('shaft')).toMatchObject({
    number: '0043',
    features: [{ size: { low: 0.040009, high: 0.040012 } }, {}],
  })
  expect(unit!.parts.get('bearing A')).toMatchObject({ life: 'renew', takes: { low: 1200 } })
  expect(unit!.fills.get('grease')!.what).toBe('grease: the soft one # not oil')
  expect(unit!.about).toBe('two\nlines')
})

test('empty text, empty blocks, lists of blocks and text of several lines can be edited', () => {
  expect(editUnit('', [{ path: ['unit'], value: 'winch' }])).toBe('unit: winch\n')
  expect(
    editUnit('a: {}\nb: []', [
      { path: ['a', 'x'], value: 1 },
      { path: ['b', 0], value: 2 },
    ]),
  ).toBe('a: {x: 1}\nb: [2]')
  expect(editUnit('a:\n  - x: 1 # one\n    y: 2\n', [{ path: ['a', 0, 'x'], value: undefined }])).toBe('a:\n  - y: 2\n')
  expect(editUnit('a:\n  - x: 1 # one\n', [{ path: ['a', 0, 'y'], value: 2 }])).toBe('a:\n  - x: 1 # one\n    y: 2\n')
  expect(editUnit('a: |\n  one\n  two\nb: 1\n', [{ path: ['a'], value: 'three' }])).toBe('a: three\nb: 1\n')
  expect(editUnit('a: # none\n', [{ path: ['a', 'x', 'y'], value: 3 }])).toBe('a: {x: {y: 3}} # none\n')
  expect(editUnit('a: {x, y}\n', [{ path: ['a', 'x'], value: 3 }])).toBe('a: {x: 3, y}\n')
  expect(editUnit('a: {x: , y: 1}\n', [{ path: ['a', 'x'], value: 3 }])).toBe('a: {x: 3, y: 1}\n')
})

test('a place that is not there is refused', () => {
  expect(() => editUnit('a: 1\n', [{ path: ['a', 'b'], value: 2 }])).toThrow(
    "'a › b' cannot be written: 'a' is no block.",
  )
  expect(() => editUnit('a: [1]\n', [{ path: ['a', 3], value: 2 }])).toThrow(
    "'a › 3' cannot be written: the list has 1 members.",
  )
  expect(() => editUnit('a: [1\n', [])).not.toThrow()
  expect(() => editUnit('a: [1\n', [{ path: ['a'], value: 2 }])).toThrow('This is not readable YAML')
})

test('any text comes back as it was given, in braces and in lines (seed 20261125)', () => {
  const texts = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom('yes', '007', '-', '?', 'a: b', ' x', '[', '#', '~', '.5', "'"),
  )
  const given = 'lid: {mass: 1}\nbox:\n  mass: 1 # of all\n'
  fc.assert(
    fc.property(
      texts,
      texts.filter((name) => name !== '' && name !== 'mass'),
      (text, name) => {
        const edited = editUnit(given, [
          { path: ['lid', 'mass'], value: text },
          { path: ['lid', 'x'], value: [text] },
          { path: ['box', 'mass'], value: text },
          { path: ['box', 'x'], value: { [name]: text } },
        ])
        expect(parse(edited)).toEqual({
          lid: { mass: text, x: [text] },
          box: { mass: text, x: { [/^\d+$/.test(name) ? Number(name) : name]: text } },
        })
      },
    ),
    { seed: 20261125, numRuns: 300 },
  )
})
