// Loops of drawing sizes, and packs of shims.
import {
  chooseShims,
  processCapability,
  type StackLink,
  shapeInflation,
  simulateStackUp,
  splitShims,
  stackUp,
  toleranceOfEach,
} from '../../mechanics/index.ts'
import { Problem } from '../../problem/problem.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { choice, choiceOf, exact, limits, number, optional, rows, text, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, type Lines, say, sayNumber, sayShare, sayWords } from '../frame/say.ts'

const shape = told(
  choice('rectangular', 'triangular', 'arcsine', 'half-cosine', 'normal'),
  'how such parts lie in it: rectangular, triangular, arcsine, half-cosine, normal',
)
const links = told(
  rows({
    name: told(text, 'name of the size'),
    sign: told(choiceOf({ opens: 1, closes: -1 }), 'opens or closes the gap where it is larger'),
    size: told(exact('length'), 'from the drawing'),
    tolerance: told(exact('length'), 'plus and minus'),
    shape: optional(shape),
    lever: optional(told(number, 'how far the gap moves for one of it; left out 1')),
  }),
  'every size of the loop',
)
const measured = rows({
  name: told(text, 'name of the size'),
  size: told(exact('length'), 'of one part'),
})
const together = rows({
  one: told(text, 'name of a size'),
  other: told(text, 'name of the other'),
  coefficient: told(number, 'from −1 to 1; 1: both always stand at the same place in their tolerance'),
})
const stock = rows({ id: told(text, 'its name'), thickness: told(exact('length'), 'as measured, not as marked') })
type Link = StackLink & { readonly name: string }
type Pack = NonNullable<ReturnType<typeof chooseShims>['pack']>
const packWords = (pack: Pack | undefined) => pack && (pack.shims.map(({ id }) => id).join(' + ') || 'no shim')
const nearestLines = (nearest: readonly Pack[]): Lines =>
  Object.fromEntries(
    nearest.flatMap((pack, at) => [
      [`nearest ${at + 1}`, sayWords(packWords(pack))],
      [`nearest ${at + 1}, total`, say('length', pack.total)],
    ]),
  )

/** Links whose sizes were measured are drawn from those. */
function withMeasured(
  links: readonly Link[],
  batch: readonly { readonly name: string; readonly size: Metre }[],
): readonly StackLink[] {
  const names = links.map(({ name }) => name)
  const missing = batch.find(({ name }) => !names.includes(name))
  if (missing) {
    const says = `'${missing.name}' is no size of this loop.`
    throw new Problem('FIGURE_INPUT', { key: 'measured', says, next: `Its sizes are: ${names.join(', ')}.` })
  }
  return links.map((link) => {
    const sizes = batch.filter(({ name }) => name === link.name).map(({ size }) => size)
    return sizes.length === 0 ? link : { ...link, shape: { measured: sizes } }
  })
}

