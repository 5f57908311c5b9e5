// Blocking against brute force: parts are slid home in small exact steps, and at each step points of a grid are tried in both.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { End } from '../model/unit.ts'
import { blocksAcross, blocksAlong, covers, threads } from './block.ts'
import type { Solid } from './shape.ts'
import { exactly, type Span } from './span.ts'

const APART = { A: { y: 0, z: 0 }, B: { y: 24, z: 32 }, C: { y: 0, z: 28 }, D: { y: 0, z: -8 } } as const
type LineName = keyof typeof APART

interface Given {
  line?: LineName
  from: number
  to: number
  /** Radii. Diameters and distances are multiples of 4, so that what overlaps at all holds a point of the grid. */
  inside?: number
  outside: number
  wall?: boolean
  half?: 'lower' | 'upper'
  flat?: { towards: LineName; at: number }
}

const solid = ({ line = 'A', from, to, inside = 0, outside, wall = false, half, flat }: Given): Solid => ({
  part: 'p',
  line,
  from: exactly(from),
  to: exactly(to),
  outside: exactly(wall ? Infinity : 2 * outside),
  inside: exactly(2 * inside),
  place: { y: exactly(APART[line].y), z: exactly(APART[line].z) },
  aside: { y: 0, z: 0 },
  wall,
  round: false,
  half,
  teeth: false,
  flat: new Map(flat ? [[flat.towards, exactly(flat.at)]] : []),
  tool: undefined,
})

const meeting = (moving: Given[], standing: Given[], mayTouch = false) => {
  const solids = moving.map(solid)
  return { moving: solids, movingHome: solids, standing: standing.map(solid), mayTouch }
}

/** Is there matter at this place, seen along the axis? */
function isMatter({ line = 'A', inside = 0, outside, wall, half, flat }: Given, y: number, z: number): boolean {
  const [dy, dz] = [y - APART[line].y, z - APART[line].z]
  const r = Math.hypot(dy, dz)
  if (r < inside || (!wall && r > outside)) return false
  if (half && (half === 'lower') !== dz < 0) return false
  if (!flat) return true
  const to = { y: APART[flat.towards].y - APART[line].y, z: APART[flat.towards].z - APART[line].z }
  return (dy * to.y + dz * to.z) / Math.hypot(to.y, to.z) <= flat.at
}

const offGrid = (at: number) => Math.floor(at) + 0.5

function isAnyPoint(p: Given, holds: (y: number, z: number) => boolean): boolean {
  const { y, z } = APART[p.line ?? 'A']
  for (let dy = -p.outside; dy < p.outside; dy++)
    for (let dz = -p.outside; dz < p.outside; dz++) if (holds(offGrid(y + dy), offGrid(z + dz))) return true
  return false
}

/** A wall is matter only for what stands on its own line. */
const isSeen = (p: Given, q: Given) => !(p.wall || q.wall) || (p.line ?? 'A') === (q.line ?? 'A')

const shareGround = (p: Given, q: Given) =>
  isSeen(p, q) && isAnyPoint(p, (y, z) => isMatter(p, y, z) && isMatter(q, y, z))

/** Slid from far away to its home: all positions between which a face of one passes a face of the other, and home. */
function meetsOnTheWay(p: Given, q: Given, end: End): boolean {
  const faces = [q.from - p.from, q.from - p.to, q.to - p.from, q.to - p.to].map((by) => (end === '+' ? by : -by))
  const events = [0, ...faces.filter((by) => by > 0), 1000].sort((a, b) => a - b)
  const positions = events.slice(1).map((by, index) => (by + (events[index] as number)) / 2)
  const overlaps = positions.some((by) => {
    const shift = end === '+' ? by : -by
    return p.from + shift < q.to && q.from < p.to + shift
  })
  return overlaps && shareGround(p, q)
}

const atHomeTogether = (p: Given, q: Given) => p.from < q.to && q.from < p.to && shareGround(p, q)

