// What somebody has to have before the eyes before signing: torque by rounds, load to stop at, heat, shims. The rest stands in the table.
import type { FigureSheet, SettingSheet } from './workedJob.ts'

export interface Glance {
  readonly of: string
  readonly what: 'torque' | 'load' | 'stop' | 'heat' | 'shims' | 'wrong'
  /** The figures, one after another where they are gone through in rounds. */
  readonly figures: readonly string[]
  readonly rests: FigureSheet['rests']
  readonly limit?: string
}

/** As the settings of a fastener set say them: one sentence a round, the other system in brackets. */
const ROUND = /^Round \d+, (\w+): ([^(]+?)(?: \(([^)]+)\))?\.$/
const PACK = /^Fit pack (.+) = ([^(]+?)(?: \(([^)]+)\))?\.$/
const STOP = 'stop at this load'

/**
 * The few figures of a step that count while the hand is at it, the most pressing first.
 *
 * @param isInch whose own figures stand in the brackets
 */
export function atAGlance(settings: readonly SettingSheet[], isInch = false): readonly Glance[] {
  const all = settings.flatMap((setting) => [...fromSays(setting, isInch), ...fromFigures(setting)])
  const order: readonly Glance['what'][] = ['wrong', 'stop', 'load', 'torque', 'heat', 'shims']
  return all.sort((a, b) => order.indexOf(a.what) - order.indexOf(b.what))
}

/**
 * Once a setting was tried, the pack of its first working says nothing any more: what is to go in next stands for it.
 *
 * @param inNext the pack that is said, or else proposed, for the next try
 */
export function afterTry(glances: readonly Glance[], inNext: string | undefined): readonly Glance[] {
  return glances.flatMap((one) =>
    one.what !== 'shims' ? [one] : inNext === undefined ? [] : [{ ...one, figures: [inNext] }],
  )
}

function fromSays({ title, says, figures }: SettingSheet, isInch: boolean): readonly Glance[] {
  const rests = figures[0]?.rests ?? 'told'
  const ofRounds = says.map((text) => ROUND.exec(text)?.[1] as Glance['rests'] | undefined).find((rest) => rest)
  const rounds = says.flatMap((text) => {
    const found = ROUND.exec(text)
    const figure = isInch ? (found?.[3] ?? found?.[2]) : found?.[2]
    return figure === undefined ? [] : [figure]
  })
  const packs = says.flatMap((text) => {
    const [, shims, thick, other] = PACK.exec(text) ?? []
    return shims === undefined ? [] : [`${shims} = ${(isInch ? other : undefined) ?? thick}`]
  })
  return [
    ...(rounds.length > 0 ? [{ of: title, what: 'torque', figures: rounds, rests: ofRounds ?? rests } as const] : []),
    ...packs.map((pack) => ({ of: title, what: 'shims', figures: [pack], rests }) as const),
  ]
}

function fromFigures({ title, says, figures }: SettingSheet): readonly Glance[] {
  const hasRounds = says.some((text) => ROUND.test(text))
  const hasStop = figures.some(({ label }) => label === STOP)
  return figures.flatMap((figure): Glance[] => {
    const what = kindOf(figure, { hasRounds, hasStop })
    if (!what) return []
    const { text, rests, limit } = figure
    // What a load may be at most is the load to stop at: it stands beside it.
    const isLimited = limit !== undefined && what !== 'stop' && !(what === 'load' && hasStop)
    return [{ of: title, what, figures: [text], rests, ...(isLimited && { limit }) }]
  })
}

function kindOf(
  { label, dimension, verdict }: FigureSheet,
  { hasRounds, hasStop }: { readonly hasRounds: boolean; readonly hasStop: boolean },
): Glance['what'] | undefined {
  if (label === STOP) return 'stop'
  if (verdict === 'out') return 'wrong'
  if (dimension === 'force' && hasStop) return 'load'
  if (dimension === 'torque' && !hasRounds) return 'torque'
  return dimension === 'temperature' ? 'heat' : undefined
}
