// What the tests need of the machine beside npm's packages: a browser and a PostgreSQL, from Debian. Installed where that can be done
// without asking (root, apt); else it says what is missing, and the tests that need it fail and say so too.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const onPath = (name) => (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, name)))

const POSTGRES = '/usr/lib/postgresql'
const hasPostgres = () =>
  onPath('initdb') ||
  (existsSync(POSTGRES) &&
    readdirSync(POSTGRES).some((version) => existsSync(join(POSTGRES, version, 'bin', 'initdb'))))

const WANTED = [
  { name: 'chromium', isThere: () => onPath('chromium') },
  { name: 'postgresql-15', isThere: hasPostgres },
  // `certutil`: installs a certificate for a browser of the tests, as a person does on a tablet.
  { name: 'libnss3-tools', isThere: () => onPath('certutil') },
]

/** Installs what is missing; returns what is missing still. */
export function installPackages() {
  const missing = WANTED.filter(({ isThere }) => !isThere()).map(({ name }) => name)
  if (missing.length === 0) return []
  if (process.getuid?.() !== 0 || !onPath('apt-get')) {
    console.error(`Missing for the tests: ${missing.join(', ')}. As root: apt-get install ${missing.join(' ')}`)
    return missing
  }
  console.error(`Setting up: installing ${missing.join(' and ')} for the tests (once) ...`)
  // The tests start servers of their own; Debian's would only take the usual port.
  mkdirSync('/etc/postgresql-common/createcluster.d', { recursive: true })
  writeFileSync('/etc/postgresql-common/createcluster.d/matchmark.conf', 'create_main_cluster = false\n')
  const apt = (...words) =>
    spawnSync('apt-get', ['-o', 'DPkg::Lock::Timeout=300', '-qq', ...words], {
      stdio: ['ignore', 2, 2],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  apt('update')
  apt('install', '-y', '--no-install-recommends', ...missing)
  return WANTED.filter(({ isThere }) => !isThere()).map(({ name }) => name)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exit(installPackages().length > 0 ? 1 : 0)
