// How long the search takes and how good it is: on sequence files, and on generated geared units.
// `npm run bench:sequence -- [FILE …] [--seconds N] [--json] [--check]`; with no FILE, the files of bench/data/sop and the units.
import { argumentsOf } from './sequence/arguments.ts'
import { runFiles } from './sequence/files.ts'
import { runUnits } from './sequence/units.ts'

const told = argumentsOf(process.argv.slice(2))
const missed = [
  ...(told.part === 'units' ? [] : await runFiles(told)),
  ...(told.part === 'files' ? [] : runUnits(told)),
]
for (const target of missed) console.error(`missed: ${target}`)
if (told.check && missed.length > 0) process.exitCode = 1
