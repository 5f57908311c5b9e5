import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { readNotes } from './calculationNotes.ts'

const file = fileURLToPath(new URL('../src/figures/frame/notes.json', import.meta.url))

test('the notes of the calculations are what their docstrings say (otherwise: npm run pages)', () => {
  const text = `${JSON.stringify(readNotes(), null, 2)}\n`
  if (process.env.MATCHMARK_PAGES === 'write') writeFileSync(file, text)
  expect(readFileSync(file, 'utf8')).toBe(text)
})

test('one line for two inputs is told apart', () => {
  const { overPins, pressFit } = readNotes()
  expect(overPins!.params).toMatchObject({ module: 'symbol m_n', teeth: 'symbol z' })
  expect(pressFit!.params.hub).toBe('materials by name or in full')
  expect(pressFit!.source).toMatch(/^Norton/)
})
