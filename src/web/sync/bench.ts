// The bench as the screens see it: the entries of every job on this device, who stands here, what waits to be sent. A thing put is kept on
// this device before anything else; the network comes after and may come late.
import { nextEntry, type Tail } from '../../journal/chain.ts'
import { latest } from '../../journal/clock.ts'
import type { At, Entry } from '../../journal/entry.ts'
import { compareEntries } from '../../journal/foldOrder.ts'
import type { Journal } from '../../journal/journal.ts'
import { Problem, printProblem } from '../../problem/problem.ts'
import type { Saying } from '../../record/entriesOfJob.ts'
import { decisionIn, mayAs } from '../../record/roles.ts'
import { secondOfSameHand } from '../../record/secondOfSameHand.ts'
import type { DeviceStore } from './deviceStore.ts'
import { draft, keepDraft } from './drafts.ts'
import { Photos, type PhotosState } from './photos.ts'
import { type Me, type Shop, ShopAway, ShopFaulty, ShopRefuses } from './shop.ts'

export interface Contact {
  readonly is: 'not met' | 'in step' | 'away' | 'refused' | 'shop fault' | 'hindered'
  /** When the others were last reached. */
  readonly at_ms?: number
  /** Why the server does not let this device in, what its fault is, or what stands in the way here. */
  readonly says?: string
}

export interface BenchState {
  readonly device: string
  readonly person: string | undefined
  /** Each stream in the order in which it is folded. */
  readonly streams: ReadonlyMap<string, readonly Entry[]>
  /** How many entries of this device wait to be sent, by stream; none where nothing waits. */
  readonly waiting: ReadonlyMap<string, number>
  readonly photos: PhotosState
  readonly contact: Contact
  /** How the shop knows this device; undefined until it was asked. */
  readonly me: Me | undefined
  /** Written here under a name that the shop does not take any more (shut out, enrolled anew): kept, and not sent by itself. */
  readonly left: readonly Entry[]
  /** Unit files by their hash, as far as they are here. */
  readonly units: ReadonlyMap<string, string>
}

interface Given {
  readonly journal: Journal
  readonly store: DeviceStore
  readonly shop: Shop
  readonly makeSmall: (file: Blob) => Promise<Blob>
}

const PAGE = 1000
const SOON_MS = 2_000
const LATE_MS = 30_000
const LOCK = 'matchmark-write'
/** What the facts about entries of an earlier name are kept as. */
const LEFT = 'left'
const AGAIN = 'said again'

const saidOf = (error: unknown): string =>
  error instanceof Problem ? printProblem(error) : error instanceof Error ? error.message : String(error)

const tailKey = ({ stream, device }: Pick<Entry, 'stream' | 'device'>): string => `${stream}\n${device}`

export class Bench {
  readonly photos: Photos
  #state: BenchState
  readonly #given: Given
  readonly #listeners = new Set<() => void>()
  #clock: At | undefined
  /** Stream → how far this store was read. */
  readonly #read = new Map<string, number>()
  readonly #reading = new Map<string, Promise<void>>()
  /** Where each device stands in each stream. */
  readonly #tails = new Map<string, Tail>()
  /** Entries of a name that this device had before, and those of them that were said again since. */
  #leftIds: ReadonlySet<string> = new Set()
  #againIds: ReadonlySet<string> = new Set()
  #round: Promise<void> | undefined
  #again = false
  #timer: ReturnType<typeof setTimeout> | undefined
  #pause_ms = SOON_MS
  #last: Promise<void> = Promise.resolve()

