// Who wants to know when a stream grows.
export type Change = { readonly stream: string; readonly position: number }
type Listener = (change: Change) => void

/** The watchers of one open store. A watcher that throws does not keep the others from being told. */
export class Watchers {
  readonly #listeners = new Set<Listener>()

  get any(): boolean {
    return this.#listeners.size > 0
  }

  add(listener: Listener): () => void {
    // Wrapped, so that one function may watch twice and stop once.
    const own: Listener = (change) => listener(change)
    this.#listeners.add(own)
    return () => this.#listeners.delete(own)
  }

  /** Tells the last position of each stream once. */
  tell(changes: Iterable<Change>): void {
    const last = new Map<string, number>()
    for (const { stream, position } of changes) last.set(stream, Math.max(position, last.get(stream) ?? 0))
    for (const [stream, position] of last) {
      for (const listener of this.#listeners) {
        try {
          listener({ stream, position })
        } catch {
          // A fault of the watcher; the store has done its part.
        }
      }
    }
  }
}
