import { describe, expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

test('a check wants parts home, and what makes them fast', () => {
  const { refuses } = small(`
parts: {box: {}, shaft: {}, wheel: {onto: shaft, way: {home with: shaft, park through: top, path: by hand}}, cover: {}}
openings: {top: {}}
connections: {bolts: {kind: fasteners, holds: cover, own step: true}}
checks:
  float: {wants: [wheel, cover]}
`)
  expect(refuses('wheel', 'shaft', 'cover', 'bolts', 'float')).toEqual([])
  expect(refuses('wheel', 'cover', 'bolts', 'float', 'shaft')).toEqual(['float: float wants wheel home.'])
  expect(refuses('wheel', 'shaft', 'cover', 'float', 'bolts')).toEqual(['float: float wants cover home.'])
})

test('a check that settles a loop says why each joint of it has to be fast', () => {
  const { refuses } = small('parts: {box: {}, cover: {}}\nchecks: {float: {wants: cover, settles: float of line 1}}\n')
  expect(refuses('float', 'cover')).toEqual(['float: float wants cover home and fast: it settles float of line 1.'])
})

test('what a check is made without comes after it', () => {
  const { refuses } = small('parts: {box: {}, shaft: {}, seal: {}}\nchecks: {float: {wants: shaft, without: seal}}\n')
  expect(refuses('shaft', 'float', 'seal')).toEqual([])
  expect(refuses('shaft', 'seal', 'float')).toEqual(['float: float is made without seal.'])
})

test('the eye has to come in: a check through an opening comes before that is shut', () => {
  const { refuses } = small(
    'openings: {top: {}}\nparts: {box: {}, lid: {closes: top}}\nchecks: {backlash: {reach: top}}\n',
  )
  expect(refuses('backlash', 'lid')).toEqual([])
  expect(refuses('lid', 'backlash')).toEqual(['backlash: backlash goes through the top, which lid shuts.'])
})

describe('a trial', () => {
  const TRIAL = `
openings: {top: {}}
lines: {1: {at: [0, 0], ends: [front, rear]}}
parts:
  box: {}
  shaft: {line 1: "0..40: 30", comes from: front}
  cover: {closes: top, line 1: "-10..0: 90", comes from: front}
connections:
  joint: {kind: gasket, squeezed by: cover, sealant: {what: liquid gasket}}
checks:
  dry gap: {trial: cover, wants: shaft}
`

  test('puts its part on and takes it off again: the final step and its sealant come after', () => {
    const { refuses } = small(TRIAL)
    expect(refuses('shaft', 'dry gap', 'sealant joint', 'cover')).toEqual([])
    expect(refuses('shaft', 'sealant joint', 'dry gap', 'cover')).toContain(
      'dry gap: dry gap is a trial: cover comes off again, and sealant joint comes after it.',
    )
    expect(refuses('shaft', 'sealant joint', 'cover', 'dry gap')).toContain(
      'dry gap: dry gap is a trial: cover comes off again, and cover comes after it.',
    )
  })

  test('needs what the way of its part needs', () => {
    const { derivation } = small(TRIAL)
    const trial = derivation.problem.operations.find(({ id }) => id === 'dry gap')
    expect(trial?.modes.map(({ id }) => id)).toEqual(['from front'])
    const { refuses } = small(
      TRIAL.replace(', wants: shaft', '')
        .replace('"-10..0: 90"', '"-10..0: 90/80, -10..0: 34/28"')
        .replace('30", comes', '30", comes'),
    )
    expect(refuses('dry gap', 'shaft', 'sealant joint', 'cover')).toEqual([])
  })
})

test('a check on the bench comes before that body moves', () => {
  const { refuses } = small(
    'parts: {box: {}, shaft: {}, bearing: {onto: shaft, joined: on the bench}}\nchecks: {spin: {wants: bearing, on bench: shaft}}\n',
  )
  expect(refuses('bearing', 'spin', 'shaft')).toEqual([])
  expect(refuses('bearing', 'shaft', 'spin')).toEqual(['spin: spin is made on shaft on the bench, before that moves.'])
})

describe('a fill', () => {
  const FILL = `
openings: {drain: {}, filler: {in: lid}, top: {}}
parts:
  box: {}
  lid: {closes: top}
  plug: {closes: drain}
  filler plug: {onto: lid, closes: filler}
checks: {air test: {wants: plug}}
fills: {oil: {litres: 1.6, what: gear oil, through: filler, stands above: drain, after: air test}}
`

  test('goes in through its hole, which is there and open, after what it waits for', () => {
    const { refuses, derivation } = small(FILL)
    expect(refuses('lid', 'plug', 'air test', 'oil', 'filler plug')).toEqual([])
    expect(refuses('plug', 'air test', 'oil', 'lid', 'filler plug')).toEqual([
      'oil: oil goes through the filler, a hole in lid.',
    ])
    expect(refuses('lid', 'plug', 'air test', 'filler plug', 'oil')).toEqual([
      'oil: oil goes through the filler, which filler plug shuts.',
    ])
    expect(refuses('lid', 'plug', 'oil', 'air test', 'filler plug')).toEqual(['oil: oil only after air test.'])
    expect(derivation.problem.operations.find(({ id }) => id === 'oil')?.does).toBe(
      'Fill 1.6 l of gear oil through the filler',
    )
  })

  test('what nobody closes is asked about', () => {
    const { questions } = small('openings: {drain: {}}\nparts: {box: {}}\nfills: {oil: {stands above: drain}}\n')
    expect(questions).toContain('What closes the drain?')
  })
})
