import { expect, test } from 'vitest'
import type { Entry } from '../journal/entry.ts'
import { compareEntries } from '../journal/foldOrder.ts'
import { shuffled } from '../stores/testing/shuffled.ts'
import { Writer } from '../stores/testing/writer.ts'
import { fold, foldOn } from './fold.ts'
import { busyDay } from './testing/busyDay.ts'

const two = () => {
  const [ashdown, tarn] = [new Writer('tablet', 'J41', 'M. Ashdown'), new Writer('laptop', 'J41', 'J. Tarn')]
  tarn.now_ms += 500
  return { ashdown, tarn }
}
const stateOf = (entries: readonly Entry[]) => fold('J41', entries).state
const looksOf = (entries: readonly Entry[]) =>
  stateOf(entries).looks.map(({ what, about, people }) => [what, about, people])
const seen = (low: number) => ({ low, high: low, standing: 'seen' as const })

test('two readings of one feature stand side by side; which one rules is a decision with its reason', () => {
  const { ashdown, tarn } = two()
  const first = ashdown.write('reading', { part: 'shaft', feature: 'seat A', reads: seen(0.040012) })
  const second = tarn.write('reading', { part: 'shaft', feature: 'seat A', reads: seen(0.040009) })
  const other = tarn.write('reading', { part: 'shaft', feature: 'seat B', reads: null })
  expect(stateOf([first, second, other]).readings.map(({ entry, rules }) => [entry, rules])).toEqual([
    [first.id, undefined],
    [second.id, undefined],
    [other.id, undefined],
  ])
  const says = 'The first was taken with the shaft still warm.'
  const decision = ashdown.write('finding', { says, rules: second.id })
  expect(stateOf([first, second, other, decision]).readings).toMatchObject([
    { entry: first.id, rules: 'another', because: { says, person: 'M. Ashdown' } },
    { entry: second.id, rules: 'this' },
    { entry: other.id },
  ])
})

test('two people who sign one step both stand, with a look mark; one who signs twice on one device has none', () => {
  const { ashdown, tarn } = two()
  const [one, other] = [ashdown.write('step-signed', { step: 'cap A' }), tarn.write('step-signed', { step: 'cap A' })]
  const state = stateOf([other, one])
  expect(state.steps.get('cap A')).toMatchObject({ stands: 'done', done: [{ entry: one.id }, { entry: other.id }] })
  expect(looksOf([other, one])).toEqual([['signed twice', 'cap A', ['M. Ashdown', 'J. Tarn']]])
  expect(looksOf([one, ashdown.write('step-signed', { step: 'cap A' })])).toEqual([])
})

test('a withdrawn entry is out of force and stays to be seen; a withdrawn withdrawal puts it back', () => {
  const { ashdown, tarn } = two()
  const signed = ashdown.write('step-signed', { step: 'cap A' })
  const back = ashdown.write('withdrawn', { of: signed.id, why: 'the wrong cap' })
  tarn.see(back)
  const again = tarn.write('withdrawn', { of: back.id })
  expect(stateOf([signed, back]).steps.size).toBe(0)
  expect(stateOf([signed, back]).happened).toMatchObject([
    { entry: signed.id, withdrawnBy: back.id },
    { entry: back.id },
  ])
  expect(stateOf([signed, back, again]).steps.get('cap A')?.stands).toBe('done')
  ashdown.see(again)
  const third = ashdown.write('withdrawn', { of: again.id })
  expect(stateOf([third, again, back, signed]).steps.size).toBe(0)
})

test('a withdrawal that came before its entry waits for it; one that stands before it in time takes nothing back', () => {
  const { ashdown, tarn } = two()
  const signed = ashdown.write('step-signed', { step: 'cap A' })
  const back = tarn.write('withdrawn', { of: signed.id })
  expect(stateOf([back]).steps.size).toBe(0)
  expect(stateOf([back, signed]).steps.size).toBe(0)
  const early = { ...back, at: { ms: 1, n: 0 } } as Entry
  expect(stateOf([early, signed]).steps.get('cap A')?.stands).toBe('done')
})

