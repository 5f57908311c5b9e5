// Torque, its rounds, and whether each length holds and clears the bottom of its hole.
import { boltLoad, fastenerStrength } from '../../../mechanics/threads/fastenerStrength.ts'
import { tensileStressArea } from '../../../mechanics/threads/tensileStressArea.ts'
import { threadGeometry } from '../../../mechanics/threads/threadGeometry.ts'
import { tightening } from '../../../mechanics/threads/tightening.ts'
import { tighteningRounds } from '../../../mechanics/threads/tighteningOrder.ts'
import { torqueFactor } from '../../../mechanics/threads/torqueFactor.ts'
import { preloadFromTorque } from '../../../mechanics/threads/torqueForPreload.ts'
import { unifiedStressArea } from '../../../mechanics/threads/unifiedStressArea.ts'
import type { NewtonMetre } from '../../../quantity/quantity.ts'
import type { Thread } from '../../../quantity/readThread.ts'
import type { Known } from '../../model/unit.ts'
import { weakest } from '../features.ts'
import { figure, printIn, tried } from '../figure.ts'
import type { Figure, Kind } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { holeFigures } from './holeFigures.ts'
import { words } from './words.ts'

export const settings: Kind<FastenersGiven>['settings'] = (connection, given, unit, shop) => {
  if (given.dowels) return []
  const figures: Figure[] = []
  const says: string[] = []
  const missing: string[] = []
  const cautions = [...words.cautions(connection, given)]
  const { thread } = given
  if (thread) {
    const found = tried(missing, () => torqueOf(given, thread, missing))
    figures.push(...(found?.figures ?? []))
    cautions.push(...(found?.cautions ?? []))
    if (found) says.push(...rounds(given, found.torque, found.figures[0]?.standing ?? 'told'))
    const holes = holeFigures(given, thread, unit, shop)
    figures.push(...holes.figures)
    says.push(...holes.says)
    missing.push(...holes.missing)
  } else {
    missing.push('Give `thread`, as M8 or 3/8-16 UNC: for torque and engagement.')
    if (given.torque) figures.push(toldTorque(given, given.torque))
  }
  return [
    {
      connection: connection.id,
      kind: 'fasteners',
      title: `${connection.id}${thread ? `, ${thread.designation}` : ''}: torque`,
      figures,
      says,
      missing: [...new Set(missing)],
      cautions: [...new Set(cautions)],
    },
  ]

  /** Told is the torque; how it is come up to is trade practice, unless the file says that too. */
  function rounds({ stages }: FastenersGiven, torque: NewtonMetre, standing: Figure['standing']): string[] {
    const told = stages?.flatMap((stage) => (stage ? [stage] : []))
    const each = told?.map(({ high }) => high) ?? tighteningRounds(torque)
    const rests = weakest(told?.map((stage) => stage.standing) ?? [standing, 'usual'])
    return each.map(
      (value, index) => `Round ${index + 1}, ${rests}: ${printIn(unit, { low: value, high: value }, 'torque')}.`,
    )
  }
}

const toldTorque = ({ source, condition }: FastenersGiven, torque: Known<NewtonMetre>): Figure =>
  figure({
    label: 'torque',
    dimension: 'torque',
    range: torque,
    standing: torque.standing,
    basis: 'nominal',
    source: source ?? 'told in the unit file, no source',
    ...(condition && { note: `Threads ${condition}.` }),
  })

/** The maker's torque with the tension that it gives; without one, a torque by grade and condition, the unknown at its worst. */
function torqueOf(given: FastenersGiven, thread: Thread, missing: string[]) {
  const stressArea = stressAreaOf(thread, missing)
  const condition = given.condition ?? 'unknown'
  if (given.condition === undefined)
    missing.push('Give `condition` of the threads: friction is taken at its worst both ways.')
  const { nominalDiameter } = thread
  const strength = fastenerStrength({ grade: headMark(given.grade, thread), nominalDiameter })
  const { torque } = given
  if (!strength.isKnown) {
    missing.push(
      torque
        ? 'Give `grade` as on the heads: without it the tension is not held against the bolt.'
        : `Give \`grade\` as on the heads: it is taken as ${strength.grade}, the weakest.`,
    )
  }
  if (torque) {
    if (stressArea === undefined) return { torque: torque.high, figures: [toldTorque(given, torque)], cautions: [] }
    const preload = preloadFromTorque({ torque, nominalDiameter, torqueFactor: torqueFactor(condition).range })
    const proof = boltLoad({ stressArea, strength: strength.proof })
    const source = `T = K F D; K: ${torqueFactor(condition).source}`
    return {
      torque: torque.high,
      figures: [
        toldTorque(given, torque),
        tension({
          preload,
          standing: torque.standing,
          source,
          ...(strength.isKnown && { proof, proofSource: strength.source }),
        }),
      ],
      cautions: [],
    }
  }
  if (stressArea === undefined) return undefined
  const worked = tightening({ nominalDiameter, stressArea, strength, condition })
  const proof = boltLoad({ stressArea, strength: strength.proof })
  const standing = weakest([
    'usual',
    ...(strength.isKnown && given.condition !== undefined ? [] : (['supposed'] as const)),
  ])
  return {
    torque: worked.torque,
    figures: [
      figure({
        label: 'torque',
        dimension: 'torque',
        range: { low: worked.torque, high: worked.torque },
        standing,
        basis: 'table',
        source: worked.source,
        ...(worked.isHeldBack && { note: 'Held back so that the most slippery screw stays below its proof load.' }),
      }),
      tension({ preload: worked.preload, proof, standing, source: worked.source, proofSource: strength.source }),
    ],
    cautions: worked.cautions,
  }
}

function tension(of: {
  preload: { low: number; high: number }
  standing: Figure['standing']
  source: string
  /** Left out the tension is shown and not judged. */
  proof?: number
  proofSource?: string
}): Figure {
  return figure({
    label: 'tension that this torque may give',
    dimension: 'force',
    range: of.preload,
    standing: of.standing,
    basis: 'table',
    source: of.source,
    ...(of.proof !== undefined && { limit: { high: of.proof, source: `proof load, ${of.proofSource}` } }),
  })
}

function stressAreaOf(thread: Thread, missing: string[]) {
  if (thread.system === 'metric') return tensileStressArea(thread)
  if (thread.system === 'unified') return unifiedStressArea(thread)
  if (thread.system === 'whitworth' || thread.system === 'ba') return threadGeometry(thread.designation).stressArea
  missing.push(
    `${thread.designation}: a pipe thread is no bolt and has no stress area; take the torque from the maker's book.`,
  )
  return undefined
}

/** `5` on an inch head is SAE 5. */
function headMark(grade: string | undefined, { system }: Thread): string {
  const found = system === 'unified' ? /^(?:grade\s*)?([1258])$/i.exec(grade?.trim() ?? '') : null
  return found ? `SAE ${found[1]}` : (grade ?? 'not told')
}
