// What the page of the browser tests offers: the record that a browser keeps, asked by the tests through numbers.
import type { Journal } from '../../journal/journal.ts'
import { Problem } from '../../problem/problem.ts'
import { browserJournal } from '../browser/browserJournal.ts'

const opened: Journal[] = []

/** Told to the tests: a watcher's call. */
declare const toldInPage: (handle: number, change: unknown) => Promise<void>

const page = {
  async open(name: string): Promise<number> {
    const journal = await browserJournal(name)
    const handle = opened.push(journal) - 1
    journal.watch((change) => void toldInPage(handle, change))
    return handle
  },
  /** Given as JSON text: the bridge into the page drops keys such as `__proto__`. The answer, or the problem with its code and facts: an error does not come out of a page whole. */
  async ask(handle: number, verb: 'put' | 'read' | 'heads' | 'streams' | 'close', given: string) {
    try {
      const journal = opened[handle]!
      return { answer: await (journal[verb] as (...all: readonly unknown[]) => Promise<unknown>)(...JSON.parse(given)) }
    } catch (error) {
      if (error instanceof Problem) return { code: error.code, facts: error.facts }
      throw error
    }
  },
}
Object.assign(globalThis, { page })
export type InPage = typeof page
