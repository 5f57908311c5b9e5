// Whatever is handed in, the answer is a few lines that say what is wrong, in time and without a stack trace.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { diskFiles } from './diskFiles.ts'
import { say } from './testing/desk.ts'

const folder = mkdtempSync(join(tmpdir(), 'matchmark-bad-'))
afterAll(() => rmSync(folder, { recursive: true }))
mkdirSync(join(folder, 'a folder.yaml'))

const tailBox = readFileSync(new URL('../unit/housings/tail-box.unit.yaml', import.meta.url), 'utf8')

const box = (...changes: readonly (readonly [found: string, instead: string])[]) =>
  changes.reduce((text, [found, instead]) => {
    if (!text.includes(found)) throw new Error(`the example no longer has '${found}'`)
    return text.replace(found, instead)
  }, tailBox)

/** Nine levels of ten references each: a thousand million values if anybody followed them. */
const bomb = [
  'matchmark: unit/1',
  'a: &a [x, x, x, x, x, x, x, x, x, x]',
  ...'bcdefghi'.split('').map((name, level) => {
    const below = 'abcdefghi'[level]
    return `${name}: &${name} [${Array.from({ length: 10 }, () => `*${below}`).join(', ')}]`
  }),
].join('\n')

const job = (...lines: string[]) => ['matchmark: job/1', 'job: J1', 'unit: good.unit.yaml', ...lines].join('\n')

const noise = (bytes: number) => new Uint8Array(bytes).map((_, index) => Math.imul(index, 2_654_435_761) >>> 13)

const FILES: Readonly<Record<string, string | Uint8Array>> = {
  'good.unit.yaml': tailBox,
  'truncated.yaml': tailBox.slice(0, tailBox.indexOf('outside B]') + 5),
  'wrong unit.yaml': box(['mass: 0.37', 'mass: 0.37 mm']),
  'circle.yaml': `${tailBox}\norders:\n  - {first: lid, then: float}\n  - {first: float, then: cover A}\n`,
  'no way in.yaml': box(['  drain plug:', '  core: { line 2: "100..140: 120" }\n  drain plug:']),
  'seats.yaml': box(['"153..170: 72/35" }', '"153..170: 72/35", seats against: cover A }']),
  'no feature.job.yaml': job('readings:', '  - {part: shaft, feature: seat Z, reads: 40.010}'),
  'no unit.job.yaml': job().replace('good.unit.yaml', 'lost.unit.yaml'),
  'junk.yaml': noise(10_000_000),
  'long text.yaml': 'a: b\n'.repeat(2_000_000),
  'small junk.yaml': noise(500),
  'bomb.yaml': bomb,
  'deep.yaml': `a: ${'['.repeat(100_000)}`,
  'empty.yaml': '',
  'utf-16.yaml': new Uint8Array([0xff, 0xfe, 0x6d, 0x00]),
  'latin.yaml': new Uint8Array([0x61, 0x3a, 0x20, 0xfc, 0x0a]),
}
for (const [name, content] of Object.entries(FILES)) writeFileSync(join(folder, name), content)

const asked = (verb: string, name: string, ...more: string[]) =>
  say([verb, join(folder, name), ...more], { files: diskFiles })

test('the file that the bad ones are made from is good', async () => {
  expect(await asked('check', 'good.unit.yaml')).toMatchObject({ code: 0, err: '' })
})

// The first number is the exit code. The place is line and column.
test.each([
  ['truncated.yaml', 1, /truncated\.yaml:\d+:\d+: This is not readable YAML: .* Mend the line named here/],
  [
    'wrong unit.yaml',
    1,
    /wrong unit\.yaml:49:\d+: 'mm' \(millimetre\) is a unit of length, not of mass\. Write the mass in one of kg/,
  ],
  ['no way in.yaml', 1, /no way in\.yaml:\d+:\d+: No way brings core home\..*would meet/],
  ['seats.yaml', 1, /seats\.yaml:50:\d+: bearing B is said to stand against cover A, .* 148\.1 mm apart/],
  ['no feature.job.yaml', 1, /no feature\.job\.yaml:5:\d+: .*'seat Z'.*no feature of 'shaft'/],
  ['no unit.job.yaml', 2, /lost\.unit\.yaml cannot be read: there is no such file/],
  ['junk.yaml', 2, /10 MB long; at most 1 MB are read/],
  ['long text.yaml', 2, /10 MB long; at most 1 MB are read/],
  ['small junk.yaml', 2, /is not a text file/],
  ['bomb.yaml', 1, /bomb\.yaml:2:4: '&a' is an anchor of YAML, which is not read here/],
  ['deep.yaml', 1, /deep\.yaml:1:\d+: Blocks and lists stand inside one another more than 40 deep/],
  ['empty.yaml', 1, /empty\.yaml:1:1: Nothing stands here; expected/],
  ['utf-16.yaml', 2, /is not a text file: it is saved as UTF-16/],
  ['latin.yaml', 2, /is not a text file: its letters are not UTF-8/],
  ['a folder.yaml', 2, /is a folder; expected a unit or a job file/],
  ['not there.yaml', 2, /cannot be read: there is no such file/],
])(
  '%s: told, and ends with %i',
  async (name, code, told) => {
    for (const verb of ['check', 'sequence']) {
      const said = await asked(verb, name)
      expect(said.err).toMatch(told)
      expect(said.err).not.toMatch(/^\s+at |node:internal/m)
      expect(said.code).toBe(code)
    }
  },
  20_000,
)

test('steps that wait for each other: no sequence, and the orders that cannot all hold', async () => {
  const { code, out, err } = await asked('sequence', 'circle.yaml')
  expect(code).toBe(1)
  expect(err).toBe('')
  expect(out).toContain('No sequence is possible, for what was told.')
  expect(out).toContain('These cannot all hold; take any one out and the others can:')
  expect(out).toContain('cover A onto box: float before cover A, as told.')
  expect(out).toContain('Check: float: float wants cover A home.')
  const { conflict, value, proven, feasible } = JSON.parse((await asked('sequence', 'circle.yaml', '--json')).out)
  expect({ value, proven, feasible }).toEqual({ value: null, proven: false, feasible: 'no' })
  expect(conflict.irreducible).toBe(true)
})

test('a pipe that nobody fills is not waited for', async () => {
  const said = await say(['check', '/dev/null'], { files: diskFiles })
  expect(said).toMatchObject({ code: 2, out: '' })
  expect(said.err).toContain('it is a device or a pipe, no file')
})