const looksElsewhere = (p: Given, q: Given) => p.flat && p.line !== q.line && p.flat.towards !== q.line

const seed = (number: number, numRuns: number) => ({ seed: number, numRuns })

const lengths = fc.tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: 1, max: 5 })).map(([from, long]) => ({
  from,
  to: from + long,
}))
const annulus = fc
  .tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 1, max: 4 }))
  .map(([inside, thick]) => ({ inside: 4 * inside, outside: 4 * (inside + thick) }))
const ringOn = (...on: LineName[]): fc.Arbitrary<Given> =>
  fc
    .record({
      line: fc.constantFrom(...on),
      along: lengths,
      size: annulus,
      cut: fc.option(fc.integer({ min: 1, max: 7 })),
    })
    .map(({ line, along, size, cut }) => ({
      line,
      ...along,
      ...size,
      // A flat is cut into the ring, not through to its hole.
      ...(cut !== null &&
        4 * cut > size.inside &&
        line !== 'C' &&
        line !== 'D' && { flat: { towards: line === 'A' ? ('B' as const) : ('A' as const), at: 4 * cut } }),
    }))
const wall: fc.Arbitrary<Given> = fc
  .tuple(lengths, fc.integer({ min: 0, max: 6 }))
  .map(([along, bore]) => ({ ...along, inside: 4 * bore, outside: Infinity, wall: true }))
const mover = fc.array(ringOn('A'), { minLength: 1, maxLength: 3 })
const stander = fc.oneof(
  fc.array(ringOn('A'), { minLength: 1, maxLength: 3 }),
  fc.array(ringOn('A', 'B', 'C', 'D'), { minLength: 1, maxLength: 3 }),
  fc.array(wall, { minLength: 1, maxLength: 2 }),
)

