// `npm test`: sets itself up, then runs every check.
import { setUp } from './setup.mjs'

await setUp()
const { check } = await import('./check.mjs')
process.exit(check() ? 1 : 0)
