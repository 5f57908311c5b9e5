// A unit file becomes the unit model. Pure: text in, model and faults out.
import type { Problem } from '../../problem/problem.ts'
import { second } from '../../quantity/constructors.ts'
import type { Unit } from '../model/unit.ts'
import { readChecks } from './checks.ts'
import { readClocks } from './clocks.ts'
import { readConnections } from './connections.ts'
import { readFills } from './fills.ts'
import { Item } from './item.ts'
import { readLines } from './lines.ts'
import { gatherNames, many, type Names, tellSharedNames } from './names.ts'
import { readOpenings } from './openings.ts'
import { inOrder, Page, type Path } from './page.ts'
import { readParts, readPassings } from './parts.ts'
import { unitSchema, type WrittenUnit } from './schema.ts'
import { LINE_KEY } from './schemaPart.ts'
import { shape } from './shape.ts'
import { readSignOffs } from './signOffs.ts'
import { readAddedOrders, readAddedSteps, readDropped, readHands, readLies } from './steps.ts'
import { readTree } from './tree.ts'
import { known, minutes, type Sizes } from './values.ts'
import { readVariants, tellMissingInVariants } from './variants.ts'

export interface UnitRead {
  /** Missing where anything in the file is at fault. */
  readonly unit?: Unit
  /** All of them, in the order of the file. */
  readonly faults: readonly Problem[]
}

/**
 * Reads a unit file and tells everything that is wrong with it at once: what was found, what was expected, where, what to do.
 * Gaps are no faults. Never throws for anything in the text.
 *
 * @param fileName as it is to be named in faults
 * @example readUnit('matchmark: unit/1\nunit: tail box\nhousing: box', 'tail.unit.yaml').unit?.name   // 'tail box'
 */
export function readUnit(text: string, fileName: string): UnitRead {
  const tree = readTree(text, fileName)
  const page = new Page(tree)
  if (!page.isForm('unit/1') || !tree.root) return { faults: inOrder(page.faults) }
  const isLineKey = (path: Path, key: string) => path.length === 2 && path[0] === 'parts' && LINE_KEY.test(key)
  const written = shape(page, tree.root, unitSchema, isLineKey)
  const unit = written && readSections(new Item(page, [], written), fileName)
  return page.faults.length === 0 && unit ? { unit, faults: [] } : { faults: inOrder(page.faults) }
}

function readSections(unit: Item<WrittenUnit>, file: string): Unit {
  const names = gatherNames(unit.page)
  tellSharedNames(unit.page, names)
  const sizes = readSizes(unit)
  const housing = unit.get('housing').text() ?? ''
  const lines = readLines(unit, names, sizes)
  const openings = readOpenings(unit, names, lines)
  const around = { names, sizes, lines, openings }
  const parts = readParts(unit, housing, around)
  const [about, revision] = [unit.get('about').text(), unit.get('revision').text()]
  const turning = readTurning(unit)
  const variants = readVariants(unit)
  tellMissingInVariants(unit.page, parts, variants)
  return {
    schema: 'unit/1',
    file,
    name: unit.get('unit').text() ?? '',
    ...(about && { about }),
    invented: unit.value.invented === true,
    ...(revision && { revision }),
    lengthUnit: sizes.unit,
    sizesStanding: sizes.standing,
    ...(sizes.source && { sizesSource: sizes.source }),
    housing,
    lines,
    passings: readPassings(unit, parts, around),
    openings,
    parts,
    connections: readConnections(unit, names),
    checks: readChecks(unit, names, sizes),
    fills: readFills(unit, names),
    lies: readLies(unit, names),
    hands: readHands(unit, names),
    addedSteps: readAddedSteps(unit, names),
    addedOrders: readAddedOrders(unit, names),
    dropped: readDropped(unit, names),
    clocks: readClocks(unit, names),
    signOffs: readSignOffs(unit, names),
    sets: readSets(unit, names),
    variants,
    ...(turning && { turning }),
  }
}

/** What a bare size means. Where nothing is said it is millimetres, and told: somebody wrote it down, nobody says that he measured. */
function readSizes(unit: Item<WrittenUnit>): Sizes {
  const { in: lengthUnit = 'mm', standing = 'told' } = unit.value.sizes ?? {}
  const source = unit.get('sizes').get('source').text()
  return { unit: lengthUnit, standing, ...(source && { source }) }
}

function readTurning(unit: Item<WrittenUnit>): Unit['turning'] {
  const turning = unit.get('turning')
  if (!turning.value) return undefined
  const takes = known(turning.get('takes'), minutes)
  return { takes: takes?.high ?? second(0), hazard: turning.value.hazard ?? 0 }
}

function readSets(unit: Item<WrittenUnit>, names: Names): Unit['sets'] {
  return new Map(
    unit
      .get('sets')
      .entries()
      .flatMap(([id, set]) => {
        const why = set.get('why').text()
        return set.value ? [[id, { parts: many(set.get('parts'), names, 'part'), ...(why && { why }) }] as const] : []
      }),
  )
}
