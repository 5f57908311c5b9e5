// The shell of a paper: type, colours, page boxes. Black on white; every colour has a word or a mark beside it.
import { DRAWING_STYLE } from '../drawings/style.ts'
import { cssString, type Markup, markup, trusted } from '../markup.ts'

export interface Fields {
  readonly title: string
  readonly unit: string
  readonly owner?: string
  readonly job?: string
  readonly revision?: string
  readonly variant?: string
  readonly date: string
  readonly person?: string
}

interface Shell {
  readonly fields: Fields
  readonly fonts?: { readonly words: string; readonly figures: string }
  readonly sheet?: 'A4' | 'letter'
  readonly body: readonly (Markup | undefined)[]
}

const MOST_LETTERS = 46

const short = (text: string): string => (text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS - 1)}…` : text)

/** Two lines of a page box: name of field, entry. */
const lines = (...rows: readonly (readonly [string, string])[]): string =>
  rows.map(([field, entry]) => cssString(short(`${field}  ${entry}`))).join(' "\\A" ')

/**
 * The title block at the foot of each printed page (fields after ISO 7200). Page boxes, because fixed blocks run into the text;
 * where a browser has none, the block on the first sheet still says it all.
 */
function footer({ unit, owner, job, revision, variant, date, person }: Fields): string {
  const left = lines(['Unit', unit], ['Owner', owner ?? 'not told'])
  const middle = lines(
    ['Job', `${job ?? 'none yet'}${revision ? `, rev. ${revision}` : ''}`],
    ['Variant', variant ?? 'all'],
  )
  const right = `${lines(['Date', `${date}${person ? `, ${person}` : ''}`])} "\\A" "Sheet  " counter(page) " of " counter(pages)`
  const box =
    'font:600 8.5pt/1.35 var(--words);white-space:pre;text-align:left;vertical-align:top;border:.5mm solid #000;padding:1.2mm 2mm;height:12mm;margin-top:4mm;box-sizing:border-box;overflow:hidden'
  return `@bottom-left{content:${left};${box};width:36.5%}@bottom-center{content:${middle};${box};width:27%;border-left:0;border-right:0}@bottom-right{content:${right};${box};width:36.5%}`
}

const face = (family: string, base64: string): string =>
  `@font-face{font-family:"${family}";font-weight:200 800;src:url(data:font/woff2;base64,${base64.replace(/[^A-Za-z0-9+/=]/g, '')}) format("woff2")}`

const STYLE = `
:root{--paper:#fff;--well:#EFEFEC;--ink:#000;--ink-2:#2E383C;--ink-3:#4A565B;--rule:#8A9698;--blue-fill:#1F3DA6;--blue-deep:#142A78;--on-blue:#fff;--brass:#6A4800;--brass-fill:#F2D48A;--red:#A5280B;--red-fill:#F8DACF;--verd:#0B5E50;--hazard:#F6C400;--words:"Atkinson Hyperlegible Next Variable","Atkinson Hyperlegible Next",system-ui,sans-serif;--figures:"Atkinson Hyperlegible Mono Variable","Atkinson Hyperlegible Mono",ui-monospace,monospace}
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0 auto;max-width:182mm;color:var(--ink);background:var(--paper);font:10pt/1.35 var(--words);font-variant-numeric:tabular-nums}
h1{font-size:26pt;line-height:1.1;margin:0 0 3mm}
h2{font-size:16pt;line-height:1.15;margin:0 0 3mm;padding-bottom:1.2mm;border-bottom:.5mm solid #000;break-after:avoid}
h3{font-size:11.5pt;margin:4mm 0 1.2mm;break-after:avoid}
h4{font-size:9pt;margin:2.2mm 0 .4mm;color:var(--ink-3);font-weight:500;break-after:avoid}
p{margin:0 0 1.6mm}
ul,ol{margin:0 0 1.6mm;padding-left:4.6mm}
li{margin:0 0 .6mm}
section{break-before:page;padding-top:2mm}
section.runs-on{break-before:auto;padding-top:7mm}
figure{margin:0 0 2mm;break-inside:avoid}
figure svg{display:block;max-width:100%;height:auto}
figcaption{font-size:8.5pt;color:var(--ink-2)}
table{width:100%;table-layout:fixed;border-collapse:collapse;font-size:9pt;line-height:1.3}
thead{display:table-header-group}
tr{break-inside:avoid}
th{text-align:left;font-weight:500;color:var(--ink-3);border-bottom:.5mm solid #000;padding:1mm 1.5mm 1mm 0;vertical-align:bottom}
td,th{overflow-wrap:break-word}
td{border-bottom:.25mm solid var(--rule);padding:1.2mm 1.5mm 1.2mm 0;vertical-align:top}
.fig{font-family:var(--figures);font-weight:600}
.told{color:var(--ink-2)}
.small{font-size:8.5pt}
b,strong{font-weight:680}
.verdict{font-weight:650;white-space:nowrap}
.verdict.good{color:var(--verd)}.verdict.look{color:var(--brass)}.verdict.stop{color:var(--red)}
.mark,.hazard,.rack{vertical-align:-.18em}
.block{display:grid;grid-template-columns:3fr 2fr 1.4fr;border:.75mm solid #000;margin:6mm 0}
.block div{padding:1.2mm 2mm;border-right:.25mm solid #000;border-bottom:.25mm solid #000;min-height:12mm}
.block div:nth-child(3n){border-right:0}.block div:nth-last-child(-n+3){border-bottom:0}
.block span{display:block;font-size:8pt;color:var(--ink-3)}
.block b{font-size:11.5pt}
.number{display:inline-grid;place-items:center;min-width:7.4mm;height:7.4mm;padding:0 1mm;border:.35mm solid #000;border-radius:4mm;font:650 10pt var(--figures)}
.step{break-inside:avoid;border-top:.75mm solid #000;padding:2mm 0 4mm}
.step header{display:grid;grid-template-columns:auto 1fr auto;gap:0 3mm;align-items:start;margin-bottom:1.6mm}
.step header .number{min-width:10mm;height:10mm;border-radius:6mm;font-size:13pt}
.step header h3{margin:0;font-size:13.5pt;line-height:1.15}
.step header p{margin:.3mm 0 0;color:var(--ink-2)}
.step .minutes{text-align:right;font:700 15pt/1 var(--figures)}
.step .minutes small{display:block;font:8pt var(--words);color:var(--ink-3);margin-top:.6mm}
.step .two{display:grid;grid-template-columns:var(--left,104mm) 1fr;gap:0 5mm}
.step .two.plain{grid-template-columns:1fr 1fr}
.caution{display:grid;grid-template-columns:8mm 1fr;gap:0 1.5mm;background:var(--well);padding:1.6mm 2mm;margin:0 0 2mm;break-inside:avoid}
.caution ul{list-style:none;padding:0;margin:0}
.caution .many{columns:2;column-gap:5mm;font-size:9pt}
.caution li{break-inside:avoid}
.stop{border:.75mm solid var(--red);background:var(--red-fill);padding:1.6mm 2mm;margin:0 0 2mm;break-inside:avoid}
.stop h3{margin-top:0}
.no-return{background:var(--red-fill);padding:1.2mm 2mm;margin:0 0 2mm;break-inside:avoid}
tr.no-return{break-before:avoid}tr.no-return td{border-color:var(--red)}
.signs{display:grid;grid-template-columns:2fr 1.4fr 1fr 1fr;gap:3mm;margin-top:2mm;font-size:8pt;color:var(--ink-3)}
.signs span{border-top:.25mm solid #000;padding-top:.5mm}
.setting{margin:1mm 0 2mm;break-inside:avoid}
.beside{display:grid;grid-template-columns:1fr auto;gap:0 4mm;align-items:start}
.beside figure{margin:0}
.beside .fig{white-space:nowrap}
.beside td{border-bottom-width:.15mm}
.source{color:var(--ink-2);text-decoration:none;font-size:8pt}
.one+.one{margin-top:1.4mm}
tr.group td{background:var(--well);padding:1.4mm 1.5mm;break-after:avoid}
.columns:empty{display:none}
.columns{columns:2;column-gap:8mm;font-size:9pt}
.items.short{break-inside:avoid}
.items{columns:3;column-gap:6mm;font-size:8.5pt;line-height:1.25;list-style:none;padding:0}
.items li{display:grid;grid-template-columns:7mm 1fr;break-inside:avoid}
.items b{font-family:var(--figures);text-align:right;padding-right:2mm}
.photos{display:grid;grid-template-columns:repeat(3,1fr);gap:3mm;list-style:none;padding:0;margin:1.5mm 0}
.photos li{break-inside:avoid;font-size:8.5pt;margin:0}
.photos img{display:block;width:100%;height:auto;border:.25mm solid #000;margin-bottom:.8mm}
.hash{font:7pt/1.2 var(--figures);color:var(--ink-2);overflow-wrap:anywhere}
.contents{list-style:none;padding:0;columns:2}
.contents a{color:inherit;text-decoration-thickness:.2mm;text-underline-offset:.8mm}
@media screen{body{padding:8mm 4mm}}
@media screen and (max-width:640px){
body{padding:4mm 2mm;overflow-wrap:anywhere}
table,tbody,tr,td{display:block;width:auto}
thead,colgroup{display:none}
tr{border-bottom:.25mm solid var(--rule);padding:1.2mm 0}
td{border:0;padding:.3mm 0}
.step .two,.step .two.plain,.beside,.block{display:block}
.columns,.contents,.items,.caution .many{columns:1}
.photos{grid-template-columns:1fr 1fr}
.signs{grid-template-columns:1fr 1fr}
.beside .fig{white-space:normal}
.block div{border-right:0;border-bottom:.25mm solid #000}.block div:last-child{border-bottom:0}
.verdict{white-space:normal}
td:empty{display:none}
#sequence tr:not(.no-return) td:nth-child(4)::after{content:" min"}
#kit td:first-child:not([colspan]):not(:empty)::before{content:"Item "}
#kit td:nth-child(3)::after{content:" off"}
#not-known td:first-child::before{content:"Rank "}
figure{max-width:100%;overflow-x:auto}
figure svg{max-width:none}
}
@media print{body{max-width:none}}
`

/** A whole HTML file that asks nothing of a network. */
export function page({ fields, fonts, sheet, body }: Shell): string {
  const faces = fonts
    ? face('Atkinson Hyperlegible Next Variable', fonts.words) +
      face('Atkinson Hyperlegible Mono Variable', fonts.figures)
    : ''
  const boxes = `@page{${sheet ? `size:${sheet};` : ''}margin:13mm 14mm 24mm;${footer(fields)}}`
  return markup`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:"><title>${fields.title}</title><style>${trusted(faces)}${trusted(STYLE)}${trusted(DRAWING_STYLE)}${trusted(boxes)}</style></head>
<body>${body}</body></html>
`.markup
}

/** The title block in full, for the first sheet. */
export function titleBlock({ unit, owner, job, revision, variant, date, person }: Fields): Markup {
  const field = (name: string, entry: string) => markup`<div><span>${name}</span><b>${entry}</b></div>`
  return markup`<div class="block">${[
    field('Unit', unit),
    field('Owner of the job', owner ?? 'not told'),
    field('Job', job ?? 'none yet'),
    field('Variant', variant ?? 'all'),
    field('Made by', person ?? ' '),
    field('Revision', revision ?? 'not told'),
  ]}</div><p class="told">Printed ${date}. Sheet numbers stand at the foot of each page.</p>`
}
