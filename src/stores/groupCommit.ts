// Puts that come together are kept together: one commit, one wait for the disk.

interface Waiting<Job, Answer> {
  readonly job: Job
  readonly resolve: (answer: Answer) => void
  readonly reject: (reason: unknown) => void
}

export type Outcome<Answer> = { readonly answer: Answer } | { readonly problem: unknown }

type Write<Job, Answer> = (jobs: readonly Job[]) => Promise<readonly Outcome<Answer>[]> | readonly Outcome<Answer>[]

/**
 * Collects jobs while the one before is being written, and hands them over as one group.
 *
 * @param write writes a group durably; an outcome for each job, in order. When it throws, every job of the group has failed.
 * @param most jobs in one group
 */
export class GroupCommit<Job, Answer> {
  readonly #write: Write<Job, Answer>
  readonly #most: number
  #waiting: Waiting<Job, Answer>[] = []
  #running: Promise<void> | undefined

  constructor(write: Write<Job, Answer>, most = 500) {
    this.#write = write
    this.#most = most
  }

  add(job: Job): Promise<Answer> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ job, resolve, reject })
      this.#running ??= this.#run()
    })
  }

  /** When all that was added is written or has failed. */
  async idle(): Promise<void> {
    await this.#running
  }

  async #run(): Promise<void> {
    while (this.#waiting.length > 0) {
      // Requests that have arrived already are let in first.
      await new Promise((go) => setImmediate(go))
      const group = this.#waiting.splice(0, this.#most)
      try {
        const outcomes = await this.#write(group.map(({ job }) => job))
        group.forEach(({ resolve, reject }, index) => {
          const outcome = outcomes[index]!
          if ('answer' in outcome) resolve(outcome.answer)
          else reject(outcome.problem)
        })
      } catch (error) {
        for (const { reject } of group) reject(error)
      }
    }
    this.#running = undefined
  }
}
