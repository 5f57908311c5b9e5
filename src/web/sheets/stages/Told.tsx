// A sentence in which what is typed at a keyboard stands between backticks.
export function Told({ text }: { text: string }) {
  const pieces = text.split('`')
  const commands = new Set(pieces.filter((_, place) => place % 2 === 1))
  return pieces.map((piece) => (commands.has(piece) ? <code key={piece}>{piece}</code> : piece))
}
