// Whether markup is well formed: tags that close in their order, quoted attributes, no stray < or &, no id twice. Tests only.

const TOKEN =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<\/([A-Za-z][\w:-]*)\s*>|<([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g
const REFERENCE = /&(?!(?:amp|lt|gt|quot|#39|#\d+|#x[\da-f]+);)/i

/** The first thing that an XML reader would refuse, or nothing. */
export function xmlFault(text: string): string | undefined {
  const open: string[] = []
  const ids = new Set<string>()
  let at = 0
  for (const match of text.matchAll(TOKEN)) {
    const between = text.slice(at, match.index)
    if (/[<]/.test(between)) return `stray < in '${between.trim().slice(0, 60)}'`
    if (REFERENCE.test(between + (match[3] ?? ''))) return `stray & near '${between.trim().slice(-60)}'`
    at = match.index + match[0].length
    const [, closing, opening, attributes = '', empty] = match
    if (closing !== undefined && open.pop() !== closing) return `</${closing}> closes nothing`
    if (opening === undefined) continue
    const names = [...attributes.matchAll(/([\w:-]+)=/g)].map((each) => each[1])
    if (new Set(names).size < names.length) return `<${opening}> has an attribute twice`
    const id = /\sid="([^"]*)"/.exec(attributes)?.[1]
    if (id !== undefined && ids.has(id)) return `id ${id} twice`
    if (id !== undefined) ids.add(id)
    if (empty !== '/') open.push(opening)
  }
  if (/[<]/.test(text.slice(at))) return `stray < at the end: '${text.slice(at, at + 60)}'`
  return open.length ? `<${open.at(-1)}> is not closed` : undefined
}
