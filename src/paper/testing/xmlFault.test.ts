import { expect, test } from 'vitest'
import { xmlFault } from './xmlFault.ts'

test('well-formed markup has no fault', () => {
  expect(xmlFault('<?xml version="1.0"?><svg a="1"><title>x &amp; y</title><path d="M0 0"/></svg>')).toBeUndefined()
})

test.each([
  ['<a><b></a></b>', '</a> closes nothing'],
  ['<a>', '<a> is not closed'],
  ['<a>1 < 2</a>', "stray < in '1 < 2'"],
  ['<a>x & y</a>', "stray & near 'x & y'"],
  ['<a b="1" b="2"/>', '<a> has an attribute twice'],
  ['<a id="x"/><b id="x"/>', 'id x twice'],
])('%s is refused', (text, fault) => {
  expect(xmlFault(text)).toBe(fault)
})