describe('along the line', () => {
  test('blocks exactly where a part slid home step by step meets something, from both ends (seed 4711)', () => {
    let [blocked, free] = [0, 0]
    fc.assert(
      fc.property(mover, stander, fc.constantFrom<End>('+', '-'), (moving, standing, end) => {
        const pairs = moving.flatMap((p) => standing.map((q) => [p, q] as const))
        // What shares a place at home is a contradiction of the file, and no block: its own test is below.
        fc.pre(!pairs.some(([p, q]) => atHomeTogether(p, q)))
        const brute = pairs.some(([p, q]) => meetsOnTheWay(p, q, end))
        brute ? blocked++ : free++
        const block = blocksAlong(meeting(moving, standing), end)
        if (block.is === (brute ? 'yes' : 'no')) return
        // A flat that is cut towards a third line may clear this one too: then a block is no better than usual.
        expect(pairs.some(([p, q]) => looksElsewhere(p, q) || looksElsewhere(q, p))).toBe(true)
        expect(block).toMatchObject(
          brute
            ? { is: expect.stringMatching('yes|not known') }
            : { standing: expect.stringMatching('usual|supposed') },
        )
      }),
      seed(4711, 1200),
    )
    expect(Math.min(blocked, free)).toBeGreaterThan(200)
  })

  test('says which two rings meet', () => {
    const { rings } = blocksAlong(
      meeting(
        [
          { from: 0, to: 4, outside: 8 },
          { from: 4, to: 6, outside: 20 },
        ],
        [{ from: 10, to: 12, inside: 12, outside: 40 }],
      ),
      '+',
    )
    expect(rings?.map(({ from }) => from.low)).toEqual([4, 10])
  })

  test('what cannot be home together bars nothing for good: a size is wrong, or nobody said that they may touch', () => {
    const [p, q] = [
      { from: 0, to: 4, outside: 8 },
      { from: 2, to: 6, outside: 8 },
    ]
    expect(blocksAlong(meeting([p], [q]), '+').is).toBe('not known')
    expect(blocksAlong(meeting([p], [q]), '-').is).toBe('not known')
  })

  test('a ring passes what is no larger than its own seat, and asks about what it would have to be driven over', () => {
    const bearing = { from: 0, to: 4, inside: 10, outside: 20 }
    const seat = { from: 0, to: 4, outside: 10.00004 }
    const against = (outside: number) => blocksAlong(meeting([bearing], [seat, { from: 4, to: 9, outside }]), '+').is
    expect(against(10.00004)).toBe('no')
    expect(against(10.0001)).toBe('not known')
    expect(against(10.2)).toBe('yes')
  })

  test('a collar is not turned down because another ring of its shaft is seated', () => {
    const shaft = [
      { from: 0, to: 4, outside: 10.00004 },
      { from: 4, to: 6, outside: 14 },
    ]
    expect(blocksAlong(meeting(shaft, [{ from: 0, to: 4, inside: 10, outside: 20 }]), '-').is).toBe('yes')
    expect(blocksAlong(meeting(shaft, [{ from: 0, to: 4, inside: 10, outside: 20 }]), '+').is).toBe('no')
  })

  test('where the seat was not measured, so is what passes', () => {
    const bearing = solid({ from: 0, to: 4, inside: 10, outside: 20 })
    const seat: Solid = {
      ...solid({ from: 0, to: 4, outside: 10 }),
      outside: { low: 0, high: Infinity, standing: 'seen' },
    }
    const land = solid({ from: 4, to: 9, outside: 12 })
    const judge = (mayTouch: boolean) =>
      blocksAlong({ moving: [bearing], movingHome: [bearing], standing: [seat, land], mayTouch }, '+').is
    expect(judge(true)).toBe('not known')
    expect(judge(false)).toBe('yes')
  })

  test('teeth that mesh at home slide into each other; what stands beside them and is no larger is asked about', () => {
    const wheel = { from: 0, to: 4, inside: 4, outside: 16 }
    const mate: Given = { line: 'C', from: 0, to: 4, outside: 16 }
    expect(blocksAlong(meeting([wheel], [mate], true), '+').is).toBe('no')
    const nose = { from: -4, to: 0, outside: 14 }
    expect(blocksAlong(meeting([wheel, nose], [mate], true), '+').is).toBe('not known')
    const flange = { from: -4, to: 0, outside: 20 }
    expect(blocksAlong(meeting([wheel, flange], [mate], true), '+').is).toBe('yes')
  })

  test('from another line a block rests on shapes being round: usual, unless they are turned or their flat is written', () => {
    const [p, q]: Given[] = [
      { from: 0, to: 4, outside: 20 },
      { line: 'C', from: 8, to: 9, outside: 20 },
    ]
    const [loose, round] = [meeting([p!], [q!]), meeting([p!], [q!])]
    expect(blocksAlong(loose, '+')).toMatchObject({ is: 'yes', standing: 'usual' })
    const turned = (solids: readonly Solid[]) => solids.map((each) => ({ ...each, round: true }))
    expect(
      blocksAlong({ ...round, moving: turned(round.moving), standing: turned(round.standing) }, '+'),
    ).toMatchObject({
      is: 'yes',
      standing: 'seen',
    })
    const own = meeting([p!], [{ from: 8, to: 9, outside: 10 }])
    expect(blocksAlong(own, '+')).toMatchObject({ is: 'yes', standing: 'seen' })
  })

  test('on a line whose place nobody measured a part is in nobody’s way, but asked about', () => {
    const there = { ...solid({ line: 'C', from: 8, to: 9, outside: 20 }), place: undefined }
    const p = solid({ from: 0, to: 4, outside: 20 })
    expect(blocksAlong({ moving: [p], movingHome: [p], standing: [there], mayTouch: false }, '+').is).toBe('not known')
  })

  test('two parts of one line are judged beside each other even where the line was not placed', () => {
    const parked = { ...solid({ from: 8, to: 9, outside: 10 }), place: undefined, aside: { y: 0, z: -18 } }
    const judge = (outside: number) => {
      const p = { ...solid({ from: 0, to: 4, outside }), place: undefined }
      return blocksAlong({ moving: [p], movingHome: [p], standing: [parked], mayTouch: false }, '+').is
    }
    expect(judge(8)).toBe('no')
    expect(judge(9)).toBe('yes')
  })
})

