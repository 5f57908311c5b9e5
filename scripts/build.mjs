// Bundles the command line, the server and the two library doors into dist/.
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(fileURLToPath(import.meta.url), '..', '..')

export async function build() {
  const { build: rolldown } = await import('rolldown')
  await rolldown({
    cwd: root,
    input: {
      cli: 'src/cli/main.ts',
      server: 'src/server/main.ts',
      mechanics: 'src/mechanics/index.ts',
      planning: 'src/planning/index.ts',
    },
    platform: 'node',
    logLevel: 'warn',
    transform: { target: 'node20' },
    output: {
      dir: join(root, 'dist'),
      format: 'esm',
      cleanDir: true,
      entryFileNames: '[name].js',
      chunkFileNames: 'chunks/[name]-[hash].js',
      banner: (chunk) => (chunk.name === 'cli' ? '#!/usr/bin/env node' : ''),
    },
  })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build()
