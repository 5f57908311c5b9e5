// Holds the import arrows between the rooms of src/ and names every line that breaks one.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))

/** A room may import itself and the rooms named here, its tests also the `testRooms`; every package it may load stands behind them. */
const ARROWS = {
  problem: { rooms: [], packages: [] },
  quantity: { rooms: ['problem'], packages: [] },
  journal: { rooms: ['problem'], packages: ['zod', 'canonicalize', '@noble/hashes', '@noble/curves', 'fflate'] },
  stores: {
    rooms: ['problem', 'journal'],
    testRooms: ['record'],
    packages: [
      'node:fs',
      'node:fs/promises',
      'node:path',
      'node:crypto',
      '@photostructure/sqlite',
      'node:sqlite',
      'pg',
      'idb',
      'sharp',
    ],
  },
  mechanics: { rooms: ['problem', 'quantity'], packages: ['jstat', 'pure-rand'] },
  figures: { rooms: ['problem', 'quantity', 'mechanics'], packages: [] },
  planning: { rooms: ['problem', 'quantity'], packages: ['pure-rand', 'zod'] },
  unit: { rooms: ['problem', 'quantity', 'mechanics', 'planning'], packages: ['yaml', 'zod'] },
  job: {
    rooms: ['problem', 'quantity', 'mechanics', 'planning', 'unit'],
    packages: ['yaml', 'zod', 'canonicalize', '@noble/hashes'],
  },
  record: {
    rooms: ['problem', 'quantity', 'planning', 'unit', 'job', 'journal'],
    testRooms: ['stores'],
    packages: ['yaml', 'zod'],
  },
  paper: { rooms: ['problem', 'quantity', 'mechanics', 'planning', 'unit', 'job'], packages: [] },
  // Rooms within the app: what is worked out, and what touches the device's store and the network.
  'web/model': {
    rooms: ['problem', 'quantity', 'mechanics', 'planning', 'unit', 'job', 'paper', 'journal', 'record'],
    packages: [],
  },
  'web/sync': { rooms: ['problem', 'journal', 'stores', 'record', 'web', 'web/model'], packages: ['react', 'idb'] },
  web: {
    rooms: ['problem', 'quantity', 'unit', 'job', 'paper', 'journal', 'record', 'stores', 'web/model', 'web/sync'],
    packages: ['react', 'react-dom', 'wouter'],
  },
  'web/testing': { rooms: '*', packages: '*' },
  server: { rooms: '*', packages: '*' },
  cli: { rooms: '*', packages: '*' },
}
const TEST_PACKAGES = ['vitest', 'fast-check', 'yaml', 'zod', 'playwright-core', 'rolldown']

/** `web/model` is a room within a room. */
const roomOf = (file) => {
  const [outer, inner] = file.split(sep)
  return ARROWS[`${outer}/${inner}`] ? `${outer}/${inner}` : outer
}

const faults = []
const files = readdirSync(join(root, 'src'), { recursive: true }).filter((file) => /\.tsx?$/.test(file))
for (const file of files) {
  const room = roomOf(file)
  const arrows = ARROWS[room]
  const isTest = /\.test\.ts$|[\\/]testing[\\/]/.test(file)
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
        const other = roomOf(relative(join(root, 'src'), join(root, 'src', dirname(file), target)))
        const known =
          (isTest && target.includes('/testing/')) ||
          other === room ||
          arrows.rooms === '*' ||
          arrows.rooms.includes(other) ||
          (isTest && arrows.testRooms?.includes(other))
        if (!known) faults.push(`${at}: ${room} must not import ${other} (${target})`)
        if (!/\.(ts|tsx|json|css)$/.test(target)) faults.push(`${at}: write the file ending in '${target}'`)
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
