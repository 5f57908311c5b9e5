// What the docstrings of the calculations say, at hand while the program runs. `npm run pages` writes notes.json from them.
import notes from './notes.json' with { type: 'json' }

export interface Note {
  /** What the number means, and within which limits. */
  readonly says: string
  readonly params: Readonly<Record<string, string>>
  readonly returns: string
  readonly source: string
}

/** The note of an exported calculation; every figure is held against the list by a test. */
export function noteOf(calculation: string): Note {
  return (notes as Readonly<Record<string, Note>>)[calculation] ?? { says: '', params: {}, returns: '', source: '' }
}
