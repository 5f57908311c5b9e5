// Lines to a PostgreSQL, for all that is kept there: their address checked, and what goes wrong told in our words.
import pg from 'pg'
import { Problem } from '../../problem/problem.ts'
import { postgresProblem } from './postgresProblem.ts'

export interface PostgresPool {
  readonly pool: pg.Pool
  /** The address without user and password. */
  readonly place: string
  /** Runs with a client of its own; one that failed is not used again. @throws the problems of stores */
  use<Answer>(work: (client: pg.PoolClient) => Promise<Answer>): Promise<Answer>
}

/** @throws STORE_ADDRESS; nothing is asked of the server yet */
export function postgresPool(url: string, most = 6): PostgresPool {
  const place = placeOf(url)
  const pool = new pg.Pool({ connectionString: url, connectionTimeoutMillis: 5_000, max: most })
  // A line that breaks while nobody uses it: the next one who asks is told.
  pool.on('error', () => {}).on('connect', (client) => client.on('error', () => {}))
  return {
    pool,
    place,
    async use(work) {
      let client: pg.PoolClient | undefined
      try {
        client = await pool.connect()
        const answer = await work(client)
        client.release()
        return answer
      } catch (error) {
        client?.release(true)
        throw postgresProblem(error, place)
      }
    },
  }
}

/** Whether a record was ever kept there; makes nothing. */
export const hasRecord = ({ use }: PostgresPool): Promise<boolean> =>
  use(async (client) => {
    const { rows } = await client.query<{ there: boolean }>("select to_regclass('matchmark.form') is not null as there")
    return rows[0]?.there === true
  })

function placeOf(url: string): string {
  const read = URL.canParse(url) ? new URL(url) : null
  if (!read || !/^postgres(ql)?:$/.test(read.protocol))
    // What stands before an @ may be a password.
    throw new Problem('STORE_ADDRESS', { received: url.replace(/^(\w+:\/\/)?[^@]*@/, '$1…@').slice(0, 100) })
  const { hostname, port, pathname } = read
  return `postgres://${hostname}${port ? `:${port}` : ''}${pathname}`
}