test('a sequence that changes under the feet of someone is shown: a step he has begun, a step he signs by the old one', () => {
  const { ashdown, tarn } = two()
  const old = ashdown.write('sequence-adopted', { steps: [{ step: 'spindle' }, { step: 'cluster' }] })
  tarn.see(old)
  const begun = tarn.write('step-started', { step: 'cluster', sequence: old.id })
  ashdown.see(begun)
  const fresh = ashdown.write('sequence-adopted', { steps: [{ step: 'cluster' }, { step: 'spindle' }], from: old.id })
  const signed = {
    ...tarn.write('step-signed', { step: 'cluster', sequence: old.id }),
    at: { ms: fresh.at.ms + 1, n: 0 },
  } as Entry
  expect(looksOf([old, begun, fresh])).toEqual([['sequence changed', 'cluster', ['J. Tarn', 'M. Ashdown']]])
  expect(looksOf([old, begun, fresh, signed])).toEqual([
    ['sequence changed', 'cluster', ['J. Tarn', 'M. Ashdown']],
    ['sequence changed', 'cluster', ['M. Ashdown', 'J. Tarn']],
  ])
  expect(stateOf([old, begun, fresh, signed]).sequence?.entry).toBe(fresh.id)
  const beside = {
    ...tarn.write('sequence-adopted', { steps: [], from: old.id }),
    at: { ms: fresh.at.ms + 2, n: 0 },
  } as Entry
  expect(looksOf([old, fresh, beside])).toEqual([['two sequences', beside.id, ['M. Ashdown', 'J. Tarn']]])
})

test('the hands that did a step cannot vouch for it as a second person; alone it takes another method and a photo', () => {
  const { ashdown, tarn } = two()
  const done = ashdown.write('step-signed', { step: 'cap A' })
  const own = ashdown.write('step-signed', { step: 'cap A', as: 'second' })
  const other = tarn.write('step-signed', { step: 'cap A', as: 'second' })
  expect(stateOf([done, own]).steps.get('cap A')?.second).toBeUndefined()
  expect(looksOf([done, own])).toEqual([['same hand', 'cap A', ['M. Ashdown']]])
  expect(stateOf([done, other]).steps.get('cap A')?.second).toMatchObject({ how: 'second person', person: 'J. Tarn' })
  const later = tarn.write('step-signed', { step: 'cap A' })
  expect(stateOf([done, other, later]).steps.get('cap A')?.second).toBeUndefined()
  const bare = ashdown.write('step-signed', { step: 'cap A', as: 'recheck', method: 'torque again, dial wrench' })
  expect(stateOf([done, bare]).steps.get('cap A')?.second).toBeUndefined()
  expect(looksOf([done, bare])).toEqual([['check again without method or photo', 'cap A', ['M. Ashdown']]])
  const photo = 'a'.repeat(64)
  const checked = ashdown.write('step-signed', { step: 'cap A', as: 'recheck', method: 'feeler at the joint', photo })
  expect(stateOf([done, checked]).steps.get('cap A')?.second).toMatchObject({ how: 'one person, checked again' })
})

test('a step that was undone is to be done anew, and both its lives stay to be seen', () => {
  const { ashdown } = two()
  const entries = [
    ashdown.write('step-signed', { step: 'cap A' }),
    ashdown.write('step-signed', { step: 'cap A', as: 'undone', says: 'shim left out' }),
  ]
  expect(stateOf(entries).steps.get('cap A')).toMatchObject({ stands: 'undone', done: [], signatures: [{}, {}] })
  expect(stateOf([...entries, ashdown.write('step-signed', { step: 'cap A' })]).steps.get('cap A')).toMatchObject({
    stands: 'done',
    done: [{}],
    signatures: [{}, {}, {}],
  })
  expect(looksOf(entries)).toEqual([])
})

test('where a part is, and what was decided for it: the last word counts, and two people who differ without a reason are shown', () => {
  const { ashdown, tarn } = two()
  const entries = [
    ashdown.write('part-seen', {
      part: 'cone A',
      where: 'scrap box',
      condition: 'pitted',
      decision: 'renew',
      when: 'found',
    }),
    tarn.write('part-seen', { part: 'cone A', where: 'tray 5', condition: 'a little blue', decision: 'reuse' }),
    ashdown.write('part-in', { part: 'cone A', pieces: 1, where: 'shelf 2', from: 'bearing stockist' }),
  ]
  expect(stateOf(entries).parts.get('cone A')).toMatchObject({
    where: 'shelf 2',
    conditions: [{ condition: 'pitted', when: 'found' }, { condition: 'a little blue' }],
    decision: { decision: 'reuse', person: 'J. Tarn' },
    in: [{ from: 'bearing stockist' }],
  })
  expect(looksOf(entries)).toEqual([['decided otherwise', 'cone A', ['M. Ashdown', 'J. Tarn']]])
  const withReason = { ...entries[1]!, body: { ...entries[1]!.body, why: 'only on the outside' } } as Entry
  expect(looksOf([entries[0]!, withReason])).toEqual([])
})

