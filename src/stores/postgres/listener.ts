// A line to PostgreSQL that is kept open to hear when another server has written.
import pg from 'pg'

/** The channel. The payload says nothing: who hears it looks for himself. */
export const CHANNEL = 'matchmark_entries'

/**
 * Listens until stopped. Where the line breaks it is laid again, and `heard` is called then too, for what was said meanwhile.
 */
export function listen(options: pg.ClientConfig, heard: () => void, retry_ms = 500): { stop(): Promise<void> } {
  let stopped = false
  let client: pg.Client | undefined
  let again: NodeJS.Timeout | undefined

  async function connect(): Promise<void> {
    const own = new pg.Client({ ...options, keepAlive: true })
    let lost = false
    const lose = () => {
      if (lost) return
      lost = true
      void own.end().catch(() => {})
      if (stopped) return
      again = setTimeout(connect, retry_ms)
      again.unref()
    }
    own.on('error', lose)
    own.on('end', lose)
    own.on('notification', heard)
    try {
      await own.connect()
      client = own
      await own.query(`listen ${CHANNEL}`)
      if (stopped) await own.end()
      else heard()
    } catch {
      lose()
    }
  }
  void connect()
  return {
    async stop() {
      stopped = true
      clearTimeout(again)
      await client?.end().catch(() => {})
    },
  }
}
