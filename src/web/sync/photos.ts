// The photos of this device: kept here first, sent when the shop is reached, the others' fetched small. Apart from the entries, so that a large
// picture on a poor line holds up no signature.
import type { Entry } from '../../journal/entry.ts'
import { Problem } from '../../problem/problem.ts'
import { photosNamed } from '../../record/filesNamed.ts'
import { mustBePicture, type PictureType } from '../../stores/files/pictures.ts'
import type { DeviceStore } from './deviceStore.ts'
import { type Shop, ShopAway, ShopRefuses } from './shop.ts'

export interface PhotosState {
  /** Photos of this device that the shop does not have yet, by stream; none where none wait. */
  readonly waiting: ReadonlyMap<string, number>
  /** Those that the shop does not take, by their hash, and why. They stay here. */
  readonly refused: ReadonlyMap<string, string>
  /** Grows whenever a picture has come. */
  readonly come: number
}

/** A photo that is kept on this device. */
export interface Taken {
  readonly file: string
  readonly type: PictureType
  readonly size: number
}

interface Given {
  readonly store: DeviceStore
  readonly shop: Shop
  /** On the device alone: a browser makes it. */
  readonly makeSmall: (file: Blob) => Promise<Blob>
  readonly changed: (state: PhotosState) => void
}

interface Round {
  readonly streams: ReadonlyMap<string, readonly Entry[]>
  readonly device: string
}

const smallKey = (hash: string): string => `small ${hash}`
const sentKey = (hash: string): string => `sent file ${hash}`

/** What a shop says of a file itself, and will say again. */
const FOR_GOOD: readonly number[] = [400, 413, 415, 422]
/** First bytes, enough to know a picture. */
const HEAD = 16
const AGAIN_MS = 60_000
const AGAIN_AT_MOST_MS = 3_600_000

export class Photos {
  #state: PhotosState = { waiting: new Map(), refused: new Map(), come: 0 }
  readonly #given: Given
  readonly #sent = new Set<string>()
  /** Small pictures that the shop did not have when it was asked: when to ask again, and after how long then. */
  readonly #missed = new Map<string, { readonly at_ms: number; readonly pause_ms: number }>()
  readonly #here = new Set<string>()
  #round: Promise<void> | undefined

  constructor(given: Given) {
    this.#given = given
  }

  get state(): PhotosState {
    return this.#state
  }

  /**
   * Keeps a photo on this device. It belongs to nothing until an entry names it; where that cannot be kept, `drop` it again.
   *
   * @throws STORED_FILE_TYPE · STORED_FILE_TOO_LARGE · STORED_FILE_PICTURE · STORE_FULL
   */
  async keep(picture: Blob): Promise<Taken & { readonly drop: () => Promise<void> }> {
    const { store, makeSmall } = this.#given
    // What it is comes first: a film of four gigabytes is not read to learn that it is none.
    const type = mustBePicture(new Uint8Array(await picture.slice(0, HEAD).arrayBuffer()), picture.size)
    const bytes = await picture.arrayBuffer()
    const file = await hashOf(bytes)
    const small = await makeSmall(picture)
    const isNew = (await store.file(file)) === undefined
    // The bytes, not the camera's file: that may be gone when it is sent.
    await store.keepFiles(
      new Map([
        [file, new Blob([bytes], { type })],
        [smallKey(file), small],
      ]),
    )
    const drop = async () => {
      if (isNew) await store.dropFiles([file, smallKey(file)])
    }
    return { file, type, size: bytes.byteLength, drop }
  }

  /** A picture to look at; undefined where it is not here and cannot be had now. */
  async picture(hash: string, size: 'small' | 'whole'): Promise<Blob | undefined> {
    const { store, shop } = this.#given
    const here = await store.file(size === 'small' ? smallKey(hash) : hash)
    if (here) return here
    try {
      const file = await shop.picture(hash, size)
      if (size === 'small') await store.keepFiles(new Map([[smallKey(hash), file]])).catch(() => undefined)
      return file
    } catch {
      return undefined
    }
  }

