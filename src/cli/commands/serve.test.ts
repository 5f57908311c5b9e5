import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { say } from '../testing/desk.ts'

const folder = mkdtempSync(join(tmpdir(), 'matchmark-serve-'))
writeFileSync(join(folder, 'book.html'), '<title>A book</title>')
afterAll(() => rmSync(folder, { recursive: true }))

/** Some other program, with a port of its own. */
async function neighbour(): Promise<{ server: Server; port: number }> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return { server, port: (server.address() as { port: number }).port }
}

/** Serves, asks for a page, stops. */
async function served(words: readonly string[], port?: string) {
  let page = ''
  let url = ''
  const said = await say(['serve', folder, '--json', ...words], {
    out: (text) => {
      url = JSON.parse(text).url ?? ''
    },
    env: (name) => (name === 'PORT' ? port : undefined),
    stopped: async () => {
      while (!url) await new Promise((resolve) => setTimeout(resolve, 5))
      page = await (await fetch(`${url}/books`)).text()
    },
  })
  return { ...said, url, page }
}

test('it shows the books at the port asked for until it is stopped, then leaves the port', async () => {
  const { server, port } = await neighbour()
  await new Promise((resolve) => server.close(resolve))
  const { code, url, page } = await served(['--port', String(port)])
  expect(url).toBe(`http://127.0.0.1:${port}`)
  expect(page).toContain('A book')
  expect(code).toBe(0)
  await expect(fetch(url)).rejects.toThrow()
})

test('a port asked for that another program has is a wrong wish', async () => {
  const { server, port } = await neighbour()
  const { code, err } = await say(['serve', folder, '--port', String(port)])
  expect(code).toBe(2)
  expect(err).toBe(
    `Nothing can be served on port ${port}: another program has it. Name another port, or none to have a free one taken.`,
  )
  server.close()
})

test('where PORT is taken a free port is chosen, and it says so', async () => {
  const { server, port } = await neighbour()
  const { code, err, url, page } = await served([], String(port))
  expect(code).toBe(0)
  expect(err).toBe(`Port ${port} is taken by another program; a free one was chosen.`)
  expect(url).not.toBe(`http://127.0.0.1:${port}`)
  expect(page).toContain('A book')
  server.close()
})

test('a PORT that is none is told', async () => {
  const { code, err } = await say(['serve', folder], { env: () => 'eighty' })
  expect(code).toBe(2)
  expect(err).toContain("PORT is 'eighty'; expected a number from 0 to 65535")
})
