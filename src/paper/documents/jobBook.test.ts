import { expect, test } from 'vitest'
import { sequenceOf, workUp } from '../../job/workUp.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import { tailBox, tailBoxBook } from '../testing/tailBox.ts'
import { xmlFault } from '../testing/xmlFault.ts'
import { jobBook } from './jobBook.ts'

const input = tailBoxBook()
const html = jobBook(input)
const words = (text: string) =>
  text
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
const body = (text: string) => text.slice(text.indexOf('<body>'), text.indexOf('</body>') + 7)
/** HTML leaves some tags open; the book leaves only these. */
const closed = (text: string) => body(text).replace(/<(br|col)((?:\s[^>]*)?)>/g, '<$1$2/>')

test('the example has a sequence, or nothing below means anything', () => {
  expect(input.work.faults).toEqual([])
  expect(input.result.proven).toBe(true)
  expect(input.result.steps.length).toBeGreaterThan(20)
})

test('it is well formed, and every drawing in it says what it shows', () => {
  expect(xmlFault(closed(html))).toBeUndefined()
  const drawings = html.match(/<svg[^>]*class="d"/g) ?? []
  expect(drawings.length).toBeGreaterThan(20)
  expect(
    html.match(/<svg[^>]*class="d"[^>]*aria-label="[^"]+"[^>]*><title>[^<]+<\/title><desc>[^<]+<\/desc>/g),
  ).toHaveLength(drawings.length)
})

test('every step of the sequence has its sheet, in order, and its row in the table', () => {
  const sheets = [...html.matchAll(/<article class="step" id="step-(\d+)" data-step="([^"]*)"/g)].map((match) => [
    Number(match[1]),
    match[2],
  ])
  expect(sheets).toEqual(input.result.steps.map(({ op }, index) => [index + 1, op]))
  for (const [number] of sheets) expect(html).toContain(`href="#step-${number}"`)
})

test('a step sheet says what, where, how long, why here, and has its drawing', () => {
  const sheet = /<article[^>]*data-step="bearing A">.*?<\/article>/s.exec(html)?.[0] ?? ''
  const text = words(sheet)
  expect(text).toContain('bearing A onto shaft')
  expect(text).toContain('box, wall A up, assembly bench')
  expect(text).toMatch(/min \(4 to 9\)/)
  expect(text).toMatch(/Why here .*(before|after) \d+/)
  expect(text).toMatch(/Clock .* at least 30 min/)
  expect(text).toContain('warm it to')
  expect(sheet).toContain('aria-label="Caution"')
  expect(sheet).toContain('class="part work" data-part="bearing A"')
})

test('a fit that is made on the bench stands on that sheet and not where the body goes home', () => {
  const sheet = (step: string) =>
    words(new RegExp(`<article[^>]*data-step="${step}">.*?</article>`, 's').exec(html)?.[0] ?? '')
  expect(sheet('bearing B')).toContain('press fit: bearing B and shaft')
  expect(sheet('shaft')).not.toContain('press fit')
})

test('the gasket is laid before the screws are turned, though the file names the screws first', () => {
  const sheet = words(/<article[^>]*data-step="cap B">.*?<\/article>/s.exec(html)?.[0] ?? '')
  expect(sheet).toMatch(/In this order .*Lay the gasket on.*Bring all to 20 N·m/)
})

test('tightening with a step of its own shows its map there', () => {
  const sheet = /<article[^>]*data-step="cover A fixing">.*?<\/article>/s.exec(html)?.[0] ?? ''
  expect(words(sheet)).toContain('Tightening map: cover A fixing')
  expect(sheet.match(/data-hole=/g)).toHaveLength(6)
})

test('what the sequence is worth, how far that is proven and on what it rests is said', () => {
  expect(words(html)).toContain('Proven: for what was told, no sequence is better.')
  expect(words(html)).toContain('Point of no return.')
  const open = jobBook({
    ...input,
    result: {
      ...input.result,
      proven: false,
      bound: [0, 600, 1],
      assumptions: [
        {
          relation: 'r',
          reason: {
            code: 'X',
            says: 'The pin is supposed to pass.',
            facts: {},
            origin: 'author',
            standing: 'supposed',
          },
          wouldChange: true,
        },
      ],
    },
  })
  expect(words(open)).toContain(
    'Not proven: the best that was found. Nothing can be better than 0 points of hazard, 10 min, 1 changes.',
  )
  expect(words(open)).toContain('The pin is supposed to pass. (supposed ?; without it another sequence is best)')
})

test('readings stand with verdict and gauge, and what is unmeasured is listed', () => {
  const text = words(/<section id="readings">.*?<\/section>/s.exec(html)?.[0] ?? '')
  expect(text).toContain('39.998 mm')
  expect(text).toContain('worn, usable')
  expect(text).toContain('out Beyond the limit for worn.')
  expect(text).toMatch(/Still unmeasured .*shaft seat B/)
})

test('the buying list has reasons, prices and a source to look up', () => {
  const kit = /<section id="kit">.*?<\/section>/s.exec(html)?.[0] ?? ''
  expect(words(kit)).toMatch(/bearing A 6208 1 bearing factor £19, 3 days Decided: renew/)
  const [, mark] = /href="#source-(\d+)"/.exec(kit) ?? []
  expect(html).toContain(`<tr id="source-${mark}">`)
})

