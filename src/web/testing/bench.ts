// A bench for tests: the built app, a shop, the sample job, and real Chromium at the sizes of a shop's devices.
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'
import { hashOfText } from '../../journal/canonicalForm.ts'
import type { Journal } from '../../journal/journal.ts'
import { sampleEntries, UNIT_TEXT } from '../../record/testing/quarryRailway.ts'
import { shopForTests } from '../../server/testing/shopForTests.ts'
import type { Work } from '../../server/work/work.ts'
import type { Files } from '../../stores/files/files.ts'
import { memoryFiles } from '../../stores/files/memoryFiles.ts'
import { memoryJournal } from '../../stores/memory/memoryJournal.ts'

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) =>
  existsSync(path),
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

export const SIZES = {
  tablet: { viewport: { width: 1024, height: 768 }, hasTouch: true, isMobile: true },
  upright: { viewport: { width: 768, height: 1024 }, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
  laptop: { viewport: { width: 1440, height: 900 } },
} as const

const root = fileURLToPath(new URL('../../../', import.meta.url))

/** The app, built into a folder of its own. */
export async function builtApp(): Promise<{ readonly dir: string; readonly kB: number; remove(): void }> {
  const dir = mkdtempSync(join(tmpdir(), 'matchmark-app-'))
  // A script of the project, not of the app: it has no types.
  const script = join(root, 'scripts', 'build.mjs')
  const { buildApp } = (await import(script)) as { buildApp: (to: string) => Promise<number> }
  const kB = await buildApp(dir)
  return { dir, kB, remove: () => rmSync(dir, { recursive: true, force: true }) }
}

export interface ShopWithSample {
  readonly url: string
  readonly journal: Journal
  readonly files: Files
  close(): Promise<void>
}

/** Puts the sample job and its unit into a shop. */
export async function sampleInto({
  journal,
  files,
}: {
  readonly journal: Journal
  readonly files: Files
}): Promise<void> {
  const sha256 = hashOfText(UNIT_TEXT)
  await files.put(sha256, new TextEncoder().encode(UNIT_TEXT))
  await journal.put(sampleEntries())
}

/**
 * The real server over a journal in memory, with the sample job and nothing else. Whoever comes by loopback needs no account.
 *
 * @param work what is worked out beside it; left out, nothing is
 */
export async function shopWithSample(app: string, work?: Work): Promise<ShopWithSample> {
  const [journal, files] = [memoryJournal(), memoryFiles()]
  await sampleInto({ journal, files })
  const shop = await shopForTests({ journal, files, webRoot: app, ...(work && { work }) })
  const url = await shop.own.listen({ host: '127.0.0.1', port: 0 })
  return {
    url,
    journal,
    files,
    async close() {
      await shop.close()
      await work?.close()
    },
  }
}

const NO_CHROMIUM =
  'Chromium is not installed, and the app cannot be tried without it. As root `node scripts/packages.mjs` installs it; else: apt-get install chromium'

/** @param home where it looks for certificates that a person has installed; the machine's own home when left out */
export async function openChromium(home?: string): Promise<Browser> {
  if (!CHROMIUM) throw new Error(NO_CHROMIUM)
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [...FLAGS],
    ...(home && { env: { ...process.env, HOME: home } }),
  })
}

/** A tablet with a profile of its own on disk: it outlives the browser. */
export async function openProfile(dir: string, person: string): Promise<BrowserContext> {
  if (!CHROMIUM) throw new Error(NO_CHROMIUM)
  const context = await chromium.launchPersistentContext(dir, {
    executablePath: CHROMIUM,
    args: [...FLAGS],
    ...SIZES.tablet,
    reducedMotion: 'reduce',
  })
  await context.addInitScript((name) => localStorage.setItem('matchmark person', name), person)
  return context
}

export interface Device {
  readonly size: keyof typeof SIZES
  readonly person?: string
  readonly scheme?: 'light' | 'dark'
}

/** A device of the shop, with whoever stands at it. */
export async function device(browser: Browser, { size, person, scheme = 'light' }: Device): Promise<BrowserContext> {
  const context = await browser.newContext({ ...SIZES[size], colorScheme: scheme, reducedMotion: 'reduce' })
  if (person !== undefined)
    await context.addInitScript((name) => localStorage.setItem('matchmark person', name), person)
  return context
}
