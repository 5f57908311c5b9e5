import { expect, test } from 'vitest'
import { jsonLine } from './asked.ts'
import { shown } from './shown.ts'
import { penFor } from './words/pen.ts'

const HOSTILE = 'J41\u001b[2J\u001b]0;owned\u0007\r\u009b8m\u202Egnp.exe\u007f'

test.each([true, false])('a name out of a file does not rule the terminal (colour: %s)', (colour) => {
  const pen = penFor({ colour, width: 80 })
  const text = shown(pen.strong(`job ${HOSTILE}\n\tmm · µm · ½ · "`), colour)
  expect(text).toBe(pen.strong('job J41�[2J�]0;owned���8m�gnp.exe�\n\tmm · µm · ½ · "'))
})

test('without colours not even ours pass; with them, nothing that only begins as they do', () => {
  expect(shown('\u001b[31mred', false)).toBe('�[31mred')
  expect(shown('\u001b[311m\u001b[8mhidden\u001b', true)).toBe('�[311m�[8mhidden�')
})

test('for machines it is said in letters, and is the same', () => {
  const line = jsonLine({ job: HOSTILE })
  expect(line).toMatch(/^[\x20-\x7e]+$/)
  expect(JSON.parse(line)).toEqual({ job: HOSTILE })
})
