// The library doors as another project meets them: packed to a tarball, unpacked into a project outside this tree, called and
// typed there. Bundled as scripts/build.mjs does it, but aside, so that no other test loses its dist/.
import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'rolldown'
import { afterAll, beforeAll, expect, test } from 'vitest'

const root = process.cwd()
const outside = mkdtempSync(join(tmpdir(), 'matchmark-packed-'))
const project = join(outside, 'project')
const run = (command: string, parameters: readonly string[], cwd = project) =>
  execFileSync(command, parameters, { cwd, encoding: 'utf8', stdio: 'pipe' })
const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc')

beforeAll(async () => {
  const whole = join(outside, 'whole')
  mkdirSync(whole)
  for (const file of ['package.json', 'LICENSE', 'README.md']) cpSync(join(root, file), join(whole, file))
  await build({
    ...{
      cwd: root,
      input: { mechanics: 'src/mechanics/index.ts', planning: 'src/planning/index.ts' },
      platform: 'node',
      logLevel: 'warn',
    },
    output: { dir: join(whole, 'dist'), format: 'esm', entryFileNames: '[name].js' },
  })
  run(process.execPath, [tsc, '-p', 'tsconfig.types.json', '--outDir', join(whole, 'dist', 'types')], root)
  run('npm', ['pack', '--ignore-scripts', '--offline', '--pack-destination', outside], whole)

  const home = join(project, 'node_modules', 'matchmark')
  mkdirSync(home, { recursive: true })
  const tarball = readdirSync(outside).find((file) => file.endsWith('.tgz')) as string
  run('tar', ['-xzf', join(outside, tarball), '-C', home, '--strip-components=1'])
  // What an install would lay beside it.
  const { dependencies } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')) as { dependencies: object }
  for (const name of Object.keys(dependencies).filter((one) => !one.includes('/'))) {
    symlinkSync(join(root, 'node_modules', name), join(project, 'node_modules', name))
  }
  writeFileSync(join(project, 'package.json'), '{ "type": "module" }')
})

afterAll(() => rmSync(outside, { recursive: true, force: true }))

test('another project calls a calculation by its package name', () => {
  writeFileSync(
    join(project, 'main.js'),
    `import { moduleFromDiametralPitch, spanSize, identifyThread, simulateStackUp } from 'matchmark/mechanics'
const module = moduleFromDiametralPitch(8)
console.log(JSON.stringify({
  module,
  span: spanSize({ module, teeth: 24, pressureAngle: (20 * Math.PI) / 180, across: 3 }),
  thread: identifyThread({ diameter: 0.00985, of: 'screw', pitch: 0.0015 }).matches[0].designation,
  gap: simulateStackUp({ links: [{ sign: 1, size: 0.04, tolerance: 0.0001 }], seed: 1, samples: 1000 }).samples,
}))`,
  )
  const { module, span, thread, gap } = JSON.parse(run(process.execPath, ['main.js']))
  expect(module).toBe(0.003175)
  // 7.7165 module, the tabled span of 24 teeth across 3 at 20° (spanSize.check.csv holds the function itself).
  expect(span / module).toBeCloseTo(7.7165, 3)
  expect([thread, gap]).toEqual(['M10×1.5', 1000])
})

test('its types come along: the right call compiles, a wrong unit does not', () => {
  writeFileSync(
    join(project, 'typed.ts'),
    `import { moduleFromDiametralPitch, nutAngle, spanSize, type Range } from 'matchmark/mechanics'
const module = moduleFromDiametralPitch(8)
const angle = nutAngle({ travel: module, lead: module })
export const span: number = spanSize({ module, teeth: 24, pressureAngle: angle.low, across: 3 })
export const turned: Range<number> = angle
// @ts-expect-error: a length is no angle
spanSize({ module, teeth: 24, pressureAngle: module, across: 3 })
// @ts-expect-error: a bare number has no unit
spanSize({ module: 0.003, teeth: 24, pressureAngle: angle.low, across: 3 })
`,
  )
  const options = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--types', '', 'typed.ts']
  expect(run(process.execPath, [tsc, ...options])).toBe('')
})

const SMALL = `{ schema: 'matchmark-planning/1', people: 1, lags: [], start: { attitudes: {} },
  changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0 },
  operations: ['seal', 'float'].map((id) => ({
    id, does: id, duration_s: { low: 60, usual: 60, high: 60 },
    modes: [{ id: 'by hand', setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' }, people: 1, needs: [] }],
    needs: id === 'seal' ? [{ id: 'n', anyOf: [{ done: ['float'], notDone: [] }], giveUp: 1,
      reason: { code: 'X', says: 'The float is read without the seal.', facts: {}, origin: 'author', standing: 'told' } }] : [],
  })) }`

test('another project plans by the package name, and its types come along', () => {
  writeFileSync(
    join(project, 'plan.js'),
    `import { countSequences, plan } from 'matchmark/planning'
const problem = ${SMALL}
const { value, proven, steps } = plan(problem)
console.log(JSON.stringify({ value, proven, order: steps.map(({ op }) => op), count: countSequences(problem) }))`,
  )
  const said = JSON.parse(run(process.execPath, ['plan.js']))
  expect(said).toEqual({ value: [0, 120, 0], proven: true, order: ['float', 'seal'], count: '1' })
  writeFileSync(
    join(project, 'typedPlan.ts'),
    `import { type PlanningProblem, type PlanResult, plan } from 'matchmark/planning'
declare const problem: PlanningProblem
export const result: PlanResult = plan(problem, { effort: 1000 })
// @ts-expect-error: an effort is a number
plan(problem, { effort: 'much' })
`,
  )
  const options = ['--noEmit', '--strict', '--module', 'nodenext', '--target', 'es2023', '--types', '', 'typedPlan.ts']
  expect(run(process.execPath, [tsc, ...options])).toBe('')
})