test('a device that gave one number to two entries is told; both stand', () => {
  const { ashdown } = two()
  const entry = ashdown.note('one')
  const twin = { ...entry, id: '99999999-9999-4999-8999-999999999999', body: { says: 'two' } } as Entry
  expect(stateOf([twin, entry]).notes).toHaveLength(2)
  expect(looksOf([twin, entry])).toEqual([['two entries with one number', 'tablet', ['M. Ashdown']]])
})

test('another unit file under a job that is begun is told', () => {
  const { ashdown } = two()
  const adopt = (digit: string) => ashdown.write('unit-adopted', { unit: digit.repeat(64), file: 'g.unit.yaml' })
  const [first, start, second] = [adopt('a'), ashdown.write('step-started', { step: 'cap A' }), adopt('b')]
  expect(looksOf([first, start, second])).toEqual([['unit changed', 'g.unit.yaml', ['M. Ashdown']]])
  expect(stateOf([first, start, second]).unit?.unit).toBe('b'.repeat(64))
})

test('names such as __proto__ and constructor are names like any other', () => {
  const { ashdown } = two()
  const state = stateOf(['__proto__', 'constructor', 'toString'].map((step) => ashdown.write('step-signed', { step })))
  expect([...state.steps.keys()]).toEqual(['__proto__', 'constructor', 'toString'])
})

test('any order of the same entries, with some twice, gives the same state (seeds 1 to 60)', () => {
  for (let seed = 1; seed <= 60; seed += 1) {
    const entries = busyDay(seed, 60)
    const whole = stateOf(entries)
    expect(whole.happened).toHaveLength(61)
    expect(stateOf(shuffled([...entries, ...entries.slice(0, 9)], seed)), `seed ${seed}`).toEqual(whole)
  }
})

test('folding on from a state gives what folding all gives, or says that it cannot (seeds 1 to 60)', () => {
  let on = 0
  for (let seed = 1; seed <= 60; seed += 1) {
    const entries = [...busyDay(seed, 40)].sort(compareEntries)
    for (const cut of [0, 10, 30, 36, 38, 40, 41]) {
      const before = fold('J41', entries.slice(0, cut))
      const kept = structuredClone(before.state)
      const folded = foldOn(before, entries.slice(cut))
      expect(before.state, 'the state that was folded on from stays as it was').toEqual(kept)
      if (!folded) continue
      on += 1
      expect(folded.state, `seed ${seed}, cut ${cut}`).toEqual(stateOf(entries))
      expect(foldOn(folded, [])?.state).toEqual(folded.state)
    }
  }
  expect(on).toBeGreaterThan(150)
})

test('a late entry and a withdrawal of something folded are not folded on', () => {
  const { ashdown } = two()
  const [one, two_, three] = ashdown.notes(3)
  expect(foldOn(fold('J41', [one!, three!]), [two_!])).toBeUndefined()
  expect(foldOn(fold('J41', [one!, two_!]), [ashdown.write('withdrawn', { of: one!.id })])).toBeUndefined()
  expect(foldOn(fold('J41', [one!, two_!]), [three!])?.state.notes).toHaveLength(3)
})

test('who signs one step a thousand times makes a thousand marks, each of a few names, the last among them', () => {
  const { ashdown, tarn } = two()
  const entries = Array.from({ length: 1_000 }, (_, index) =>
    (index % 2 ? ashdown : tarn).write('step-signed', { step: 'cap A' }),
  )
  const { looks, steps } = stateOf(entries)
  expect(steps.get('cap A')!.done).toHaveLength(1_000)
  expect(looks.reduce((sum, look) => sum + look.entries.length, 0)).toBeLessThan(20_001)
  const last = steps.get('cap A')!.done.at(-1)!
  expect(looks.every(({ what, people }) => what === 'signed twice' && people.length === 2)).toBe(true)
  expect(looks.at(-1)!.entries.at(-1)).toBe(last.entry)
})

test('shims that are said later are not in a state that was handed out before', () => {
  const { ashdown } = two()
  const before = fold('J41', [ashdown.write('job-opened', { shims: [{ id: 'S1' }] })])
  const after = foldOn(before, [ashdown.write('job-opened', { owner: 'x', shims: [{ id: 'S2' }] })])!
  expect([[...before.state.opened.shims.keys()], [...after.state.opened.shims.keys()]]).toEqual([['S1'], ['S1', 'S2']])
  expect(before.state.opened.owner).toBeUndefined()
})