export const LOOPS = [
  figure({
    name: 'loop',
    asks: 'What gap is left at the end of this chain of drawing sizes?',
    of: ['stackUp'],
    inputs: { links, inflation: optional(number) },
    work: stackUp,
    answers: ({ gap, worstCase, rootSumSquare, worstGap, likelyGap, shares }): Lines => ({
      gap: say('length', gap),
      'worst of all': say('length', worstGap),
      'nearly always': say('length', likelyGap),
      'plus and minus, worst case': say('length', worstCase),
      'plus and minus, root-sum-square': say('length', rootSumSquare),
      'tightening helps most at': sayWords(
        [...shares]
          .sort((a, b) => b.ofSpread - a.ofSpread)
          .map(({ name, ofSpread }) => `${name} ${Math.round(ofSpread * 100)} %`)
          .join(', '),
      ),
    }),
    words:
      'gap = sizes that open − sizes that close; worst case = tolerances added; root-sum-square = squared, added, rooted',
    cautions: ['Two parts of one machine are no statistics: with measured parts take figure setting-shim.'],
    example: 'links="case, opens, 40, 0.1 mm; ring, closes, 18.5, 0.05 mm; wheel, closes, 21.2, 0.08 mm"',
  }),
  figure({
    name: 'loop-by-chance',
    asks: 'How does the gap lie when the parts come as they come?',
    of: ['simulateStackUp'],
    inputs: {
      links,
      measured: optional(
        told(measured, 'sizes of such parts as measured, one a row: they take the place of size and tolerance'),
      ),
      correlations: optional(told(together, 'sizes that go together, as two sides cut in one set-up')),
      limits: optional(limits('length')),
      seed: optional(told(whole, 'whole number; left out 1')),
      samples: optional(whole),
      coverage: optional(number),
    },
    work: ({ links, measured = [], correlations = [], seed = 1, ...rest }) =>
      simulateStackUp({
        ...rest,
        links: withMeasured(links, measured),
        correlations: correlations.map(({ one, other, coefficient }) => ({ between: [one, other], coefficient })),
        seed,
      }),
    answers: ({ mean, standardDeviation, least, greatest, interval, outside, samples }): Lines => ({
      mean: say('length', mean),
      'nearly always': say('length', interval),
      'least to greatest drawn': say('length', { low: least, high: greatest }),
      'standard deviation': say('length', standardDeviation),
      'below the limits': sayShare(outside?.below),
      'above the limits': sayShare(outside?.above),
      'draws made': sayNumber(samples),
    }),
    words: 'the parts are drawn at random many times, each with its own shape; the same seed gives the same answer',
    example:
      'links="case, opens, 40, 0.1 mm; ring, closes, 18.5, 0.05 mm; wheel, closes, 21.2, 0.08 mm" limits=0.1..0.5 mm samples=20000',
  }),
  figure({
    name: 'tolerance-of-each',
    asks: 'Which tolerance may each of several equal parts have?',
    of: ['toleranceOfEach'],
    inputs: { gapTolerance: exact('length'), count: told(whole, 'how many parts') },
    work: toleranceOfEach,
    answers: ({ worstCase, rootSumSquare }) => ({
      'plus and minus, worst case': say('length', worstCase),
      'plus and minus, root-sum-square': say('length', rootSumSquare),
    }),
    words: 'tolerance ÷ number of parts, or ÷ its root',
    example: 'gap-tolerance=0.3 mm count=8..10',
  }),
  figure({
    name: 'shape-factor',
    asks: 'By how much does a shape widen the root-sum-square?',
    of: ['shapeInflation'],
    inputs: { shape },
    work: ({ shape: as }) => shapeInflation(as),
    answers: (factor) => ({ 'factor on the tolerance': sayNumber(factor) }),
    words: '3 × standard deviation ÷ tolerance',
    example: 'shape=rectangular',
  }),
  figure({
    name: 'shim-pack',
    asks: 'Which of my measured shims make up the pack?',
    of: ['chooseShims'],
    inputs: { stock: told(stock, 'shims that are there'), target: limits('length') },
    work: chooseShims,
    answers: ({ pack, nearest }): Lines => ({
      take: sayWords(packWords(pack)),
      total: say('length', pack?.total),
      'none reaches it': sayWords(
        pack ? undefined : 'no pack of these shims reaches the target; the nearest stand below',
        true,
      ),
      ...nearestLines(nearest),
    }),
    words: 'every combination is tried: fewest shims, then nearest to the middle of the target',
    example: 'stock="a, 1.00 mm; b, 0.25 mm; c, 0.13 mm" target=1.37..1.42 mm',
  }),
  figure({
    name: 'shim-split',
    asks: 'How do I share these shims between two sides?',
    of: ['splitShims'],
    inputs: { pack: told(stock, 'shims that have to be used up'), side: limits('length') },
    work: splitShims,
    answers: ({ side, otherSide, nearest }): Lines => ({
      'this side': sayWords(packWords(side)),
      'this side, total': say('length', side?.total),
      'other side': sayWords(packWords(otherSide)),
      'other side, total': say('length', otherSide?.total),
      'none reaches it': sayWords(
        side ? undefined : 'no split reaches the target; the nearest sides stand below',
        true,
      ),
      ...nearestLines(nearest),
    }),
    words: 'every split is tried; the total stays',
    example: 'pack="a, 0.50 mm; b, 0.30 mm; c, 0.10 mm" side=0.45..0.55 mm',
  }),
  figure({
    name: 'batch-capability',
    asks: 'Does this batch stay in its limits?',
    of: ['processCapability'],
    inputs: { limits: limits('length'), mean: exact('length'), standardDeviation: exact('length') },
    work: (given) => processCapability(given),
    answers: ({ spread, centred, shareOutside }) => ({
      'share outside the limits': sayShare(shareOutside),
      'room over six standard deviations (Cp)': asMargin(sayNumber(spread)),
      'the same to the nearer limit (Cpk)': asMargin(sayNumber(centred)),
    }),
    words: 'Cp = width of the limits ÷ 6 standard deviations; Cpk = distance to the nearer limit ÷ 3',
    example: 'limits=9.97..10.03 mm mean=9.995..10.005 mm standard-deviation=0.008 mm',
  }),
]
