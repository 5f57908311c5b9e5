// `npm test`: sets itself up, then runs every check.
import { installPackages } from './packages.mjs'
import { setUp } from './setup.mjs'

await setUp()
installPackages()
const { check } = await import('./check.mjs')
process.exit(check() ? 1 : 0)
