// One typed value of a file together with its path, so that whatever is wrong with it can be told at its place.
import type { ProblemCode } from '../../problem/catalogue.ts'
import type { Facts } from '../../problem/facts.ts'
import type { At } from '../model/unit.ts'
import type { Page, Path } from './page.ts'

type Given<T> = Exclude<T, undefined | null>

export class Item<T> {
  readonly page: Page
  readonly path: Path
  readonly value: T

  constructor(page: Page, path: Path, value: T) {
    this.page = page
    this.path = path
    this.value = value
  }

  get<K extends keyof Given<T> & string>(key: K): Item<Given<T>[K] | undefined> {
    const block = this.value as Record<string, unknown> | null | undefined
    return new Item(this.page, [...this.path, key], block?.[key] as Given<T>[K] | undefined)
  }

  /** The entries of a block of names. */
  entries(): [name: string, item: Item<Given<T>[keyof Given<T>]>][] {
    const block = (this.value ?? {}) as Record<string, Given<T>[keyof Given<T>]>
    return Object.keys(block).map((key) => [key, new Item(this.page, [...this.path, key], block[key]!)])
  }

  /** Its members; one thing that stands without a list is a list of one. */
  list(): Item<Given<T> extends readonly (infer Member)[] ? Member : Exclude<Given<T>, readonly unknown[]>>[] {
    type Member = Given<T> extends readonly (infer M)[] ? M : Exclude<Given<T>, readonly unknown[]>
    const { value } = this
    if (value === undefined || value === null) return []
    if (!Array.isArray(value)) return [new Item(this.page, this.path, value as unknown as Member)]
    return value.flatMap((member, index) =>
      member === null ? [] : [new Item(this.page, [...this.path, index], member as Member)],
    )
  }

  get given(): boolean {
    return this.value !== undefined && this.value !== null
  }

  /** As it was written: a part number `0042` keeps its noughts. */
  text(): string | undefined {
    return this.given ? this.page.text(this.path) : undefined
  }

  /** The last name in its path. */
  get key(): string {
    return String(this.path.findLast((step) => typeof step === 'string') ?? 'this file')
  }

  get at(): At {
    const { line, column } = this.page.namePlace(this.path)
    return { line, column }
  }

  /** Where the value itself stands. */
  get valueAt(): At {
    const { line, column } = this.page.place(this.path)
    return { line, column }
  }

  fault(code: ProblemCode, facts: Facts = {}, letter?: number): void {
    this.page.fault(code, { key: this.key, ...facts }, this.page.place(this.path, letter))
  }
}
