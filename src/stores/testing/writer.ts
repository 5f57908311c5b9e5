// A device for tests: it writes a chain, with ids and a clock that a seed decides.
import { nextEntry, type Tail } from '../../journal/chain.ts'
import { latest } from '../../journal/clock.ts'
import type { At, Body, Entry, Kind } from '../../journal/entry.ts'

export class Writer {
  readonly device: string
  readonly stream: string
  readonly person: string
  tail: Tail | undefined
  clock: At | undefined
  now_ms = 1_795_000_000_000
  #count = 0

  constructor(device: string, stream = 'J41', person = 'M. Ashdown') {
    this.device = device
    this.stream = stream
    this.person = person
  }

  write<K extends Kind>(kind: K, body: Body<K>): Entry {
    this.#count += 1
    this.now_ms += 1000
    const { entry, tail, clock } = nextEntry(
      {
        id: uuidOf(`${this.device} ${this.stream} ${this.#count}`),
        stream: this.stream,
        kind,
        body,
        person: this.person,
        device: this.device,
      },
      { tail: this.tail, clock: this.clock, now_ms: this.now_ms },
    )
    this.tail = tail
    this.clock = clock
    return entry
  }

  note(says: string): Entry {
    return this.write('note', { says })
  }

  notes(count: number): readonly Entry[] {
    return Array.from({ length: count }, (_, index) => this.note(`note ${index + 1}`))
  }

  /** Sees another device's entry. */
  see({ at }: Entry): void {
    this.clock = latest(this.clock, at)
  }
}

/** A UUID made from a text: the same each time. FNV-1a, four times over. */
export function uuidOf(text: string): string {
  const words = [0, 1, 2, 3].map((salt) => {
    let hash = 0x811c9dc5 ^ salt
    for (const letter of `${salt}${text}`) hash = Math.imul(hash ^ letter.codePointAt(0)!, 0x01000193)
    return (hash >>> 0).toString(16).padStart(8, '0')
  })
  const hex = words.join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`
}
