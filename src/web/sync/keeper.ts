// The service worker that keeps the app on this device. A newer one waits until a person takes it: no sheet changes under a hand.

export interface Kept {
  /** Everything is here that is needed to start without a network. */
  readonly isReady: boolean
  readonly isNewer: boolean
}

export class Keeper {
  #state: Kept = { isReady: false, isNewer: false }
  #registration: ServiceWorkerRegistration | undefined
  readonly #listeners = new Set<() => void>()

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }
  readonly snapshot = (): Kept => this.#state

  /** Where there is none (an old browser, plain http from another machine) the app works as long as it is open. */
  async keep(): Promise<void> {
    if (!('serviceWorker' in navigator)) return
    try {
      const registration = await navigator.serviceWorker.register('/sw.js')
      this.#registration = registration
      if (registration.waiting) this.#set({ isNewer: true })
      registration.addEventListener('updatefound', () => {
        const coming = registration.installing
        coming?.addEventListener('statechange', () => {
          if (coming.state === 'installed' && navigator.serviceWorker.controller) this.#set({ isNewer: true })
        })
      })
      await navigator.serviceWorker.ready
      this.#set({ isReady: true })
      // Asked so that the browser does not sweep the journal away when the disk runs low.
      await navigator.storage?.persist?.()
    } catch {
      // It could not be kept: told by isReady.
    }
  }

  takeNewer(): void {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
    this.#registration?.waiting?.postMessage({ type: 'SKIP_WAITING' })
  }

  #set(change: Partial<Kept>): void {
    this.#state = { ...this.#state, ...change }
    for (const listener of this.#listeners) listener()
  }
}