describe('more facts only sharpen', () => {
  const near = (value: number, [low, high]: readonly [number, number]): Span =>
    ({ low: value - low, high: value + high, standing: 'seen' }) as Span
  const slack = fc.oneof(
    fc.constant([0, 0] as const),
    fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 })),
    fc.constant([Infinity, Infinity] as const),
  )
  const loosened = fc.tuple(slack, slack, slack, slack)
  const blurred = (each: Solid, by: readonly (readonly [number, number])[]): Solid => {
    const [from, to, outside, inside] = by as [[number, number], [number, number], [number, number], [number, number]]
    const wide = near(each.inside.low, inside)
    return {
      ...each,
      from: near(each.from.low, from),
      to: near(each.to.low, to),
      outside: each.wall ? each.outside : near(each.outside.low, outside),
      inside: { ...wide, low: Math.max(0, wide.low) },
    }
  }

  test.each([
    ['along the line', (encounter: ReturnType<typeof meeting>) => blocksAlong(encounter, '+')],
    ['across the split', blocksAcross],
    ['by hand', threads],
    ['into a keyway', covers],
  ] as const)('%s: what was yes or no with loose sizes is the same with exact ones (seed 815)', (_, judge) => {
    let decided = 0
    fc.assert(
      fc.property(
        fc.array(fc.tuple(ringOn('A'), loosened), { minLength: 1, maxLength: 2 }),
        fc.array(fc.tuple(fc.oneof(ringOn('A', 'B'), wall), loosened), { minLength: 1, maxLength: 2 }),
        fc.boolean(),
        (moving, standing, mayTouch) => {
          const exact = meeting(
            moving.map(([given]) => given),
            standing.map(([given]) => given),
            mayTouch,
          )
          const blurs = exact.moving.map((each, index) => blurred(each, moving[index]![1]))
          const loose = {
            moving: blurs,
            movingHome: blurs,
            standing: exact.standing.map((each, index) => blurred(each, standing[index]![1])),
            mayTouch,
          }
          const before = judge(loose).is
          if (before === 'not known') return
          decided++
          expect(['not known', before]).toContain(judge(exact).is)
        },
      ),
      seed(815, 1500),
    )
    expect(decided).toBeGreaterThan(90)
  })
})

describe('across the split', () => {
  const halfRing = fc
    .record({ ring: ringOn('A'), half: fc.constantFrom('lower' as const, 'upper' as const, undefined) })
    .map(({ ring: { flat: _, ...ring }, half }): Given => ({ ...ring, ...(half && { half }) }))
  const anyWhere = fc.oneof(
    halfRing,
    ringOn('B', 'C', 'D').map(({ flat: _, ...ring }) => ring),
  )

  /** Let down from high above in steps of the grid, home included. */
  function meetsOnTheWayDown(p: Given, q: Given): boolean {
    if (p.from >= q.to || q.from >= p.to) return false
    for (let up = 0; up < 120; up += 2) {
      if (isAnyPoint(p, (y, z) => isMatter(p, y, z) && isMatter(q, y, z + up))) return true
    }
    return false
  }

  test('blocks exactly where a ring or half a ring let down from above meets something (seed 99)', () => {
    let [blocked, free] = [0, 0]
    fc.assert(
      fc.property(halfRing, anyWhere, (p, q) => {
        const isBeside = (q.line ?? 'A') !== 'A'
        // Beside its line half a ring counts as a whole one, and what shares a place at home is no block there: teeth mesh from above.
        fc.pre(!isBeside || (p.half === undefined && !atHomeTogether(p, q)))
        const brute = meetsOnTheWayDown(p, q)
        brute ? blocked++ : free++
        expect(blocksAcross(meeting([p], [q])).is).toBe(brute ? 'yes' : 'no')
      }),
      seed(99, 1000),
    )
    expect(Math.min(blocked, free)).toBeGreaterThan(100)
  })

  test('a cap meets its pedestal at the split and nowhere else', () => {
    const [cap, pedestal]: Given[] = [
      { from: 0, to: 4, inside: 8, outside: 16, half: 'upper' },
      { from: 0, to: 4, inside: 8, outside: 16, half: 'lower' },
    ]
    expect(blocksAcross(meeting([cap!], [pedestal!])).is).toBe('no')
    expect(blocksAlong(meeting([cap!], [pedestal!]), '+').is).toBe('no')
  })
})

