// The child of the tests of restoring: it restores, and dies by its own hand before or after the n-th change of a name.
import { rename } from 'node:fs/promises'
import { restore } from '../keep/restore.ts'

const [backup = '', folder = '', die = '0'] = process.argv.slice(2)
let left = Number(die)
const step = () => {
  left -= 1
  if (left === 0) process.kill(process.pid, 'SIGKILL')
}
await restore(backup, folder, Date.UTC(2026, 2, 14, 9), async (from, to) => {
  step()
  await rename(from, to)
  step()
})
