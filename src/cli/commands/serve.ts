// `serve DIR`: shows the job books of a folder on this machine until it is stopped.
import { stat } from 'node:fs/promises'
import { Problem } from '../../problem/problem.ts'
import { jobBookServer } from '../../server/jobBookServer.ts'
import { listen } from '../../server/listen.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'

export interface ServeAsked extends Asked {
  readonly port?: number
}

export async function serve(io: Io, folder: string, asked: ServeAsked): Promise<ExitCode> {
  if (!(await isFolder(folder))) {
    throw new Problem('WRONG_USE', {
      reason: `There is no folder '${folder}'; expected one with job books in it`,
      help: 'matchmark serve --help',
    })
  }
  const app = await jobBookServer({ folder })
  try {
    // Before the door opens: who stops the program while it opens means it too.
    const stopped = io.stopped()
    const { url, taken } = await listen(app, { port: asked.port, wished: io.env('PORT') })
    if (taken !== undefined) io.err(`Port ${taken} is taken by another program; a free one was chosen.`)
    io.out(
      asked.json
        ? jsonLine({ schema: 'matchmark-serve/1', url })
        : `The job books of ${folder} are at ${url}/ — Ctrl-C ends.`,
    )
    await stopped
  } finally {
    await app.close()
  }
  return 0
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory()
  } catch {
    return false
  }
}
