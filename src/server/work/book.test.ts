import { expect, test } from 'vitest'
import { sampleEntries, UNIT_TEXT } from '../../record/testing/quarryRailway.ts'
import { Writer } from '../../stores/testing/writer.ts'
import work, { type WorkerTask } from './worker.ts'

test('the book that the shop makes from the record has its tries and its counted bolts', async () => {
  const office = new Writer('office')
  const entries = [
    ...sampleEntries(office),
    office.write('setting-try', { connection: 'input setting', check: 'input float', tried: 'S1 + S2', result: 'bad' }),
    office.write('step-signed', {
      step: 'joint bolts',
      tightened: [{ connection: 'joint bolts', stage: 2, says: 'all to 45 N·m', count: 12, of: 12 }],
    }),
  ]
  const port = { postMessage: () => undefined, close: () => undefined } as unknown as WorkerTask['port']
  const input = { job: 'J41', unit: UNIT_TEXT, entries: JSON.stringify(entries), effort: 5_000 }
  const { html } = (await work({ kind: 'book', input, port })) as { html: string }
  expect(html).toContain('As set and tightened')
  expect(html).toContain('S1 + S2')
  expect(html).toContain('at stage 2, all to 45 N·m')
}, 60_000)
