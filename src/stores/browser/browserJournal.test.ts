// The record in a real Chromium: each call goes into a page and its answer comes back.
import { existsSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { fileURLToPath } from 'node:url'
import { chromium, type Page } from 'playwright-core'
import { build } from 'rolldown'
import type { Journal } from '../../journal/journal.ts'
import type { ProblemCode } from '../../problem/catalogue.ts'
import type { Facts } from '../../problem/facts.ts'
import { Problem } from '../../problem/problem.ts'
import { journalContract } from '../testing/contract.ts'
import type { InPage } from '../testing/inBrowser.ts'
import { Watchers } from '../watchers.ts'

declare const page: InPage

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((one) =>
  existsSync(one),
)
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

journalContract('a browser', async () => {
  if (!CHROMIUM)
    throw new Error(
      'Chromium is not installed, and the record of a browser cannot be tried without it. As root `node scripts/packages.mjs` installs it; else: apt-get install chromium',
    )
  const input = fileURLToPath(new URL('../testing/inBrowser.ts', import.meta.url))
  const { output } = await build({
    input,
    platform: 'browser',
    write: false,
    logLevel: 'warn',
    output: { format: 'esm' },
  })
  const script = output[0].code
  const server = createServer((request, response) => {
    const isScript = request.url === '/page.js'
    response.setHeader('content-type', isScript ? 'text/javascript' : 'text/html')
    response.end(
      isScript ? script : '<!doctype html><title>record</title><script type="module" src="/page.js"></script>',
    )
  })
  await new Promise<void>((go) => server.listen(0, '127.0.0.1', go))
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS })
  const context = await browser.newContext()

  let database = 0
  async function newPage(): Promise<{ readonly at: Page; readonly told: Map<number, Watchers> }> {
    const at = await context.newPage()
    const told = new Map<number, Watchers>()
    await at.exposeFunction('toldInPage', (handle: number, change: { stream: string; position: number }) =>
      told.get(handle)?.tell([change]),
    )
    await at.goto(address)
    await at.waitForFunction('globalThis.page')
    return { at, told }
  }
  // Two pages of one browser, as two tabs: the second is for those who open the record again.
  const [first, second] = [await newPage(), await newPage()]

  async function open({ at, told }: Awaited<ReturnType<typeof newPage>>): Promise<Journal> {
    const handle = await at.evaluate((name) => page.open(name), `t${database}`)
    const watchers = new Watchers()
    told.set(handle, watchers)
    async function ask<Answer>(verb: Parameters<InPage['ask']>[1], ...given: readonly unknown[]): Promise<Answer> {
      const said = await at.evaluate(([number, asked, all]) => page.ask(number, asked, all), [
        handle,
        verb,
        JSON.stringify(given),
      ] as const)
      if ('answer' in said) return said.answer as Answer
      throw new Problem(said.code as ProblemCode, said.facts as Facts)
    }
    return {
      put: (entries) => ask('put', entries),
      read: (stream, options = {}) => ask('read', stream, options),
      heads: (stream) => ask('heads', stream),
      streams: () => ask('streams'),
      watch: (changed) => watchers.add(changed),
      close: () => ask('close'),
    }
  }
  return {
    fresh: () => {
      database += 1
      return open(first)
    },
    again: () => open(second),
    stop: async () => {
      await browser.close()
      await new Promise((go) => server.close(go))
    },
  }
})
