import { describe, expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

const LINE = 'lines: {1: {at: [0, 0], ends: [front, rear]}}\n'

describe('along the line', () => {
  const BEARING = `${LINE}parts:
  box: {wall on 1: "0..20: 62"}
  shaft: {line 1: "-40..0: 25, 0..60: 30, 60..70: 40"}
  bearing: {line 1: "0..16: 62/30"}
`

  test('what cannot pass comes after, from either end; the two rings are named', () => {
    const { refuses, waysOf } = small(BEARING)
    expect(waysOf('shaft')).toEqual(['from front', 'from rear'])
    expect(refuses('bearing', 'shaft')).toEqual([])
    expect(small(BEARING.replace('40"', '40", comes from: front')).refuses('bearing', 'shaft')).toEqual([
      'shaft: shaft cannot pass bearing: Ø 40 at 60..70 would meet Ø 62/30 at 0..16.',
    ])
  })

  test('a way that a wall bars is struck out, and the sentence says what bars it', () => {
    const { derivation, waysOf } = small(`${LINE}parts:
  box: {wall on 1: "40..60: closed"}
  cup: {line 1: "0..20: 50"}
`)
    expect(waysOf('cup')).toEqual(['from front'])
    expect(derivation.ways.flatMap(({ dead }) => dead)).toEqual([
      'cup cannot pass box: Ø 50 at 0..20 would meet the closed wall at 40..60',
    ])
  })

  test('a size that was not measured leaves a question and no need', () => {
    const { refuses, doubts } = small(BEARING.replace('62/30"', '62/?"').replace('40"', '40", comes from: front'))
    expect(refuses('bearing', 'shaft')).toEqual([])
    expect(doubts[0]).toContain('shaft cannot pass bearing')
  })

  test('what the file calls a guess bars no better than a guess', () => {
    const { derivation } = small(BEARING.replace('40"', '≈ 40", comes from: front'))
    const needs = derivation.problem.operations.flatMap((step) => [
      ...step.needs,
      ...step.modes.flatMap((mode) => mode.needs),
    ])
    expect(needs.map(({ reason }) => reason.standing)).toContain('supposed')
  })

  test('a guess does not take the last way away: it is asked about', () => {
    const closed = `${LINE}parts:
  box: {wall on 1: "40..60: closed"}
  cup: {line 1: "0..20: 50", comes from: rear}
`
    expect(small(closed).contradictions).toEqual([
      'No way brings cup home. from rear: cup cannot pass box: Ø 50 at 0..20 would meet the closed wall at 40..60.',
    ])
    const guessed = small(
      closed.replace('20: 50', '≈ 20: ≈ 50').replace('"40..60', '"≈ 40..60').replace('closed', '≈ 30'),
    )
    expect(guessed.contradictions).toEqual([])
    expect(guessed.waysOf('cup')).toEqual(['from rear'])
    expect(guessed.doubts).toHaveLength(1)
  })

  test('parts on a parallel line bar the way as far as they reach; a flat lets pass', () => {
    const beside = (flat: string) => `lines:
  1: {at: [0, 0], ends: [front, rear]}
  2: {at: [50, 0], ends: [front, rear]}
parts:
  box: {}
  wheel: {look: gear, line 1: "0..20: 60", comes from: front}
  flange: {line 2: "-20..-10: 60"${flat}}
`
    expect(small(beside('')).refuses('flange', 'wheel')).toEqual([
      'wheel: wheel cannot pass flange: Ø 60 at 0..20 would meet Ø 60 at −20..−10.',
    ])
    expect(small(beside(', flat: {towards line: 1, at: 18}')).refuses('flange', 'wheel')).toEqual([])
  })

  test('what a person says about two parts wins over sizes, both ways', () => {
    const front = BEARING.replace('40"', '40", comes from: front')
    const passes = front.replace('comes from', 'passes: bearing, comes from')
    expect(small(passes).refuses('bearing', 'shaft')).toEqual([])
    const slim = front.replace('60..70: 40', '60..70: 30')
    expect(small(slim).refuses('bearing', 'shaft')).toEqual([])
    expect(small(slim.replace('comes from', 'does not pass: bearing, comes from')).refuses('bearing', 'shaft')).toEqual(
      ['shaft: shaft cannot pass bearing.'],
    )
  })

  test('a face that stands against another cannot pass it, where its hole was not measured', () => {
    const plate = (seats: string) =>
      small(`${LINE}parts:
  box: {}
  bearing: {line 1: "0..20: 62/30", comes from: rear}
  plate: {line 1: "20..26: 90/?"${seats}, comes from: rear}
`)
    expect(plate('').refuses('plate', 'bearing')).toEqual([])
    expect(plate('').doubts).toHaveLength(1)
    expect(plate(', seats against: bearing').refuses('plate', 'bearing')).toEqual([
      'bearing: bearing cannot pass plate: Ø 62/30 at 0..20 would meet Ø 90/0..62 at 20..26.',
    ])
    expect(plate(', seats against: bearing').refuses('bearing', 'plate')).toEqual([])
  })

  test('a seat bars on the side of its nearest faces only', () => {
    const yoke = (from: string) =>
      small(`${LINE}parts:
  box: {}
  yoke: {line 1: "0..9.5: 70/?, 20..26: 70/?"}
  disc: {line 1: "10..20: 60/30", seats against: yoke, comes from: ${from}}
`).refuses('yoke', 'disc')
    expect(yoke('rear')).toHaveLength(1)
    expect(yoke('front')).toEqual([])
  })
})

describe('stacking lists, without sizes', () => {
  const stack = (bearing: string) => `lines: {1: {at: [0, 0], ends: [front, rear], stack: [cover, bearing, wheel]}}
parts:
  box: {}
  wheel: {comes from: rear}
  bearing: {comes from: front${bearing}}
  cover: {comes from: front}
`

  test('what stands between a part and its end is asked about', () => {
    const { refuses, doubts } = small(stack(''))
    expect(refuses('cover', 'bearing', 'wheel')).toEqual([])
    expect(doubts).toEqual(['bearing cannot pass cover'])
  })

  test('told that it does not pass, it comes before; told that it passes, nobody asks', () => {
    const told = small(stack(', does not pass: cover'))
    expect(told.refuses('bearing', 'cover', 'wheel')).toEqual([])
    expect(told.refuses('cover', 'bearing', 'wheel')).toEqual(['bearing: bearing cannot pass cover.'])
    expect(told.doubts).toEqual([])
    const passes = small(stack(', passes: cover'))
    expect([passes.doubts, passes.refuses('cover', 'bearing', 'wheel')]).toEqual([[], []])
  })

  test('what it does not pass bars nothing where it stands on the other side', () => {
    const { refuses, doubts } = small(stack(', does not pass: wheel'))
    expect(refuses('wheel', 'cover', 'bearing')).toEqual([])
    expect(doubts).toEqual(['bearing cannot pass cover'])
  })

  test('a part with sizes is asked about one without that stands in its way', () => {
    const { doubts } = small(stack('').replace('bearing: {', 'bearing: {line 1: "0..16: 62/30", '))
    expect(doubts).toEqual(['bearing cannot pass cover'])
  })
})

describe('bodies and carriers', () => {
  const SHAFT = `${LINE}parts:
  box: {wall on 1: "0..16: 62"}
  shaft: {line 1: "-10..50: 30", comes from: front}
  wheel: {onto: shaft, line 1: "20..40: 80/30"}
`

  test('what was joined before moves along and has to pass as well', () => {
    const { refuses } = small(SHAFT)
    expect(refuses('shaft', 'wheel')).toEqual([])
    expect(refuses('wheel', 'shaft')).toEqual([
      'shaft: wheel cannot pass box: Ø 80/30 at 20..40 would meet bore Ø 62 at 0..16.',
    ])
  })

  test('joined on the bench it comes before its carrier moves; in the housing after', () => {
    const bench = small(SHAFT.replace('80/30"', '50/30", joined: on the bench'))
    expect(bench.refuses('wheel', 'shaft')).toEqual([])
    expect(bench.refuses('shaft', 'wheel')).toEqual(['wheel: wheel goes onto shaft on the bench.'])
    const housing = small(SHAFT.replace('80/30"', '50/30", joined: in the housing'))
    expect(housing.refuses('shaft', 'wheel')).toEqual([])
    expect(housing.refuses('wheel', 'shaft')).toEqual(['wheel: wheel goes onto shaft once that is in place.'])
  })

  test('left open, a loose part may be joined at either place; a pressed one usually on the bench, and it is asked', () => {
    expect(small(SHAFT.replace('80/30', '50/30')).waysOf('wheel')).toEqual([
      'from front, on the bench',
      'from front, in the housing',
      'from rear, on the bench',
      'from rear, in the housing',
    ])
    const pressed = small(SHAFT.replace('80/30"', '50/30", kind: press fit'))
    expect(pressed.waysOf('wheel')).toEqual(['from front, on the bench', 'from rear, on the bench'])
    expect(pressed.questions.join(' ')).toMatch(/Is wheel .*on the bench or in the housing\?/)
    const need = pressed.derivation.problem.operations.find(({ id }) => id === 'wheel')?.needs[0]
    expect(need?.reason).toMatchObject({ says: 'wheel goes onto shaft on the bench.', standing: 'usual' })
  })

  test('what is joined in the housing is not there while its carrier is on its way', () => {
    const { refuses } = small(SHAFT.replace('80/30"', '80/30", joined: in the housing'))
    expect(refuses('shaft', 'wheel')).toEqual([])
  })

  test('a part that goes in with another bars as that one does', () => {
    const { refuses } = small(`${LINE}parts:
  box: {}
  bearing: {line 1: "0..16: 62/30", comes from: front}
  cover: {line 1: "-12..-2: 90/70", comes from: front}
  gasket: {goes with: cover, line 1: "-2..0: 90/58"}
`)
    expect(refuses('bearing', 'cover')).toEqual([])
    expect(refuses('cover', 'bearing')).toEqual([
      'bearing: bearing cannot pass gasket: Ø 62/30 at 0..16 would meet Ø 90/58 at −2..0.',
    ])
  })

  test('a press contact may overlap only the way it was named', () => {
    const tight = `${LINE}parts:
  box: {}
  shaft: {line 1: "0..16: 30.01, 16..40: 34", comes from: CAME}
  bearing: {onto: shaft, kind: press fit, joined: in the housing, line 1: "0..16: 62/30", comes from: front}
`
    expect(small(tight.replace('CAME', 'rear')).refuses('shaft', 'bearing')).toEqual([])
    // Pressed 1 mm: the named mover is let over its seat; the shaft into the bearing is not.
    const keyed = tight.replace('30.01', '31').replace('onto: shaft, kind: press fit, joined: in the housing, ', '')
    const fit = 'connections: {seat: {kind: cylindrical fit, fit: press, moves: bearing, onto: shaft}}\n'
    expect(small(keyed.replace('CAME', 'rear') + fit).refuses('shaft', 'bearing')).toEqual([])
    expect(small(keyed.replace('CAME', 'rear')).doubts).toHaveLength(2)
    expect(small(keyed.replace('CAME', 'rear') + fit).doubts).toEqual([
      'shaft cannot pass bearing: Ø 31 at 0..16 would meet Ø 62/30 at 0..16',
    ])
  })
})

describe('declared ways', () => {
  test('what is parked comes before what brings it home, and shuts nothing before', () => {
    const { refuses, derivation } = small(`
openings: {top: {}}
parts:
  box: {}
  shaft: {}
  wheel: {onto: shaft, way: {park through: top, path: by hand, held by: strap, home with: shaft}}
  lid: {closes: top}
`)
    expect(refuses('wheel', 'shaft', 'lid')).toEqual([])
    expect(refuses('shaft', 'wheel', 'lid')).toEqual([
      'shaft: shaft brings wheel home: it has to be parked first.',
      'wheel: wheel is parked first; shaft brings it home.',
    ])
    expect(refuses('lid', 'wheel', 'shaft')).toEqual(['wheel: wheel goes through the top, which lid shuts.'])
    expect(derivation.problem.operations.map(({ does }) => does)).toContain('Park wheel through the top, held by strap')
  })

  test('where it is parked it bars what it would not bar at home, and the other way round', () => {
    const parked = (at: string) => `${LINE}parts:
  box: {}
  rod: {line 1: "0..60: 10", comes from: front}
  shaft: {line 1: "0..60: 4"}
  cluster: {line 1: "20..40: 40/12", way: {path: tilt, resting: on the floor, parked at: ${at}, home with: shaft}}
`
    const low = small(parked('[0, -18]'))
    expect(low.refuses('rod', 'cluster', 'shaft').filter((each) => each.startsWith('rod'))).toEqual([])
    expect(low.refuses('cluster', 'rod', 'shaft')).toContain(
      'rod: rod cannot pass cluster where it is parked: Ø 10 at 0..60 would meet Ø 40/12 at 20..40.',
    )
    expect(
      small(parked('[0, -90]'))
        .refuses('cluster', 'rod', 'shaft')
        .filter((each) => each.startsWith('rod')),
    ).toEqual([])
  })

  test('what has to be clear is away when it comes, with the reason that was given', () => {
    const { refuses } = small(`
parts:
  box: {}
  cap: {}
  yoke: {way: {path: tilt, clear: cap, why: tried by hand}}
`)
    expect(refuses('yoke', 'cap')).toEqual([])
    expect(refuses('cap', 'yoke')).toEqual(['yoke: yoke gets in only while cap is away (tried by hand).'])
  })

  test('whichever of two comes second is watched through an opening', () => {
    const { refuses } = small(`
openings: {top: {}}
parts:
  box: {}
  spigot: {watched: {meets: rollers, through: top}}
  rollers: {}
  lid: {closes: top}
`)
    expect(refuses('spigot', 'rollers', 'lid')).toEqual([])
    expect(refuses('rollers', 'lid', 'spigot')).toEqual([
      'spigot: Watching spigot and rollers come together goes through the top, which lid shuts.',
    ])
    expect(refuses('lid', 'spigot', 'rollers')).toEqual([
      'rollers: Watching spigot and rollers come together goes through the top, which lid shuts.',
    ])
  })

  test('half rings: laid in across the split before the cap, the cap after', () => {
    const { refuses } = small(`${LINE}openings: {joint: {split: true}}
parts:
  box: {half: lower, wall on 1: "0..20: 60"}
  shaft: {line 1: "-20..60: 30", way: {path: across the split, through: joint}}
  lower shell: {half: lower, line 1: "0..20: 60/30", way: {path: across the split}}
  cap: {half: upper, line 1: "0..20: 90/60", way: {path: across the split}}
`)
    expect(refuses('lower shell', 'shaft', 'cap')).toEqual([])
    expect(refuses('shaft', 'lower shell', 'cap')).toEqual([
      'lower shell: lower shell cannot pass shaft: Ø 60/30 at 0..20 would meet Ø 30 at −20..60.',
    ])
    expect(refuses('lower shell', 'cap', 'shaft')).toEqual([
      'shaft: shaft cannot pass cap: Ø 30 at −20..60 would meet Ø 90/60 at 0..20.',
    ])
  })

  test('a key is laid in from the side: before what covers its keyway, also where it could be pushed in from the end', () => {
    const { refuses, waysOf } = small(`${LINE}parts:
  box: {}
  shaft: {line 1: "-60..60: 30"}
  key: {onto: shaft, kind: key, line 1: "0..20: 36/26", keys: wheel}
  wheel: {onto: shaft, line 1: "0..20: 80/30"}
`)
    expect(waysOf('key')).toEqual(['into its keyway, on the bench', 'into its keyway, in the housing'])
    expect(refuses('shaft', 'key', 'wheel')).toEqual([])
    expect(refuses('shaft', 'wheel', 'key')).toEqual([
      'key: key cannot pass wheel: Ø 36/26 at 0..20 would meet Ø 80/30 at 0..20.',
    ])
  })

  test('a closed ring is not brought by hand on to what already runs through both walls', () => {
    const { refuses } = small(`${LINE}parts:
  box: {}
  shaft: {line 1: "-60..60: 30"}
  washer: {line 1: "0..4: 50/30.5", way: {path: by hand}}
`)
    expect(refuses('washer', 'shaft')).toEqual([])
    expect(refuses('shaft', 'washer')).toEqual([
      'washer: washer cannot pass shaft: Ø 50/30.5 at 0..4 would meet Ø 30 at −60..60.',
    ])
  })
})

describe('shapes that change', () => {
  const RING = `${LINE}parts:
  box: {wall on 1: "0..20: 62, 20..22: 65, 22..30: 62"}
  wall ring: {kind: snap ring, line 1: "20..22: 65/52", comes from: front}
  bearing: {line 1: "4..20: 62/30", comes from: front}
`

  test('a snap ring is squeezed through the bore that it is made for, and stands in the way at home', () => {
    const { refuses, waysOf } = small(RING)
    expect(waysOf('wall ring')).toEqual(['from front'])
    expect(refuses('wall ring', 'bearing')).toEqual([])
    expect(refuses('bearing', 'wall ring')).toEqual([
      'wall ring: wall ring cannot pass bearing: Ø 62/49 at 20..22 would meet Ø 62/30 at 4..20.',
    ])
  })

  test('without sizes it stands proud of its groove all the same: usual, not measured', () => {
    const unsized = small(`${LINE}parts:
  box: {}
  shaft: {line 1: "0..20: 30, 20..22: 28, 22..26: 30"}
  ring: {onto: shaft, kind: snap ring, line 1: "20..22: ?"}
  wheel: {onto: shaft, line 1: "4..20: 62/30", comes from: rear}
`)
    expect(unsized.refuses('shaft', 'wheel', 'ring')).toEqual([])
    expect(unsized.refuses('shaft', 'ring', 'wheel')).toEqual([
      'wheel: wheel cannot pass ring: Ø 62/30 at 4..20 would meet Ø 31.8..57/27.8..30 at 20..22.',
    ])
    const need = unsized.derivation.problem.operations.find(({ id }) => id === 'wheel')!
    expect(
      [...need.needs, ...need.modes[0]!.needs].find(({ reason }) => reason.code === 'BARRED')?.reason.standing,
    ).toBe('usual')
  })

  test('a shape on its way that was written down is the one that has to pass', () => {
    const driven = RING.replace(
      'comes from: front}\n  bearing',
      'passing: "20..22: 62/24", comes from: front}\n  stub: {line 1: "-5..3: 26"}\n  bearing',
    )
    expect(small(driven).refuses('wall ring', 'stub', 'bearing')).toEqual([])
    expect(small(driven).refuses('stub', 'wall ring', 'bearing')).toContain(
      'wall ring: wall ring cannot pass stub: Ø 62/24 at 20..22 would meet Ø 26 at −5..3.',
    )
  })

  test('a tool that goes along has to pass as well, but may rub on what the seal runs on', () => {
    const seal = `${LINE}parts:
  box: {}
  shaft: {line 1: "-60..30: 30"}
  key: {onto: shaft, kind: key, line 1: "-50..-30: 36/26"}
  seal: {line 1: "0..8: 50/30", runs on: shaft, tool: {sleeve: "0..8: 33/31"}, comes from: front}
`
    expect(small(seal).refuses('shaft', 'seal', 'key')).toEqual([])
    expect(small(seal).refuses('shaft', 'key', 'seal')).toEqual([
      'seal: seal cannot pass key: Ø 50/30 at 0..8 would meet Ø 36/26 at −50..−30.',
    ])
    const wide = seal.replace('50/30", runs', '50/38", runs')
    expect(small(wide).refuses('shaft', 'key', 'seal')).toEqual([
      'seal: seal cannot pass key: sleeve Ø 33/31 at 0..8 would meet Ø 36/26 at −50..−30.',
    ])
    expect(small(wide.replace(', tool: {sleeve: "0..8: 33/31"}', '')).refuses('shaft', 'key', 'seal')).toEqual([])
  })
})
