// The words in use. Another language is chosen here and nowhere else.
import { en, type Words } from './en.ts'

export const words: Words = en