  /** Counts anew what waits. */
  async count(round: Round): Promise<void> {
    const waiting = new Map<string, number>()
    for (const [stream, entries] of round.streams) {
      let count = 0
      for (const hash of ownIn(entries, round.device)) {
        // Where its bytes are not (swept away, or on another device of this name) nothing can be sent.
        if (!(await this.#isSent(hash)) && (await this.#given.store.file(hash))) count += 1
      }
      if (count > 0) waiting.set(stream, count)
    }
    this.#set({ waiting })
  }

  /** Sends what waits and fetches what is not here; asked for while that goes on, it does nothing. */
  inStep(round: () => Round): void {
    this.#round ??= this.#go(round)
      .catch((error: unknown) => {
        // Away, full or refused: the next round tries again.
        if (!(error instanceof ShopAway || error instanceof ShopRefuses || error instanceof Problem)) throw error
      })
      .finally(() => {
        this.#round = undefined
      })
  }

  /** The shop was set back to an older copy: all photos of the stream are sent again. */
  async sayAgain(entries: readonly Entry[], device: string): Promise<void> {
    for (const hash of ownIn(entries, device)) {
      this.#sent.delete(hash)
      await this.#given.store.keepFact(sentKey(hash), false)
    }
  }

  async #go(round: () => Round): Promise<void> {
    await this.#send(round)
    for (const entries of round().streams.values()) {
      for (const entry of entries.toReversed()) for (const hash of photosNamed(entry)) await this.#fetch(hash)
    }
  }

  async #send(round: () => Round): Promise<void> {
    const { store, shop } = this.#given
    const { streams, device } = round()
    for (const entries of streams.values()) {
      for (const hash of ownIn(entries, device)) {
        if ((await this.#isSent(hash)) || this.#state.refused.has(hash)) continue
        const file = await store.file(hash)
        if (!file) continue
        try {
          await shop.putFile(hash, file)
        } catch (error) {
          if (!(error instanceof ShopRefuses) || !FOR_GOOD.includes(error.status)) throw error
          this.#set({ refused: new Map(this.#state.refused).set(hash, error.message) })
          continue
        }
        await store.keepFact(sentKey(hash), true)
        this.#sent.add(hash)
        await this.count(round())
      }
    }
  }

  async #fetch(hash: string): Promise<void> {
    const { store, shop } = this.#given
    if (this.#here.has(hash)) return
    if (await store.file(smallKey(hash))) {
      this.#here.add(hash)
      return
    }
    const missed = this.#missed.get(hash)
    if (missed && Date.now() < missed.at_ms) return
    try {
      await store.keepFiles(new Map([[smallKey(hash), await shop.picture(hash, 'small')]]))
    } catch (error) {
      if (!(error instanceof ShopRefuses) || error.status !== 404) throw error
      // Its device has not sent it yet.
      const pause_ms = Math.min((missed?.pause_ms ?? AGAIN_MS / 2) * 2, AGAIN_AT_MOST_MS)
      this.#missed.set(hash, { at_ms: Date.now() + pause_ms, pause_ms })
      return
    }
    this.#here.add(hash)
    this.#set({ come: this.#state.come + 1 })
  }

  async #isSent(hash: string): Promise<boolean> {
    if (this.#sent.has(hash)) return true
    const isSent = (await this.#given.store.fact<boolean>(sentKey(hash))) === true
    if (isSent) this.#sent.add(hash)
    return isSent
  }

  #set(change: Partial<PhotosState>): void {
    this.#state = { ...this.#state, ...change }
    this.#given.changed(this.#state)
  }
}

/** Hashes of the photos that this device took, each once. */
const ownIn = (entries: readonly Entry[], device: string): ReadonlySet<string> =>
  new Set(entries.filter((entry) => entry.device === device).flatMap(photosNamed))

/** SHA-256 in hexadecimal, by the browser's own hand: a large photo stops no finger. @source FIPS 180-4 */
async function hashOf(bytes: ArrayBuffer): Promise<string> {
  const hash = await crypto.subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
