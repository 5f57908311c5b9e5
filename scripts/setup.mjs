// Makes a fresh clone ready: installs what the lock file names and builds what is stale. Safe to call every time.
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

export const root = dirname(dirname(fileURLToPath(import.meta.url)))

function refuseOldNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22
  if (fits) return
  console.error(`Node ${process.versions.node} is here; Matchmark wants Node 20.19 or newer 20.x, or 22.12 and newer.`)
  process.exit(2)
}

const hashOf = (files) => {
  const hash = createHash('sha256')
  for (const file of files)
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(root, file)))
  return hash.digest('hex')
}

const stamped = (stamp, key) => existsSync(stamp) && readFileSync(stamp, 'utf8') === key

function install() {
  const key = hashOf(['package-lock.json', 'package.json', '.npmrc'])
  const stamp = join(root, 'node_modules', '.matchmark-installed')
  if (stamped(stamp, key)) return
  console.error('Setting up: installing packages (once, about ten seconds) ...')
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  try {
    execFileSync(npm, ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'], {
      cwd: root,
      stdio: ['ignore', 2, 2],
      env: { ...process.env, NODE_ENV: '' },
      shell: process.platform === 'win32',
    })
  } catch {
    console.error(
      'The packages could not be installed. npm says why above; a network to the npm registry is needed once.',
    )
    process.exit(2)
  }
  writeFileSync(stamp, key)
}

function sources() {
  const files = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(test\.ts|check\.csv)$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(root.length + 1))
    .sort()
  return ['package-lock.json', 'scripts/build.mjs', ...files]
}

async function buildIfStale() {
  const key = hashOf(sources())
  const stamp = join(root, 'dist', '.built')
  if (stamped(stamp, key)) return
  console.error('Setting up: building ...')
  rmSync(stamp, { force: true })
  mkdirSync(join(root, 'dist'), { recursive: true })
  const { build } = await import(pathToFileURL(join(root, 'scripts', 'build.mjs')))
  await build()
  writeFileSync(stamp, key)
}

/** Installs and builds as needed. `build: false` leaves the bundle alone. */
export async function setUp({ build = true } = {}) {
  refuseOldNode()
  install()
  if (build) await buildIfStale()
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await setUp()
