import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { tailBox } from '../unit/file/tailBox.example.ts'
import { memoryFiles, say } from './testing/desk.ts'

const files = memoryFiles(new Map([['box.unit.yaml', tailBox]]))

test('nothing asked: what can be asked is listed, and that is no fault', async () => {
  const { code, out, err } = await say([])
  expect(code).toBe(0)
  expect(err).toBe('')
  for (const verb of ['check', 'sequence', 'why', 'settings', 'kit', 'reach', 'book', 'serve', 'start']) {
    expect(out).toMatch(new RegExp(`^  ${verb}\\b`, 'm'))
  }
})

test('the version is that of the package', async () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'))
  expect(await say(['--version'])).toEqual({ code: 0, out: version, err: '' })
})

test.each([
  [['chek', 'box.unit.yaml'], /^Unknown command 'chek'.*check/],
  [['check'], /^Missing required argument 'FILE'/],
  [['check', 'box.unit.yaml', 'and', 'more'], /^Too many arguments/],
  [['check', 'box.unit.yaml', '--jsn'], /^Unknown option '--jsn'.*--json/],
  [['sequence', 'box.unit.yaml', '--effort', 'much'], /Expected a whole number above 0/],
  [['sequence', 'box.unit.yaml', '--seconds', '-1'], /Expected a number above 0/],
  [['check', 'box.unit.yaml', '--inch', '--metric'], /'--inch' cannot be used with option '--metric'/],
  [['book', 'box.unit.yaml'], /'-o, --into <DIR>' not specified/],
  [['serve', '--port', '70000'], /Expected 0 to 65535/],
  [['check', 'nowhere.yaml'], /^The file nowhere\.yaml cannot be read: there is no such file\. Check the name/],
])('wrong use %j is told in one line and ends with 2', async (words, told) => {
  const { code, out, err } = await say(words, { files })
  expect(err).toMatch(told)
  expect(err.split('\n')).toHaveLength(1)
  expect(out).toBe('')
  expect(code).toBe(2)
})

test('with --json wrong use is told to machines too', async () => {
  const { code, out, err } = await say(['sequence', 'nowhere.yaml', '--json'])
  expect({ code, err }).toEqual({ code: 2, err: '' })
  expect(JSON.parse(out)).toMatchObject({ schema: 'matchmark-faults/1', faults: [{ code: 'FILE_UNREADABLE' }] })
})

test('a fault of the program is told in one line, with where it happened, and ends with 70', async () => {
  const broken = {
    ...memoryFiles(new Map()),
    read: async () => Promise.reject(new TypeError('x is\nnot a function')),
  }
  const { code, out, err } = await say(['check', 'box.unit.yaml'], { files: broken })
  expect(code).toBe(70)
  expect(out).toBe('')
  expect(err).toMatch(
    /^This is a fault of Matchmark .*, not of your file: TypeError: x is not a function \(.*run\.test\.ts.*\)/,
  )
  expect(err.split('\n')).toHaveLength(1)
})

test('every fault of a file is told at its place, and ends with 1', async () => {
  const bad = tailBox.replace('housing:', 'housng:')
  const { code, err } = await say(['check', 'bad.yaml'], { files: memoryFiles(new Map([['bad.yaml', bad]])) })
  expect(code).toBe(1)
  expect(err).toMatch(/^bad\.yaml:\d+:\d+: .*'housng' is not known here; did you mean 'housing'\?/m)
})

test('colour only where a person looks', async () => {
  const colourCode = '\u001b['
  expect((await say(['check', 'box.unit.yaml'], { files })).out).not.toContain(colourCode)
  expect((await say(['check', 'box.unit.yaml'], { files, colour: true })).out).toContain(colourCode)
})
