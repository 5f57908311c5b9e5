// A day at three benches, made from a seed.
import type { Entry } from '../../journal/entry.ts'
import { Writer } from '../../stores/testing/writer.ts'

/** Entries of three devices that see each other now and then, with withdrawals, forks and every kind of quarrel. */
export function busyDay(seed: number, count: number): readonly Entry[] {
  let state = seed
  const next = (below: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state >>> 8) % below
  }
  const writers = ['tablet', 'laptop', 'phone'].map((device, index) => new Writer(device, 'J41', `person ${index % 2}`))
  const all: Entry[] = []
  for (let made = 0; made < count; made += 1) {
    const writer = writers[next(3)]!
    writer.now_ms += next(5000) - 2000
    const old = all[next(all.length || 1)]
    if (old && next(3) === 0) writer.see(all[all.length - 1]!)
    const step = `step ${next(4)}`
    const choices = [
      () => writer.write('step-started', { step }),
      () => writer.write('step-signed', { step, as: (['done', 'second', 'undone', 'recheck'] as const)[next(4)]! }),
      () =>
        writer.write('reading', {
          part: 'shaft',
          feature: `seat ${next(2)}`,
          reads: { low: next(99), high: 100, standing: 'seen' },
        }),
      () =>
        writer.write('part-seen', { part: 'cone', where: `tray ${next(5)}`, decision: next(2) ? 'renew' : 'reuse' }),
      () => writer.write('sequence-adopted', { steps: [{ step }], ...(old && { from: old.id }) }),
      () => (old ? writer.write('withdrawn', { of: old.id }) : writer.note('first')),
      () => (old ? writer.write('finding', { says: 'that one', rules: old.id }) : writer.note('first')),
      () => writer.write('job-opened', { owner: `owner ${next(3)}`, shims: [{ id: `S${next(3)}` }] }),
    ]
    all.push(choices[next(choices.length)]!())
  }
  const twin = all[2]!
  return [...all, { ...twin, id: `99999999-9999-4999-8999-${String(seed).padStart(12, '0')}` } as Entry]
}
