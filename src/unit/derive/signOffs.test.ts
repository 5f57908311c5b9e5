import { expect, test } from 'vitest'
import { readUnit } from '../file/readUnit.ts'
import { signOffsOf } from './signOffs.ts'

const unitOf = (more: string) => {
  const { unit, faults } = readUnit(
    `matchmark: unit/1
unit: tail box
housing: box
openings:
  top: {size: 112 × 150}
  joint: {split: true}
  bore A: {line: 1, end: "-", size: Ø 80}
  vent: {in: lid}
lines: {1: {at: [0, 0]}}
parts:
  box: {}
  nuts: {}
  lid: {closes: top}
  plate: {closes: bore A}
${more}`,
    'tail.unit.yaml',
  )
  expect(faults.map(String)).toEqual([])
  return unit!
}
const joints = { closing: [{ part: 'lid', steps: ['sealant top', 'lid bolts'] }] }

test('the inside is photographed before the first step that shuts an opening for hand and eye', () => {
  const order = ['nuts', 'plate', 'sealant top', 'lid', 'lid bolts']
  expect([...signOffsOf(unitOf(''), joints, order)]).toEqual([
    [
      'sealant top',
      {
        step: 'sealant top',
        secondPerson: false,
        standing: 'usual',
        photo: 'the inside, before top is shut',
        shuts: ['top'],
      },
    ],
  ])
  expect([...signOffsOf(unitOf(''), { closing: [] }, order).keys()]).toEqual(['lid'])
  expect([...signOffsOf(unitOf(''), joints, ['nuts']).keys()]).toEqual([])
})

test('what the file tells wins over what is usual, and a step that is not there wants nothing', () => {
  const unit = unitOf(`sign off:
  nuts: {second person: true, why: nobody sees them again, source: works sheet}
  lid: {photo: both locks, standing: seen}
`)
  const wanted = signOffsOf(unit, { closing: [] }, ['nuts', 'lid'])
  expect(wanted.get('nuts')).toEqual({
    step: 'nuts',
    secondPerson: true,
    why: 'nobody sees them again',
    source: 'works sheet',
    standing: 'told',
    shuts: [],
  })
  expect(wanted.get('lid')).toMatchObject({ photo: 'both locks', standing: 'seen', shuts: ['top'] })
  expect([...signOffsOf(unit, { closing: [] }, ['lid']).keys()]).toEqual(['lid'])
})

test('a sign-off of an unknown step, and a word that is none, are told at their place', () => {
  const faultsOf = (more: string) =>
    readUnit(
      `matchmark: unit/1\nunit: a\nhousing: box\nparts: {lid: {}}\nsign off:\n${more}`,
      'a.unit.yaml',
    ).faults.map(({ code, message }) => [code, message])
  expect(faultsOf('  lif: {second person: true}')).toEqual([['NAME_NOT_KNOWN', expect.stringContaining("'lif'")]])
  expect(faultsOf('  lid: {second person: twice}')).toEqual([
    ['VALUE_NOT_EXPECTED', expect.stringContaining('true or false')],
  ])
  expect(faultsOf('  lid: {third person: true}')[0]?.[0]).toBe('KEY_NOT_KNOWN')
})