describe('into a keyway', () => {
  /** At some place of its stretch something stands farther out than the bottom of the key. */
  const isCovered = (p: Given, q: Given) => {
    const events = [p.from, p.to, q.from, q.to].sort((a, b) => a - b)
    const places = events.slice(1).map((at, index) => (at + (events[index] as number)) / 2)
    return places.some(
      (x) =>
        x > p.from &&
        x < p.to &&
        x > q.from &&
        x < q.to &&
        [...Array(400).keys()].some((r) => r / 4 + 0.125 > (p.inside ?? 0) && isMatter(q, r / 4 + 0.125, 0)),
    )
  }

  test('whatever lies farther out than its bottom over its stretch is in the way (seed 31)', () => {
    fc.assert(
      fc.property(ringOn('A'), fc.oneof(ringOn('A'), wall), (p, q) => {
        const { flat: _, ...round } = q
        expect(covers(meeting([p], [round])).is).toBe(isCovered(p, round) ? 'yes' : 'no')
        // What it is sunk into may reach up to its top.
        expect(covers(meeting([p], [round], true)).is).toBe(
          isCovered({ ...p, inside: p.outside }, round) ? 'yes' : 'no',
        )
      }),
      seed(31, 1000),
    )
  })
})

describe('by hand', () => {
  /** A ring cannot be brought over a rod that sticks out of, or ends level with, both of its faces. */
  const isThreaded = (p: Given, standing: Given[]) => {
    const inTheHole = standing.filter((q) => !q.wall && q.outside <= (p.inside ?? 0))
    const sticksOut = (isAt: (q: Given) => boolean) => inTheHole.some(isAt)
    return (
      sticksOut((q) => q.from <= p.from) &&
      sticksOut((q) => q.to >= p.to) &&
      inTheHole.some((q) => q.to > p.from) &&
      inTheHole.some((q) => q.from < p.to)
    )
  }

  test('a closed ring is barred by what already runs through its hole and out at both sides (seed 7)', () => {
    let threaded = 0
    fc.assert(
      fc.property(ringOn('A'), fc.array(fc.oneof(ringOn('A'), wall), { minLength: 1, maxLength: 3 }), (p, standing) => {
        const brute = isThreaded(p, standing)
        if (brute) threaded++
        expect(threads(meeting([p], standing)).is).toBe(brute ? 'yes' : 'no')
      }),
      seed(7, 1500),
    )
    expect(threaded).toBeGreaterThan(40)
  })

  test('half a ring is laid round a shaft', () => {
    const shaft = { from: -10, to: 10, outside: 4 }
    const shell: Given = { from: 0, to: 4, inside: 4, outside: 8 }
    expect(threads(meeting([shell], [shaft])).is).toBe('yes')
    expect(threads(meeting([{ ...shell, half: 'upper' }], [shaft])).is).toBe('no')
  })

  test('a rod of unknown size in the hole is asked about', () => {
    const rod = {
      ...solid({ from: -10, to: 10, outside: 4 }),
      outside: { low: 0, high: 30, standing: 'seen' as const },
    }
    const ring = solid({ from: 0, to: 4, inside: 10, outside: 20 })
    expect(threads({ moving: [ring], movingHome: [ring], standing: [rod], mayTouch: false }).is).toBe('not known')
  })
})
