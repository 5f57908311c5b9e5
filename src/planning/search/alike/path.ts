import type { Instance } from '../instance.ts'
import { mayStart } from '../mayStart.ts'

/** Operations in an order that the needs allow: what may not come yet waits until it may. */
export class Path {
  readonly order: number[] = []
  readonly #instance: Instance
  readonly #done: Uint32Array
  readonly #waiting = new Set<number>()

  constructor(instance: Instance) {
    this.#instance = instance
    this.#done = new Uint32Array(instance.words)
  }

  /** Takes in what is news, that which is for the wait last. */
  take(isNews: (op: number) => boolean, isLast: (op: number) => boolean): void {
    const news: number[] = []
    for (let op = 0; op < this.#instance.size; op++) if (isNews(op)) news.push(op)
    for (const last of [false, true]) {
      for (const op of news) if (isLast(op) === last) this.#waiting.add(op)
      for (let again = true; again; ) {
        again = false
        for (const op of this.#waiting) {
          if (!mayStart(this.#instance, op, this.#done, 0)) continue
          this.#waiting.delete(op)
          this.#done[op >>> 5]! |= 1 << (op & 31)
          this.order.push(op)
          again = true
        }
      }
    }
  }
}
