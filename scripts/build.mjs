// Bundles the command line and the two library doors into dist/, with the fonts of the job book beside them.
// Built aside and moved into place: a start that fails or is stopped half way leaves the old dist/ as it was.
import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

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
    await bundle(aside)
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
