import { describe, expect, it } from 'vitest'
import { countSequences } from './countSequences.ts'
import { need, operation, ordered, problemOf } from './testing/examples.ts'

const ids = (count: number) => Array.from({ length: count }, (_, at) => `o${at}`)
const count = (size: number, ...pairs: readonly (readonly [number, number])[]) =>
  countSequences(ordered(ids(size), ...pairs.map(([before, after]) => [`o${before}`, `o${after}`] as const)))

// Numbers of linear extensions of known orders; OEIS sequence numbers from memory, values recomputed by dynamic programming.
describe('counting sequences', () => {
  it('counts the N order', () => {
    expect(count(4, [0, 2], [1, 2], [1, 3])).toBe('5')
  })

  it('counts fences: OEIS A000111, Euler up-down numbers', () => {
    const counts = [1, 1, 2, 5, 16, 61, 272, 1385, 7936, 50521, 353792, 2702765]
    counts.forEach((expected, at) => {
      const size = at + 1
      const pairs = Array.from({ length: size - 1 }, (_, place): [number, number] =>
        place % 2 === 0 ? [place, place + 1] : [place + 1, place],
      )
      expect(count(size, ...pairs), `${size} elements`).toBe(String(expected))
    })
  })

  it('counts 2 × n grids: OEIS A000108, Catalan numbers', () => {
    ;[1, 2, 5, 14, 42, 132, 429, 1430, 4862].forEach((expected, at) => {
      const n = at + 1
      const pairs: [number, number][] = []
      for (let column = 0; column < n; column++) {
        pairs.push([column, n + column])
        if (column > 0) pairs.push([column - 1, column], [n + column - 1, n + column])
      }
      expect(count(2 * n, ...pairs), `2 × ${n}`).toBe(String(expected))
    })
  })

  it('counts m × n grids, the standard Young tableaux: OEIS A005789 (3 × n) and A005790 (4 × n), by the hook lengths', () => {
    const grid = (rows: number, columns: number) => {
      const pairs: [number, number][] = []
      for (let row = 0; row < rows; row++)
        for (let column = 0; column < columns; column++) {
          if (row > 0) pairs.push([(row - 1) * columns + column, row * columns + column])
          if (column > 0) pairs.push([row * columns + column - 1, row * columns + column])
        }
      return count(rows * columns, ...pairs)
    }
    ;[1, 5, 42, 462, 6006, 87516].forEach((expected, at) => {
      expect(grid(3, at + 1), `3 × ${at + 1}`).toBe(String(expected))
    })
    ;[1, 14, 462, 24024, 1662804].forEach((expected, at) => {
      expect(grid(4, at + 1), `4 × ${at + 1}`).toBe(String(expected))
    })
    // Frame, Robinson, Thrall 1954: n! divided by the product of the hook lengths; here 5 × 6, past 2^53.
    let hooks = 1n
    let factorial = 1n
    for (let row = 0; row < 5; row++)
      for (let column = 0; column < 6; column++) {
        hooks *= BigInt(5 - row + 6 - column - 1)
        factorial *= BigInt(row * 6 + column + 1)
      }
    expect(grid(5, 6)).toBe((factorial / hooks).toString())
  })

  it('counts staircases: OEIS A005118, and shifted ones: OEIS A003121', () => {
    const cells = (n: number, from: (row: number) => number, to: (row: number) => number) => {
      const place = new Map<string, number>()
      for (let row = 0; row < n; row++)
        for (let column = from(row); column < to(row); column++) place.set(`${row} ${column}`, place.size)
      const pairs = [...place].flatMap(([cell, at]): [number, number][] => {
        const [row, column] = cell.split(' ').map(Number) as [number, number]
        return [`${row + 1} ${column}`, `${row} ${column + 1}`].flatMap((next) => {
          const after = place.get(next)
          return after === undefined ? [] : [[at, after] as [number, number]]
        })
      })
      return count(place.size, ...pairs)
    }
    ;[1, 2, 16, 768, 292864].forEach((expected, at) => {
      const n = at + 1
      const staircase = cells(
        n,
        () => 0,
        (row) => n - row,
      )
      expect(staircase, `${n} rows`).toBe(String(expected))
    })
    ;[1, 1, 2, 12, 286, 33592, 23178480].forEach((expected, at) => {
      const shifted = cells(
        at + 1,
        (row) => row,
        () => at + 1,
      )
      expect(shifted, `${at + 1} rows, shifted`).toBe(String(expected))
    })
  })

  it('counts the sets of n things, smaller before larger: OEIS A046873', () => {
    ;[1, 1, 2, 48, 1680384].forEach((expected, n) => {
      const pairs: [number, number][] = []
      for (let set = 0; set < 2 ** n; set++)
        for (let bit = 0; bit < n; bit++) if (!((set >> bit) & 1)) pairs.push([set, set | (1 << bit)])
      expect(count(2 ** n, ...pairs), `${n} things`).toBe(String(expected))
    })
  })

  it('counts pairs side by side: OEIS A000680', () => {
    ;[1, 6, 90, 2520, 113400, 7484400, 681080400, 81729648000].forEach((expected, at) => {
      const pairs = Array.from({ length: at + 1 }, (_, pair): [number, number] => [2 * pair, 2 * pair + 1])
      expect(count(2 * (at + 1), ...pairs)).toBe(String(expected))
    })
  })

  it('counts heaps: OEIS A056971', () => {
    const counts = [1, 1, 2, 3, 8, 20, 80, 210, 896, 3360, 19200, 79200, 506880, 2745600, 21964800, 108108000]
    counts.forEach((expected, at) => {
      const pairs = Array.from({ length: at }, (_, child): [number, number] => [child >> 1, child + 1])
      expect(count(at + 1, ...pairs), `${at + 1} elements`).toBe(String(expected))
    })
  })

  it('counts n before n: (n!)²', () => {
    ;[1, 4, 36, 576, 14400].forEach((expected, at) => {
      const n = at + 1
      const pairs = Array.from({ length: n * n }, (_, pair): [number, number] => [pair % n, n + Math.floor(pair / n)])
      expect(count(2 * n, ...pairs)).toBe(String(expected))
    })
  })

  it('counts past 2^53 exactly: 30 operations in any order are 30!', () => {
    expect(count(30)).toBe('265252859812191058636308480000000')
  })

  it('counts an interleaving that does not fall apart, past 2^53 exactly', () => {
    // A ladder of 2 × 40: the Catalan number C(40).
    const pairs: [number, number][] = []
    for (let column = 0; column < 40; column++) {
      pairs.push([column, 40 + column])
      if (column > 0) pairs.push([column - 1, column], [40 + column - 1, 40 + column])
    }
    expect(count(80, ...pairs)).toBe('2622127042276492108820')
  })

  it('counts orders with alternatives once, however many alternatives hold', () => {
    const either = operation('c', [need('either', { done: ['a'] }, { done: ['b'] })])
    expect(countSequences(problemOf([operation('a'), operation('b'), either]))).toBe('4')
  })

  it('says 0 when nothing can be done, also when only the search can tell', () => {
    // Each of three has to come right after the start, before the two others.
    const apart = ['a', 'b', 'c'].map((id, at, all) =>
      operation(id, [need(`n${id}`, ...all.filter((_, other) => other !== at).map((op) => ({ done: [op] })))]),
    )
    expect(countSequences(problemOf(apart))).toBe('0')
  })

  it('refuses past its limit, and says so', () => {
    const pairs = Array.from({ length: 23 }, (_, at): [number, number] => (at % 2 ? [at + 1, at] : [at, at + 1]))
    const problem = ordered(ids(24), ...pairs.map(([before, after]) => [`o${before}`, `o${after}`] as const))
    expect(() => countSequences(problem, { limit: 1_000 })).toThrow(
      'The sequences of 24 operations were not counted: there are more than 1000 sets of operations to look at.',
    )
    expect(countSequences(problem)).toBe('15514534163557086905')
  })
})
