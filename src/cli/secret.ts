// Asks for something that is not to be seen on the screen; from a pipe, the first line is taken.
import { createInterface } from 'node:readline'
import { Writable } from 'node:stream'

export async function secret(prompt: string): Promise<string> {
  const { stdin, stderr } = process
  if (stdin.isTTY) stderr.write(prompt)
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() })
  const lines = createInterface({ input: stdin, output: nowhere, terminal: stdin.isTTY === true })
  try {
    for await (const line of lines) return line.trim()
    return ''
  } finally {
    lines.close()
    if (stdin.isTTY) stderr.write('\n')
  }
}
