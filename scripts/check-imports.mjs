// Holds the import arrows between the rooms of src/ and names every line that breaks one.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))

/** A room may import itself and the rooms named here; every package it may load stands behind them. */
const ARROWS = {
  problem: { rooms: [], packages: [] },
  quantity: { rooms: ['problem'], packages: [] },
  mechanics: { rooms: ['problem', 'quantity'], packages: ['jstat', 'pure-rand'] },
  figures: { rooms: ['problem', 'quantity', 'mechanics'], packages: [] },
  planning: { rooms: ['problem', 'quantity'], packages: ['pure-rand', 'zod'] },
  unit: { rooms: ['problem', 'quantity', 'mechanics', 'planning'], packages: ['yaml', 'zod'] },
  job: {
    rooms: ['problem', 'quantity', 'mechanics', 'planning', 'unit'],
    packages: ['yaml', 'zod', 'canonicalize', '@noble/hashes'],
  },
  paper: { rooms: ['problem', 'quantity', 'mechanics', 'planning', 'unit', 'job'], packages: [] },
  server: { rooms: '*', packages: '*' },
  cli: { rooms: '*', packages: '*' },
}
/** A test may also go in by our own public door, packed. */
const TEST_PACKAGES = ['vitest', 'fast-check', 'yaml', 'zod', 'rolldown', 'matchmark/mechanics']

const faults = []
const files = readdirSync(join(root, 'src'), { recursive: true }).filter((file) => /\.tsx?$/.test(file))
for (const file of files) {
  const room = file.split(sep)[0]
  const arrows = ARROWS[room]
  const isTest = /\.test\.ts$/.test(file)
  if (!arrows) {
    faults.push(`src/${file}: the room ${room} has no arrows; add it to scripts/check-imports.mjs`)
    continue
  }
  readFileSync(join(root, 'src', file), 'utf8')
    .split('\n')
    .forEach((line, index) => {
      const target = line.match(/(?:^|\s)(?:from\s+|import\s+|import\()\s*'([^']+)'/)?.[1]
      if (!target) return
      const at = `src/${file}:${index + 1}`
      if (target.startsWith('.')) {
        const other = relative(join(root, 'src'), join(root, 'src', dirname(file), target)).split(sep)[0]
        const known = other === room || arrows.rooms === '*' || arrows.rooms.includes(other)
        if (!known) faults.push(`${at}: ${room} must not import ${other} (${target})`)
        if (!/\.(ts|tsx|json)$/.test(target)) faults.push(`${at}: write the file ending in '${target}'`)
        return
      }
      if (isTest && (target.startsWith('node:') || TEST_PACKAGES.includes(target))) return
      const allowed =
        arrows.packages === '*' || arrows.packages.some((name) => target === name || target.startsWith(`${name}/`))
      if (!allowed) faults.push(`${at}: ${room} must not load the package '${target}'`)
    })
}
for (const fault of faults) console.error(fault)
if (faults.length === 0) console.log(`imports: ${files.length} files, every arrow points one way`)
process.exit(faults.length ? 1 : 0)
