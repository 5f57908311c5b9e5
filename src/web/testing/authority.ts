// The shop's certificate authority, as a person installs it on a tablet.
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { get } from 'node:https'
import { join } from 'node:path'

/** What a tablet fetches before it trusts anything. */
export function authorityFrom(address: string): Promise<string> {
  return new Promise((resolve, reject) => {
    get(`${address}/authority.crt`, { rejectUnauthorized: false }, (reply) => {
      let text = ''
      reply.setEncoding('utf8').on('data', (part) => {
        text += part
      })
      reply.on('end', () => resolve(text))
    }).on('error', reject)
  })
}

/** A home in which a person has installed this authority, or none. Chromium looks there by the tools of NSS. */
export function homeWith(folder: string, authority: string | null): string {
  const home = mkdtempSync(join(folder, 'home-'))
  const database = join(home, '.pki', 'nssdb')
  mkdirSync(database, { recursive: true })
  const certutil = (...words: string[]) =>
    execFileSync('certutil', ['-d', `sql:${database}`, ...words], { stdio: 'pipe' })
  certutil('-N', '--empty-password')
  if (authority) {
    const file = join(home, 'shop.pem')
    writeFileSync(file, authority)
    certutil('-A', '-n', 'shop', '-t', 'C,,', '-i', file)
  }
  return home
}
