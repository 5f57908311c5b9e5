// One run of the merge fuzz: devices that were apart, a network that drops, repeats and reorders, and what each has in the end.
import { canonicalForm } from '../../journal/canonicalForm.ts'
import type { Entry } from '../../journal/entry.ts'
import type { Journal, StoredEntry } from '../../journal/journal.ts'
import { memoryJournal } from '../../stores/memory/memoryJournal.ts'
import { readAll } from '../../stores/testing/readAll.ts'
import { shuffled } from '../../stores/testing/shuffled.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { fold } from '../fold.ts'

/** A sequence of numbers that the seed decides. */
function dice(seed: number): (below: number) => number {
  let state = Math.imul(seed, 2654435761) >>> 0
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state >>> 8) % below
  }
}

interface Device {
  readonly writer: Writer
  readonly own: Journal
  /** What it has written and has no receipt for. */
  readonly waiting: Map<string, Entry>
  /** Where it reads on in the shop's journal. */
  after: number
}

/** A state as one text, to compare by. Stores differ in the order of keys, which says nothing. */
function printed(stream: string, stored: readonly StoredEntry[]): string {
  const { state } = fold(
    stream,
    stored.map(({ entry }) => entry),
  )
  return canonicalForm(JSON.parse(JSON.stringify(state, (_, value) => (value instanceof Map ? [...value] : value))))
}

/**
 * Devices write and send to the shop over a bad network; at last the network is good.
 *
 * @returns what went wrong; nothing when every device and the shop have every entry and the same state
 */
export async function mergeRun(seed: number, shop: Journal, stream = `J${seed}`): Promise<string | undefined> {
  const next = dice(seed)
  const devices: Device[] = Array.from({ length: 2 + next(4) }, (_, index) => ({
    writer: new Writer(`device ${index}`, stream, `person ${next(3)}`),
    own: memoryJournal(),
    waiting: new Map(),
    after: 0,
  }))
  const written: Entry[] = []

  async function write(device: Device): Promise<void> {
    device.writer.now_ms += next(8000) - 4000
    const target = written.length > 0 && next(4) === 0 ? written[next(written.length)] : undefined
    const known = target && (await device.own.read(stream)).entries.some(({ entry }) => entry.id === target.id)
    const step = `step ${next(3)}`
    const entry =
      target && known
        ? device.writer.write('withdrawn', { of: target.id })
        : next(3) === 0
          ? device.writer.write('reading', {
              part: 'shaft',
              feature: step,
              reads: { low: next(9), high: 9, standing: 'seen' },
            })
          : device.writer.write('step-signed', { step })
    written.push(entry)
    device.waiting.set(entry.id, entry)
    await device.own.put([entry])
  }

  /** @param bad of 10 messages, so many are lost on the way, and so many receipts on the way back */
  async function send(device: Device, bad: number): Promise<void> {
    const all = shuffled([...device.waiting.values()], next(1e9))
    const some = bad > 0 ? all.slice(0, 1 + next(all.length || 1)) : all
    if (some.length === 0 || next(10) < bad) return
    const receipts = await shop.put(next(3) === 0 ? [...some, ...some] : some)
    if (next(10) < bad) return
    for (const { id } of receipts) device.waiting.delete(id)
  }

  async function fetch(device: Device, bad: number): Promise<void> {
    const { entries, position } = await shop.read(stream, {
      after: next(10) < bad ? 0 : device.after,
      limit: bad > 0 ? 3 : 1000,
    })
    if (next(10) < bad) return
    const came = shuffled(entries, next(1e9)).map(({ entry }) => entry)
    await device.own.put(came)
    for (const entry of came) device.writer.see(entry)
    device.after = Math.max(device.after, position)
  }

  const moves = 8 + next(14)
  for (let move = 0; move < moves; move += 1) {
    const device = devices[next(devices.length)]!
    const what = next(5)
    if (what < 2) await write(device)
    else if (what < 4) await send(device, 3)
    else await fetch(device, 3)
  }
  for (const device of devices) await send(device, 0)
  for (const device of devices) await fetch(device, 0)

  const expected = written.map(({ id }) => id).sort()
  const atShop = await readAll(shop, stream, 1000)
  for (const [name, stored] of [
    ['the shop', atShop] as const,
    ...(await Promise.all(
      devices.map(async (one) => [one.writer.device, await readAll(one.own, stream, 1000)] as const),
    )),
  ]) {
    const ids = stored.map(({ entry }) => entry.id).sort()
    if (ids.join() !== expected.join()) return `seed ${seed}: ${name} has ${ids.length} of ${expected.length} entries`
    if (printed(stream, stored) !== printed(stream, atShop))
      return `seed ${seed}: ${name} has another state than the shop`
  }
  const heads = await shop.heads(stream)
  const writers = devices.filter(({ writer }) => writer.tail)
  if (heads.length !== writers.length) return `seed ${seed}: ${heads.length} heads of ${writers.length} devices`
  return undefined
}
