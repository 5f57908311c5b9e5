// What the record has of the building: who signed each step, who looked at it as well, its photos. Times are milliseconds since 1970.

export interface Hand {
  readonly person: string
  readonly ms: number
}

export interface PhotoTaken extends Hand {
  readonly sha256: string
  readonly says?: string
  /** What it is of, where that is no step. */
  readonly of?: string
}

export interface BuiltStep {
  readonly step: string
  /** By those who did it; more than one is to be looked at. */
  readonly signed: readonly Hand[]
  readonly second?: Hand & {
    readonly how: 'second person' | 'one person, checked again'
    readonly method?: string
    readonly found?: string
  }
  readonly photos: readonly PhotoTaken[]
}

export interface AsBuilt {
  /** Steps that were signed or photographed, in the order of their first signature; those only photographed after them. */
  readonly steps: readonly BuiltStep[]
  /** Of parts, or of nothing that was named. */
  readonly otherPhotos: readonly PhotoTaken[]
}