  private constructor(given: Given, state: Omit<BenchState, 'photos'>) {
    this.#given = given
    this.photos = new Photos({ ...given, changed: (photos) => this.#set({ photos }) })
    this.#state = { ...state, photos: this.photos.state }
  }

  /** Opens what this device has. Nothing is asked of the network. */
  static async open(given: Given): Promise<Bench> {
    const { store, journal } = given
    let device = await store.fact<string>('device')
    if (device === undefined) {
      device = crypto.randomUUID()
      await store.keepFact('device', device)
    }
    const at_ms = await store.fact<number>('reached')
    const bench = new Bench(given, {
      device,
      person: draft('person'),
      streams: new Map(),
      waiting: new Map(),
      left: [],
      me: await store.fact<Me>('me'),
      contact: at_ms === undefined ? { is: 'not met' } : { is: 'away', at_ms },
      units: new Map(),
    })
    bench.#leftIds = new Set(await store.fact<string[]>(LEFT))
    bench.#againIds = new Set(await store.fact<string[]>(AGAIN))
    for (const { stream } of await journal.streams()) await bench.#reread(stream)
    await bench.photos.count(bench.#state)
    journal.watch(({ stream }) => void bench.#reread(stream))
    return bench
  }

  // For useSyncExternalStore, which takes them without the object.
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }
  readonly snapshot = (): BenchState => this.#state

  setPerson(person: string | undefined): void {
    keepDraft('person', person)
    this.#set({ person })
  }

  /**
   * Keeps what a person did, all of it or nothing, and sends it when the others can be reached. What the shop would refuse is refused here
   * already: it would stand in the way of all that is said after it.
   *
   * @throws ROLE_MAY_NOT · SECOND_IS_FIRST · the problems of the store; nothing is kept then
   */
  async put(stream: string, said: readonly Saying[]): Promise<void> {
    const { person } = this.#state
    if (person === undefined) throw new Error('assert: nobody is at the bench')
    await this.#write(stream, said, person)
    await this.photos.count(this.#state)
    this.beInStep()
  }

  /**
   * Keeps a photo and, with it, what it is of: both, or neither.
   *
   * @param saying what is said with it, from its hash
   * @throws STORED_FILE_TYPE · STORED_FILE_TOO_LARGE · STORED_FILE_PICTURE · as `put`
   */
  async putPhoto(
    stream: string,
    picture: Blob,
    about: { readonly step?: string; readonly part?: string },
  ): Promise<void> {
    const { drop, ...taken } = await this.photos.keep(picture)
    try {
      await this.put(stream, [{ kind: 'photo', body: { ...taken, about } }])
    } catch (error) {
      await drop().catch(() => undefined)
      throw error
    }
  }

  async #write(stream: string, said: readonly Saying[], person: string): Promise<void> {
    const { journal } = this.#given
    const { device } = this.#state
    const mayNot = this.mayNot(said, person)
    if (mayNot) throw mayNot
    await this.#alone(async () => {
      // Another tab of this device may have written meanwhile.
      await this.#reread(stream)
      let tail = this.#tails.get(tailKey({ stream, device }))
      const entries = said.map(({ kind, body }) => {
        const made = nextEntry(
          { id: crypto.randomUUID(), stream, kind, body: body as never, person, device },
          { tail, clock: this.#clock, now_ms: Date.now() },
        )
        tail = made.tail
        this.#clock = made.clock
        return made.entry
      })
      const same = secondOfSameHand(stream, this.#state.streams.get(stream) ?? [], entries)
      if (same) throw new Problem('SECOND_IS_FIRST', same)
      await journal.put(entries)
    })
    await this.#reread(stream)
  }

  /** Why somebody of this role leaves it to another. At the server's own machine nobody has a role. */
  mayNot(said: readonly Saying[], person: string): Problem | undefined {
    const { me } = this.#state
    const role = me?.device ? me.people.find(({ name }) => name === person)?.role : undefined
    if (role === undefined || mayAs(role, 'rebuilder')) return undefined
    const what = said.map(decisionIn).find((one) => one !== null)
    return what ? new Problem('ROLE_MAY_NOT', { person, role: `a ${role}`, what, wants: 'rebuilder' }) : undefined
  }

  /** The text of a unit; it is asked of the shop where it is not here. Undefined: not to be had now. */
  async unitText(hash: string): Promise<string | undefined> {
    const { store, shop } = this.#given
    const here = this.#state.units.get(hash)
    if (here !== undefined) return here
    let file = await store.file(hash)
    if (!file) {
      try {
        file = await shop.unit(hash)
      } catch {
        return undefined
      }
      await store.keepFiles(new Map([[hash, file]]))
    }
    const text = await file.text()
    this.#set({ units: new Map(this.#state.units).set(hash, text) })
    return text
  }

  /** Sends what waits and fetches what is new, now and as long as the page lives. */
  stayInStep(): () => void {
    const go = () => this.beInStep()
    const stop = this.#given.shop.watch({
      grown: go,
      opened: go,
      lost: () => this.#state.contact.is === 'in step' && go(),
    })
    const seen = () => document.visibilityState === 'visible' && go()
    window.addEventListener('online', go)
    document.addEventListener('visibilitychange', seen)
    go()
    return () => {
      stop()
      clearTimeout(this.#timer)
      window.removeEventListener('online', go)
      document.removeEventListener('visibilitychange', seen)
    }
  }

  /** One round with the shop; asked for while one is under way, another follows it. */
  beInStep(): void {
    clearTimeout(this.#timer)
    if (this.#round) {
      this.#again = true
      return
    }
    this.#round = this.#oneRound().finally(() => {
      this.#round = undefined
      if (this.#again) {
        this.#again = false
        this.beInStep()
      }
    })
  }

  async #oneRound(): Promise<void> {
    try {
      await this.#introduce()
      const listed = await this.#given.shop.jobs()
      const inTheWay = new Map<string, ShopRefuses>()
      for (const stream of this.#state.waiting.keys()) {
        try {
          await this.#send(stream)
        } catch (error) {
          if (!(error instanceof ShopRefuses) || error.code !== 'SECOND_IS_FIRST') throw error
          inTheWay.set(stream, error)
        }
      }
      for (const { job, position } of listed) await this.#fetch(job, position)
      for (const [stream, refused] of inTheWay) await this.#takeBackSeconds(stream, refused)
      const at_ms = Date.now()
      await this.#given.store.keepFact('reached', at_ms)
      this.#pause_ms = SOON_MS
      this.#contact({ is: 'in step', at_ms })
      this.photos.inStep(() => this.#state)
      this.#later(LATE_MS)
    } catch (error) {
      if (error instanceof ShopRefuses) this.#contact({ is: 'refused', says: error.message })
      else if (error instanceof ShopFaulty) this.#contact({ is: 'shop fault', says: error.message })
      else if (error instanceof ShopAway) this.#contact({ is: 'away' })
      // The disk of this device, or an entry of its own: what is here stays here, and the shop still has the rest.
      else this.#contact({ is: 'hindered', says: saidOf(error) })
      this.#pause_ms = Math.min(this.#pause_ms * 2, LATE_MS)
      this.#later(this.#pause_ms)
    }
  }

  /** An enrolled device writes under the name that the shop gave it. */
  async #introduce(): Promise<void> {
    const { store, shop } = this.#given
    const me = await shop.me()
    await store.keepFact('me', me)
    this.#set({ me })
    if (me.device === null || me.device === this.#state.device) return
    await this.#leave()
    await store.keepFact('device', me.device)
    this.#set({ device: me.device })
    for (const stream of this.#state.streams.keys()) await this.#countWaiting(stream)
  }

  /** What this device wrote under its name so far and the shop never took stays known, so that it is not lost with the name. */
  async #leave(): Promise<void> {
    const ids = new Set(this.#leftIds)
    for (const stream of this.#state.streams.keys()) {
      const sent = await this.#sent(stream)
      for (const { id, seq } of this.#own(stream)) if (seq > sent) ids.add(id)
    }
    await this.#given.store.keepFact(LEFT, [...ids])
    this.#leftIds = ids
  }

  /**
   * Says again, under the name that the shop knows this device by now, what was left under an earlier one. Each keeps who did it; when it
   * was said is now.
   *
   * @throws the problems of the store; what is left stays left then
   */
  async sayAgain(): Promise<void> {
    const { journal, store } = this.#given
    const { device, left } = this.#state
    const ids = new Map<string, string>()
    await this.#alone(async () => {
      for (const stream of new Set(left.map((entry) => entry.stream))) {
        await this.#reread(stream)
        let tail = this.#tails.get(tailKey({ stream, device }))
        const entries = left
          .filter((entry) => entry.stream === stream)
          .map(({ id: was, kind, body, person }) => {
            const id = crypto.randomUUID()
            ids.set(was, id)
            const of = kind === 'withdrawn' ? ids.get(body.of) : undefined
            const said = of === undefined ? body : { ...body, of }
            const made = nextEntry(
              { id, stream, kind, body: said as never, person, device },
              { tail, clock: this.#clock, now_ms: Date.now() },
            )
            tail = made.tail
            this.#clock = made.clock
            return made.entry
          })
        await journal.put(entries)
      }
      this.#againIds = new Set([...this.#againIds, ...ids.keys()])
      this.#leftIds = new Set()
      await store.keepFact(AGAIN, [...this.#againIds])
      await store.keepFact(LEFT, [])
    })
    for (const [stream, entries] of this.#state.streams) {
      const rest = entries.filter(({ id }) => !this.#againIds.has(id))
      this.#set({ streams: new Map(this.#state.streams).set(stream, rest) })
      await this.#reread(stream)
    }
    this.beInStep()
  }

  /** @throws ShopRefuses · ShopAway */
  async enrol(code: string, called: string): Promise<void> {
    await this.#given.shop.enrol(code, called)
    await this.#introduce()
    this.beInStep()
  }

  /** Where the shop asks for a PIN: whoever signs in here writes here from now on. @throws ShopRefuses · ShopAway */
  async signIn(person: string, pin: string): Promise<void> {
    await this.#given.shop.signIn(person, pin)
    this.setPerson(person)
    await this.#introduce()
    this.beInStep()
  }

  /**
   * A second signature was given here in good faith, and meanwhile the shop has learned that the same person did the step: it is taken back,
   * by its own giver, so that it does not stand in the way. It stays to be seen.
   */
  async #takeBackSeconds(stream: string, refused: ShopRefuses): Promise<void> {
    const entries = this.#state.streams.get(stream) ?? []
    const sent = await this.#sent(stream)
    const isOurs = ({ device, seq }: Entry) => device === this.#state.device && seq > sent
    let isTaken = false
    for (const second of entries.filter((entry) => isOurs(entry) && entry.kind === 'step-signed')) {
      const others = entries.filter(({ id }) => id !== second.id)
      if (!secondOfSameHand(stream, others, [second])) continue
      isTaken = true
      await this.#write(stream, [{ kind: 'withdrawn', body: { of: second.id, why: refused.message } }], second.person)
    }
    if (!isTaken) throw refused
    this.#again = true
  }

  #later(pause_ms: number): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.beInStep(), pause_ms)
  }

  /** What of this device the shop does not have yet goes out; a number kept here says how far it has it. */
  async #send(stream: string): Promise<void> {
    const sent = await this.#sent(stream)
    const own = this.#own(stream).filter(({ seq }) => seq > sent)
    for (let at = 0; at < own.length; at += PAGE) {
      const part = own.slice(at, at + PAGE)
      await this.#given.shop.send(part)
      await this.#given.store.keepFact(this.#sentKey(stream), part.at(-1)?.seq)
    }
    await this.#countWaiting(stream)
  }

  /** @param last where the shop's own last entry of this stream stands */
  async #fetch(stream: string, last: number): Promise<void> {
    const { journal, store, shop } = this.#given
    const key = `read ${stream}`
    let after = (await store.fact<number>(key)) ?? 0
    if (last < after) {
      // The shop was set back to an older copy: both sides say again all that they have.
      await store.keepFact(key, 0)
      await store.keepFact(this.#sentKey(stream), 0)
      await this.photos.sayAgain(this.#state.streams.get(stream) ?? [], this.#state.device)
      await this.#countWaiting(stream)
      await this.photos.count(this.#state)
      this.#again = true
      return
    }
    for (;;) {
      const { entries, position } = await shop.read(stream, after, PAGE)
      if (entries.length > 0) {
        await journal.put(entries.map(({ entry }) => entry))
        await this.#reread(stream)
      }
      await store.keepFact(key, position)
      if (position === after || entries.length === 0) break
      after = position
    }
    const adopted = this.#state.streams.get(stream)?.findLast((entry) => entry.kind === 'unit-adopted')
    if (adopted?.kind === 'unit-adopted') await this.unitText(adopted.body.unit)
  }

  /** Takes in what has come to a stream since it was read last; one reading of a stream after the other. */
  #reread(stream: string): Promise<void> {
    const reading = (this.#reading.get(stream) ?? Promise.resolve()).then(() => this.#readOn(stream))
    this.#reading.set(
      stream,
      reading.catch(() => undefined),
    )
    return reading
  }

  async #readOn(stream: string): Promise<void> {
    const fresh: Entry[] = []
    let after = this.#read.get(stream) ?? 0
    for (;;) {
      const { entries, position } = await this.#given.journal.read(stream, { after, limit: PAGE })
      for (const { entry, hash } of entries) {
        if (!this.#againIds.has(entry.id)) fresh.push(entry)
        this.#clock = latest(this.#clock, entry.at)
        const key = tailKey(entry)
        if (entry.seq > (this.#tails.get(key)?.seq ?? 0)) this.#tails.set(key, { seq: entry.seq, hash })
      }
      after = position
      if (entries.length < PAGE) break
    }
    this.#read.set(stream, after)
    if (fresh.length > 0) {
      const entries = [...(this.#state.streams.get(stream) ?? []), ...fresh].sort(compareEntries)
      this.#set({ streams: new Map(this.#state.streams).set(stream, entries) })
    }
    await this.#countWaiting(stream)
  }

  #own = (stream: string): readonly Entry[] =>
    (this.#state.streams.get(stream) ?? [])
      .filter(({ device }) => device === this.#state.device)
      .sort((a, b) => a.seq - b.seq)

  /** The numbers of a device are its own: under another name they begin anew. */
  #sentKey = (stream: string): string => `sent ${stream} ${this.#state.device}`
  #sent = async (stream: string): Promise<number> => (await this.#given.store.fact<number>(this.#sentKey(stream))) ?? 0

  async #countWaiting(stream: string): Promise<void> {
    const sent = await this.#sent(stream)
    const left = (this.#state.streams.get(stream) ?? []).filter(({ id }) => this.#leftIds.has(id))
    const count = this.#own(stream).filter(({ seq }) => seq > sent).length + left.length
    const waiting = new Map(this.#state.waiting)
    if (count > 0) waiting.set(stream, count)
    else waiting.delete(stream)
    this.#set({ waiting, left: [...this.#state.left.filter((entry) => entry.stream !== stream), ...left] })
  }

  #contact(contact: Contact): void {
    const { at_ms } = this.#state.contact
    this.#set({ contact: { ...(at_ms !== undefined && { at_ms }), ...contact } })
  }

  #set(change: Partial<BenchState>): void {
    this.#state = { ...this.#state, ...change }
    for (const listener of this.#listeners) listener()
  }

  /** One hand and one tab of this device at a time: its entries are numbered. */
  #alone(write: () => Promise<void>): Promise<void> {
    const turn = this.#last.then(() => (globalThis.navigator?.locks ? navigator.locks.request(LOCK, write) : write()))
    this.#last = turn.catch(() => undefined)
    return turn
  }
}
