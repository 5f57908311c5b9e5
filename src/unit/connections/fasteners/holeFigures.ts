// Each length in its own holes, and what happens where two lengths are swapped.
import { materialOf } from '../../../mechanics/materials.ts'
import { requiredEngagement } from '../../../mechanics/threads/requiredEngagement.ts'
import { screwInBlindHole } from '../../../mechanics/threads/screwInBlindHole.ts'
import type { Metre } from '../../../quantity/quantity.ts'
import type { Thread } from '../../../quantity/readThread.ts'
import type { Known, Unit } from '../../model/unit.ts'
import type { WrittenSize } from '../amounts.ts'
import { type FoundSize, restsOn, sizeOf } from '../features.ts'
import { figure, tried } from '../figure.ts'
import type { Figure, ShopFacts } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { lengthsOf } from './places.ts'

interface Hole {
  readonly letter: string
  readonly screwLength: Known<Metre>
  readonly grip: Known<Metre>
  readonly washer: FoundSize
  readonly gasket: FoundSize
  readonly holeDepth: Known<Metre>
  readonly threadDepth: Known<Metre>
  readonly sizes: readonly FoundSize[]
}

/** Engagement and room at the bottom of every length, and the swaps that would bottom or hold too little. */
export function holeFigures(given: FastenersGiven, thread: Thread, unit: Unit, shop: ShopFacts) {
  const figures: Figure[] = []
  const says: string[] = []
  const missing: string[] = []
  const lengths = lengthsOf(given)
  if (given.through) return { figures, says: ['Holes go through: at least one thread shows past the nut.'], missing }
  if (lengths.length === 0)
    return { figures, says, missing: ['Give `lengths` of the screws: whether they hold, and whether one bottoms.'] }
  const tapped = tappedIn(given, unit, missing)
  const wanted = requiredEngagement({ nominalDiameter: thread.nominalDiameter, tapped })
  const holes = lengths.flatMap((length) => holeOf(length, given, unit, missing))
  const fitOf = (screw: Hole, hole: Hole) =>
    tried(missing, () =>
      screwInBlindHole({
        screwLength: screw.screwLength,
        grip: hole.grip,
        holeDepth: hole.holeDepth,
        threadDepth: hole.threadDepth,
        wanted,
        ...(hole.washer.known && { washer: hole.washer.known }),
        ...(hole.gasket.known && { gasketSqueezed: hole.gasket.known }),
      }),
    )
  for (const hole of holes) {
    const fit = fitOf(hole, hole)
    if (!fit) continue
    const rests = restsOn(hole.sizes, shop)
    const source = 'lengths of screw, clamped parts and hole'
    figures.push(
      figure({
        label: `engagement of ${hole.letter}`,
        dimension: 'length',
        range: fit.engagement,
        ...rests,
        source,
        limit: { low: wanted, source: `rule of thumb for ${tapped}: an engineers' magazine, no standard` },
      }),
      figure({
        label: `room under ${hole.letter} at the bottom`,
        dimension: 'length',
        range: fit.leftAtBottom,
        ...rests,
        source,
        limit: { low: 0, source: 'a screw that stands on the bottom clamps nothing' },
        ...(fit.runsOutOfThread !== 'no' && { note: 'It runs out of full thread before the head is down.' }),
      }),
    )
  }
  for (const screw of holes) {
    for (const hole of holes.filter(({ letter }) => letter !== screw.letter)) {
      const fit = fitOf(screw, hole)
      if (fit && fit.bottoms !== 'no')
        says.push(`${screw.letter} in a hole of ${hole.letter} bottoms: it feels tight and clamps nothing.`)
      if (fit && fit.hasEngagement !== 'yes')
        says.push(`${screw.letter} in a hole of ${hole.letter} has too little thread.`)
    }
  }
  return { figures, says, missing }
}

function holeOf(
  length: ReturnType<typeof lengthsOf>[number],
  given: FastenersGiven,
  unit: Unit,
  missing: string[],
): Hole[] {
  const at = (key: 'clamps' | 'washer' | 'gasket' | 'hole depth' | 'thread depth'): FoundSize => {
    const told: WrittenSize | undefined = length[key] ?? given[key]
    return sizeOf(unit, told)
  }
  const [grip, holeDepth, threadDepth] = [at('clamps'), at('hole depth'), at('thread depth')]
  const wanted = { clamps: grip, 'hole depth': holeDepth, 'thread depth': threadDepth }
  for (const [key, { known, name }] of Object.entries(wanted)) {
    if (!known)
      missing.push(
        name
          ? `Measure ${name}.`
          : `Give \`${key}\` for length ${length.letter}: whether it holds, and whether it bottoms.`,
      )
  }
  if (!length.length) missing.push(`Measure length ${length.letter}.`)
  if (!length.length || !grip.known || !holeDepth.known || !threadDepth.known) return []
  const [washer, gasket] = [at('washer'), at('gasket')]
  return [
    {
      letter: length.letter,
      screwLength: length.length,
      grip: grip.known,
      washer,
      gasket,
      holeDepth: holeDepth.known,
      threadDepth: threadDepth.known,
      sizes: [{ known: length.length }, grip, washer, gasket, holeDepth, threadDepth],
    },
  ]
}

/** What the thread is cut in; a material that is not told or not held counts as the weakest. */
function tappedIn({ into }: FastenersGiven, unit: Unit, missing: string[]): string {
  const named = into === undefined ? undefined : unit.parts.get(into)?.material
  const { name } = materialOf(named ?? 'unknown')
  if (name.includes('steel') || name === 'wrought iron') return 'steel'
  if (name.includes('iron')) return 'cast iron'
  if (name !== 'aluminium')
    missing.push(`Give \`material\` of ${into ?? 'the part with the thread'}: it is taken as aluminium, the weakest.`)
  return 'aluminium'
}
