// `npm start`: sets itself up, does the main job on the sample, shows the result. `-- --once` ends after the job.
import { join, relative } from 'node:path'
import { root, setUp } from './setup.mjs'

const SAMPLE = join(root, 'examples', 'quarry-railway', 'J41.job.yaml')

await setUp()
process.argv.splice(
  2,
  0,
  'start',
  relative(process.cwd(), SAMPLE),
  '--into',
  relative(process.cwd(), join(root, 'out')),
)
await import('../dist/cli.js')
