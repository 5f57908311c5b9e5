// "Did you mean": the known name that a mistyped one is nearest to.

const LONGEST = 60

/**
 * The name that takes the fewest changed, missing, extra or swapped letters; nothing when more than a third of it would change.
 *
 * @example nearest('meshs', ['meshes', 'keys'])   // 'meshes'
 */
export function nearest(name: string, known: Iterable<string>): string | undefined {
  if (name.length > LONGEST) return undefined
  const wanted = name.toLowerCase()
  let best: string | undefined
  let least = Math.floor(name.length / 3) + 1
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= least) continue
    const changes = distance(wanted, candidate.toLowerCase())
    if (changes < least) {
      best = candidate
      least = changes
    }
  }
  return best
}

function distance(a: string, b: string): number {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1]
      let changes = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1))
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (swapped) changes = Math.min(changes, before[j - 2]! + 1)
      row.push(changes)
    }
    before = last
    last = row
  }
  return last[b.length]!
}
