// `npm start`: sets itself up, does the main job on the sample, serves the result. `-- --once` stops after the job.
import { setUp } from './setup.mjs'

await setUp()
await import('../dist/server.js')