test('what was not known is ranked', () => {
  const ranks = [
    ...(/<section id="not-known">.*?<\/section>/s.exec(html)?.[0] ?? '').matchAll(/<tr><td class="fig">(\d)/g),
  ].map((match) => Number(match[1]))
  expect(ranks.length).toBe(input.work.questions.length)
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
})

test('it prints: page boxes with the title block and the sheet number, repeated heads, nothing cut', () => {
  const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? ''
  expect(style).toMatch(/@page\{[^}]*margin/)
  expect(style).toContain('counter(page) " of " counter(pages)')
  expect(style).toContain('tail box of the slate mill')
  expect(style).toContain('thead{display:table-header-group}')
  expect(style).toMatch(/figure\{[^}]*break-inside:avoid/)
  expect(style).toMatch(/\.step\{break-inside:avoid/)
  expect(jobBook({ ...input, sheet: 'letter' })).toContain('size:letter')
  expect(style).not.toMatch(/[{;]size:/)
})

test('it asks nothing of a network and runs nothing', () => {
  expect(html).not.toMatch(/<script|<link|<img|@import|https?:\/\/(?!www\.w3\.org\/2000\/svg)/)
  expect(jobBook({ ...input, fonts: { words: 'AAAA', figures: 'BBBB' } })).toContain(
    'src:url(data:font/woff2;base64,AAAA)',
  )
})

test('nothing that a person wrote can break the book', () => {
  const hostile = '</style><script>alert(1)</script>"&'
  const yaml = JSON.stringify(hostile)
  const change = (text: string) =>
    text
      .replace('unit: tail box of the slate mill', `unit: ${yaml}`)
      .replace('owner: Hollinscar Quarry Railway', `owner: ${yaml}`)
      .replaceAll('blue at the inner ring', yaml)
      .replaceAll('lid:', `${yaml}:`)
      .replaceAll(/\blid\b(?=[,}\]])/g, yaml)
      .replace('note: The drain groove looks down.', `note: ${yaml}`)
      .replace('by: M. Ashdown', `by: ${yaml}`)
      .replaceAll('works drawing HQ-52 (invented)', yaml)
      .replace('from: bearing factor', `from: ${yaml}`)
  const book = jobBook({ ...tailBoxBook(change), date: hostile, person: hostile })
  expect(book.match(/<\/style>/g)).toHaveLength(1)
  expect(book).not.toContain('<script')
  expect(xmlFault(closed(book))).toBeUndefined()
  expect(book.match(/&lt;script&gt;/g)?.length).toBeGreaterThan(20)
})

test('in inches the same book reads in inches first', () => {
  const inch = words(jobBook(tailBoxBook(undefined, 'inch')))
  expect(inch).toMatch(/39\.998 mm worn|1\.5747 in 39\.998 mm/)
  expect(inch).toContain('249.8 °F')
})

test('where nothing can be done it tells the conflict, and makes no step sheets', () => {
  const unit = tailBox((text) =>
    text.replace('sets: {', 'orders:\n  - {first: lid, then: shaft, why: told wrongly}\nsets: {'),
  )
  const work = workUp({ unit })
  const book = jobBook({ work, result: sequenceOf(work), settings: [], kit: [], system: 'metric', date: 'today' })
  expect(words(book)).toContain('There is no sequence')
  expect(words(book)).toContain('told wrongly')
  expect(book).not.toContain('<article')
})

test('a unit of which only the names are known still has a book', () => {
  const { unit } = readUnit(
    'matchmark: unit/1\nunit: pump\nhousing: body\nparts: {body: {}, gland: {}, rotor: {onto: body}}',
    'pump.unit.yaml',
  )
  if (!unit) throw new Error('unit')
  const work = workUp({ unit })
  const book = jobBook({ work, result: sequenceOf(work), settings: [], kit: [], system: 'metric', date: 'today' })
  expect(xmlFault(closed(book))).toBeUndefined()
  expect(book.match(/<article/g)).toHaveLength(2)
})

test('what was taken, what is open and what contradicts stand beside the proof', () => {
  const fault = { message: 'Two things exclude each other.', next: 'Measure `seat A` again.' } as never
  const open = { rank: 1, about: 'shaft', asks: 'Give `joined` at the shaft.', holdsUp: 'the sequence' } as never
  const work = { ...input.work, taken: ['The variant B was taken.'], faults: [fault], questions: [open] }
  const book = jobBook({ ...input, work })
  const cover = /<main>.*?<\/main>/s.exec(book)?.[0] ?? ''
  expect(cover).toMatch(/class="stop">.*Two things exclude each other\..*<h3>At a glance/s)
  expect(words(cover)).toContain('Proven for the rest')
  expect(words(cover)).not.toContain('Proven: for what was told')
  expect(words(cover)).toMatch(/It rests on\s+The variant B was taken\./)
  expect(words(cover)).not.toContain('no supposed relation')
  expect(cover).toContain('<a href="#not-known">1 thing that is not known</a> could change it.')
  expect(words(cover)).toContain('1 of rank 1 (holds up the sequence or a setting)')
  expect(words(book)).toContain('Give “joined” at the shaft.')
  expect(book).not.toContain('`')
})
