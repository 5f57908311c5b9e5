// Makes a fresh clone ready: installs what the lock file names and builds what is stale. Safe to call every time, also by
// several starts at once: what has to be done is done by one, under a lock, and a stamp is written last.
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, lstatSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { withLock } from './lock.mjs'

export const root = dirname(dirname(fileURLToPath(import.meta.url)))

const modules = join(root, 'node_modules')
const INSTALLED = join(modules, '.matchmark-installed')
const BUILT = join(root, 'dist', '.built')

function refuseOldNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22
  if (fits) return
  console.error(`Node ${process.versions.node} is here; Matchmark wants Node 20.19 or newer 20.x, or 22.12 and newer.`)
  process.exit(2)
}

const hashOf = (files) => {
  const hash = createHash('sha256')
  for (const file of files) {
    hash.update(file).update('\0')
    hash.update(readFileSync(join(root, file)))
  }
  return hash.digest('hex')
}

/** What the installed packages depend on: the lock file, and the machine, for some of them are binaries. */
const packagesKey = () => `${process.platform}-${process.arch} ${hashOf(['package-lock.json', '.npmrc'])}`

function buildKey() {
  const sources = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(test\.tsx?|check\.csv)$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(root.length + 1))
    .sort()
  return hashOf(['package.json', 'package-lock.json', 'scripts/build.mjs', 'vite.config.ts', ...sources])
}

const stamped = (stamp, key) => existsSync(stamp) && readFileSync(stamp, 'utf8') === key

/** A node_modules that is a link belongs to another checkout and is left alone. */
const isBorrowed = () => lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink() === true
const isInstalled = () => isBorrowed() || stamped(INSTALLED, packagesKey())

function install() {
  console.error('Setting up: installing packages (once, about ten seconds) ...')
  const isWindows = process.platform === 'win32'
  try {
    execFileSync(
      isWindows ? 'npm.cmd' : 'npm',
      ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'],
      {
        cwd: root,
        stdio: ['ignore', 2, 2],
        env: { ...process.env, NODE_ENV: '' },
        shell: isWindows,
      },
    )
  } catch {
    console.error(
      'The packages could not be installed. npm says why above; a network to the npm registry is needed once.',
    )
    process.exit(2)
  }
  writeFileSync(INSTALLED, packagesKey())
}

async function buildAnew(key) {
  console.error('Setting up: building ...')
  const { build } = await import(pathToFileURL(join(root, 'scripts', 'build.mjs')))
  await build({ stamp: key })
}

/** Installs and builds as needed. `build: false` leaves the bundle alone. */
export async function setUp({ build = true } = {}) {
  refuseOldNode()
  const isReady = () => isInstalled() && (!build || stamped(BUILT, buildKey()))
  if (isReady()) return
  await withLock(join(root, '.setup'), async () => {
    if (!isInstalled()) install()
    const key = buildKey()
    if (build && !stamped(BUILT, key)) await buildAnew(key)
  })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await setUp()
