// What a job's entries add up to. Plain data; every fact names the entry it came from.
import type { At, Body, Kind } from '../journal/entry.ts'

/** Who said it, and when. */
export interface Said {
  readonly entry: string
  readonly person: string
  readonly device: string
  readonly at: At
}

/** A body as it was said. */
export type Fact<K extends Kind> = Said & Body<K>

export interface PartState {
  readonly part: string
  /** Where it is now, as last said. */
  readonly where?: string
  /** In the order they were said. */
  readonly conditions: readonly (Said & { readonly condition: string; readonly when?: 'found' | 'left' })[]
  readonly decision?: Said & { readonly decision: 'reuse' | 'repair' | 'renew'; readonly why?: string }
  /** What came in for it. */
  readonly in: readonly Fact<'part-in'>[]
}

/** A reading of a feature; others of the same feature stand beside it. */
export interface ReadingState extends Fact<'reading'> {
  /** Of several readings of the feature this one is to be used, and why. Nothing: nobody decided, and all count. */
  readonly rules?: 'this' | 'another'
  readonly because?: Said & { readonly says: string }
}

export type Signature = Fact<'step-signed'>

export interface StepState {
  readonly step: string
  readonly stands: 'started' | 'done' | 'undone'
  /** Since it was last undone. */
  readonly starts: readonly Fact<'step-started'>[]
  /** By those who did it, since it was last undone. More than one carries a look mark. */
  readonly done: readonly Signature[]
  /** By a second person, or alone by another method. Missing where nobody has, or where it does not count. */
  readonly second?: Signature & { readonly how: 'second person' | 'one person, checked again' }
  /** All signatures ever in force, those before an undoing too. */
  readonly signatures: readonly Signature[]
}

/** Something that somebody should look at. It hinders nothing. */
export interface Look {
  readonly what:
    | 'signed twice'
    | 'sequence changed'
    | 'two sequences'
    | 'unit changed'
    | 'decided otherwise'
    | 'same hand'
    | 'check again without method or photo'
    | 'two entries with one number'
  /** The step, part or device it is about. */
  readonly about: string
  /** The entries that do not agree, in fold order. */
  readonly entries: readonly string[]
  /** The people of those entries, each once. */
  readonly people: readonly string[]
}

/** What was said of the job itself; the last word for each. Shims by their id. */
export interface Opened extends Omit<Body<'job-opened'>, 'shims'> {
  readonly shims: ReadonlyMap<string, NonNullable<Body<'job-opened'>['shims']>[number]>
}

/** One line of what happened, in fold order. */
export interface Happened extends Said {
  readonly kind: Kind
  /** The withdrawal that took it out of force. */
  readonly withdrawnBy?: string
}

export interface JobState {
  readonly stream: string
  readonly opened: Opened
  readonly unit?: Fact<'unit-adopted'>
  readonly parts: ReadonlyMap<string, PartState>
  readonly readings: readonly ReadingState[]
  readonly steps: ReadonlyMap<string, StepState>
  /** The one in force, and those before it. */
  readonly sequence?: Fact<'sequence-adopted'>
  readonly sequences: readonly Fact<'sequence-adopted'>[]
  readonly findings: readonly Fact<'finding'>[]
  readonly checks: readonly Fact<'check-result'>[]
  readonly tries: readonly Fact<'setting-try'>[]
  readonly photos: readonly Fact<'photo'>[]
  readonly notes: readonly Fact<'note'>[]
  readonly looks: readonly Look[]
  /** Everything, withdrawn or not. */
  readonly happened: readonly Happened[]
}
