import { expect, test } from 'vitest'
import { cssString, escaped, markup, trusted } from './markup.ts'

test('what goes into a template is escaped unless it is markup', () => {
  expect(markup`<b title="${'"><script>'}">${'a < b & c'}</b>`.markup).toBe(
    '<b title="&quot;&gt;&lt;script&gt;">a &lt; b &amp; c</b>',
  )
  expect(markup`<p>${trusted('<i>x</i>')}${[markup`<b/>`, ' & ', 3]}</p>`.markup).toBe('<p><i>x</i><b/> &amp; 3</p>')
})

test('undefined and false leave nothing', () => {
  expect(markup`a${undefined}b${false}c`.markup).toBe('abc')
})

test('letters that no XML file may hold are replaced', () => {
  expect(escaped('a\u0000b\u001bc')).toBe('a\u{FFFD}b\u{FFFD}c')
})

test('a CSS string cannot end its string, its rule or its style element', () => {
  const text = cssString('"}</style><script>\\')
  expect(text).not.toMatch(/[<>{}/]|.["].*"$/)
  expect(text).toBe('"\\22 \\7d \\3c \\2f style\\3e \\3c script\\3e \\5c "')
})
