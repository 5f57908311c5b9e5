// The sheet that lists the job books of a folder, closed by a title block as a drawing is.
import { markup, trusted } from '../../paper/markup.ts'

export interface Book {
  /** The name of its file. */
  readonly name: string
  /** Its title and a line about it, escaped already: they are taken from the book's own markup. */
  readonly title: string
  readonly about: string
  readonly written: Date
  readonly bytes: number
}

export function indexSheet(books: readonly Book[]): string {
  const rows = books.map(
    ({ name, title, about, written, bytes }) => markup`
    <tr>
      <th scope="row"><a href="/books/${encodeURIComponent(name)}">${trusted(title)}</a>${about && markup`<br><span>${trusted(about)}</span>`}</th>
      <td>${dateWords(written)}</td>
      <td class="figure">${Math.max(1, Math.round(bytes / 1000))} kB</td>
    </tr>`,
  )
  const list = books.length
    ? markup`<table><thead><tr><th scope="col">Job book</th><th scope="col">Written</th><th scope="col">Size</th></tr></thead><tbody>${rows}</tbody></table>`
    : markup`<p>No job book has been written into this folder yet.</p>`
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Job books</title>
<link rel="icon" href="/mark.svg" type="image/svg+xml">
<style>${trusted(STYLE)}</style>
</head>
<body>
<main>
<p><a href="/">To the jobs</a></p>
<h1>Job books</h1>
<p>Open one to read it; print it there, or keep it as PDF, with the browser's own printing.</p>
${list}
<dl>
  <div><dt>Title</dt><dd>List of job books</dd></div>
  <div><dt>Made by</dt><dd>Matchmark</dd></div>
  <div><dt>Books</dt><dd>${books.length}</dd></div>
  <div><dt>Newest</dt><dd>${books[0] ? dateWords(books[0].written) : '–'}</dd></div>
</dl>
</main>
</body>
</html>
`.markup
}

/** After ISO 8601, to the minute, in the time of this machine. */
function dateWords(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0')
  const day = [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())].join('-')
  return `${day} ${two(date.getHours())}:${two(date.getMinutes())}`
}

const STYLE = `
:root { color-scheme: light dark; --paper: #F6F8F5; --bench: #E3E9E6; --ink: #12181B; --faint: #3F4B50; --rule: #9AA6A8; --blue: #1F3DA6; }
@media (prefers-color-scheme: dark) {
  :root { --paper: #161D1C; --bench: #0D1211; --ink: #F1F2EA; --faint: #C5CCC6; --rule: #55625F; --blue: #9FB8FF; }
}
body { margin: 0; padding: 18px; background: var(--bench); color: var(--ink); font: 17px/1.35 "Atkinson Hyperlegible Next", sans-serif; }
main { display: flow-root; max-width: 60rem; margin: auto; padding: 24px; background: var(--paper); border: 3px solid var(--ink); }
h1 { margin: 0 0 24px; font-size: 27px; line-height: 1.12; }
table { width: 100%; border-collapse: collapse; }
th, td { padding: 12px 8px; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
thead th { color: var(--faint); font-size: 13px; font-weight: normal; }
tbody th { font-weight: normal; }
tbody span { color: var(--faint); font-size: 15px; }
td { white-space: nowrap; }
.figure { text-align: right; font-variant-numeric: tabular-nums; }
a { display: inline-block; padding: 8px 0; color: var(--blue); font-weight: bold; }
a:focus-visible { outline: 3px solid var(--blue); outline-offset: 2px; }
dl { display: grid; grid-template-columns: 2fr 1fr; width: min(352px, 100%); margin: 32px 0 0 auto; border: 2px solid var(--ink); border-width: 2px 0 0 2px; }
dl div { padding: 4px 8px; border: 1px solid var(--ink); border-width: 0 1px 1px 0; }
dt { color: var(--faint); font-size: 13px; }
dd { margin: 0; }
@media (max-width: 640px) {
  body { padding: 8px; overflow-wrap: anywhere; }
  main { padding: 12px; }
  table, tbody, tr, th, td { display: block; }
  thead { display: none; }
  tr { padding: 8px 0; border-bottom: 1px solid var(--rule); }
  th, td { padding: 2px 0; border: 0; }
  td { white-space: normal; }
  .figure { text-align: left; }
}
`
