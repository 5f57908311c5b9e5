// A PostgreSQL server of our own for tests: Debian's package, on loopback, in a folder that is gone afterwards.
import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'

export interface PostgresServer {
  readonly url: string
  /** SIGKILL to the server and all its processes, as when the plug is pulled; then started again, which needs no hand. */
  crash(): Promise<void>
  down(): Promise<void>
  up(): Promise<void>
  /** A further database, empty. @returns its address */
  database(name: string): Promise<string>
  stop(): Promise<void>
}

/** Where `initdb` and `postgres` are. */
function binFolder(): string {
  const places = existsSync('/usr/lib/postgresql')
    ? readdirSync('/usr/lib/postgresql').map((version) => `/usr/lib/postgresql/${version}/bin`)
    : []
  const paths = (process.env.PATH ?? '').split(':')
  const found = [...places, ...paths].find(
    (place) => existsSync(join(place, 'initdb')) && existsSync(join(place, 'postgres')),
  )
  if (!found)
    throw new Error(
      'PostgreSQL is not installed, and the shared record cannot be tried without it. As root `node scripts/packages.mjs` installs it; else: apt-get install postgresql-15',
    )
  return found
}

/** As root the server runs as the user `postgres`: it refuses to run as root. */
function user(): { uid?: number; gid?: number } {
  if (process.getuid?.() !== 0) return {}
  const id = (flag: string) => Number(execFileSync('id', [flag, 'postgres']).toString())
  return { uid: id('-u'), gid: id('-g') }
}

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((go) => server.listen(0, '127.0.0.1', go))
  const { port } = server.address() as { port: number }
  await new Promise((go) => server.close(go))
  return port
}

export async function postgresServer(): Promise<PostgresServer> {
  const bin = binFolder()
  const { uid, gid } = user()
  const as = { ...(uid !== undefined && { uid }), ...(gid !== undefined && { gid }) }
  const folder = mkdtempSync(join(tmpdir(), 'matchmark-pg-'))
  if (uid !== undefined && gid !== undefined) chownSync(folder, uid, gid)
  const data = join(folder, 'data')
  execFileSync(
    join(bin, 'initdb'),
    ['-D', data, '-U', 'app', '--auth=trust', '-E', 'UTF8', '--locale=C.UTF-8', '--no-instructions', '--no-sync'],
    { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'], ...as },
  )
  const port = await freePort()
  const url = `postgres://app@127.0.0.1:${port}/postgres`
  let server: ChildProcess | undefined
  let log = ''

  async function start(): Promise<void> {
    const options = [
      '-c',
      'listen_addresses=127.0.0.1',
      '-c',
      `unix_socket_directories=${folder}`,
      '-c',
      'max_connections=60',
    ]
    const child = spawn(join(bin, 'postgres'), ['-D', data, '-p', String(port), ...options], {
      cwd: folder,
      stdio: ['ignore', 'ignore', 'pipe'],
      ...as,
    })
    server = child
    child.stderr.on('data', (piece) => {
      log = `${log}${piece}`.slice(-4000)
    })
    for (let tries = 0; tries < 600; tries += 1) {
      if (child.exitCode !== null) throw new Error(`PostgreSQL did not start:\n${log}`)
      const client = new pg.Client({ connectionString: url })
      client.on('error', () => {})
      try {
        await client.connect()
        await client.end()
        return
      } catch {
        await client.end().catch(() => {})
        await new Promise((go) => setTimeout(go, 20))
      }
    }
    throw new Error(`PostgreSQL did not answer:\n${log}`)
  }

  async function end(signal: NodeJS.Signals): Promise<void> {
    const child = server
    server = undefined
    if (!child?.pid || child.exitCode !== null || child.signalCode !== null) return
    const gone = new Promise((go) => child.once('exit', go))
    if (signal !== 'SIGKILL') {
      child.kill(signal)
      await gone
      return
    }
    // Held first, so that it makes no further process while its processes are counted.
    child.kill('SIGSTOP')
    const family = childrenOf(child.pid)
    child.kill('SIGKILL')
    for (const pid of family) {
      try {
        process.kill(pid, 'SIGKILL')
      } catch {
        // Gone already.
      }
    }
    await gone
    // The memory that they share is free when the last of them is gone; before that a new server does not start.
    while (family.some(isRunning)) await new Promise((go) => setTimeout(go, 5))
  }

  await start()
  return {
    url,
    async crash() {
      await end('SIGKILL')
      await start()
    },
    down: () => end('SIGINT'),
    up: start,
    async database(name) {
      const client = new pg.Client({ connectionString: url })
      await client.connect()
      await client.query(`create database ${name}`)
      await client.end()
      return url.replace(/\w+$/, name)
    },
    async stop() {
      await end('SIGINT')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** The server's own processes: those that it is the parent of. */
function childrenOf(pid: number): readonly number[] {
  try {
    return readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ').filter(Boolean).map(Number)
  } catch {
    return []
  }
}

/** A process that is gone, or is dead and only waits to be counted, holds no memory. */
function isRunning(pid: number): boolean {
  try {
    return !/^\d+ \(.*\) [ZX]/s.test(readFileSync(`/proc/${pid}/stat`, 'utf8'))
  } catch {
    return false
  }
}
