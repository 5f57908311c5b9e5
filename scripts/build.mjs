// Bundles the command line, the two library doors and the app into dist/, with the fonts of the job book beside them.
// Built aside and moved into place: a start that fails or is stopped half way leaves the old dist/ as it was.
import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'

const root = join(fileURLToPath(import.meta.url), '..', '..')

/** Fonts of papers, with their licences. */
const FONTS = [
  import.meta.resolve(
    '@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  ),
  import.meta.resolve(
    '@fontsource-variable/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-wght-normal.woff2',
  ),
]

/** @param stamp written last into dist/.built, so that a half-made dist/ is never taken for a whole one */
export async function build({ stamp = '' } = {}) {
  const dist = join(root, 'dist')
  const aside = `${dist}.new-${process.pid}`
  const old = `${dist}.old-${process.pid}`
  try {
    await Promise.all([bundle(aside), buildApp(join(aside, 'web'))])
    declareTypes(join(aside, 'types'))
    copyFonts(join(aside, 'fonts'))
    writeFileSync(join(aside, '.built'), stamp)
    if (existsSync(dist)) renameSync(dist, old)
    renameSync(aside, dist)
  } finally {
    rmSync(aside, { recursive: true, force: true })
    rmSync(old, { recursive: true, force: true })
  }
}

async function bundle(dir) {
  const { build: rolldown } = await import('rolldown')
  await rolldown({
    cwd: root,
    input: {
      cli: 'src/cli/main.ts',
      mechanics: 'src/mechanics/index.ts',
      planning: 'src/planning/index.ts',
      worker: 'src/server/work/worker.ts',
    },
    platform: 'node',
    // Binaries, and what finds its own files by where it stands: they stay packages.
    external: ['@photostructure/sqlite', 'node:sqlite', 'pg', 'sharp', 'graphile-worker', 'tinypool'],
    logLevel: 'warn',
    transform: { target: 'node20' },
    output: {
      dir,
      format: 'esm',
      entryFileNames: '[name].js',
      chunkFileNames: 'chunks/[name]-[hash].js',
      banner: (chunk) => (chunk.name === 'cli' ? '#!/usr/bin/env node' : ''),
    },
  })
}

/** Scripts that a tablet loads before the first sheet stands, gzipped, kB; the rest comes when it is wanted. */
const FIRST_LOAD_KB = 180

/**
 * The app, with the service worker that keeps it.
 *
 * @returns the gzipped size of the scripts of the first load, kB
 * @throws when they are heavier than FIRST_LOAD_KB
 */
export async function buildApp(dir) {
  const { build: vite } = await import('vite')
  // React keeps its words for programmers wherever this says anything else, such as in a test.
  const { NODE_ENV } = process.env
  process.env.NODE_ENV = 'production'
  try {
    await vite({
      configFile: join(root, 'vite.config.ts'),
      root: join(root, 'src', 'web'),
      logLevel: 'warn',
      build: { outDir: dir, emptyOutDir: true },
    })
  } finally {
    process.env.NODE_ENV = NODE_ENV ?? ''
  }
  const manifest = JSON.parse(readFileSync(join(dir, '.vite', 'manifest.json'), 'utf8'))
  rmSync(join(dir, '.vite'), { recursive: true })
  const scripts = new Set()
  const take = (key) => {
    const { file, imports = [] } = manifest[key]
    if (scripts.has(file)) return
    scripts.add(file)
    imports.forEach(take)
  }
  take('index.html')
  const bytes = [...scripts].reduce((sum, file) => sum + gzipSync(readFileSync(join(dir, file))).length, 0)
  const kB = Math.ceil(bytes / 1000)
  console.error(`The app: ${kB} kB of script (gzipped) at the first load; at most ${FIRST_LOAD_KB}.`)
  if (kB > FIRST_LOAD_KB)
    throw new Error(
      `The first load of the app is ${kB} kB of script; at most ${FIRST_LOAD_KB}. Load what is not wanted at once by import().`,
    )
  return kB
}

/** The typings of the two library doors. */
function declareTypes(to) {
  const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc')
  execFileSync(process.execPath, [tsc, '-p', 'tsconfig.types.json', '--outDir', to], { cwd: root, stdio: 'inherit' })
}

function copyFonts(to) {
  mkdirSync(to, { recursive: true })
  for (const font of FONTS.map((url) => fileURLToPath(url))) {
    cpSync(font, join(to, basename(font)))
    const home = dirname(dirname(font))
    cpSync(join(home, 'LICENSE'), join(to, `${basename(home)}.LICENSE`))
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build()
