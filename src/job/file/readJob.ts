// A job file becomes the job model. Pure: text in, model and faults out. Names of the unit are judged by checkJobAgainst.
import type { Problem } from '../../problem/problem.ts'
import { Item } from '../../unit/file/item.ts'
import { listed, listedPlaces } from '../../unit/file/names.ts'
import { inOrder, Page } from '../../unit/file/page.ts'
import { shape } from '../../unit/file/shape.ts'
import { readTree } from '../../unit/file/tree.ts'
import { known, lengths, type Sizes } from '../../unit/file/values.ts'
import type { AsFound, CrewMember, Job, Plant, Reading, StockShim } from '../model/job.ts'
import { jobSchema, type WrittenJob } from './schema.ts'

export interface JobRead {
  /** Missing where anything in the file is at fault. */
  readonly job?: Job
  readonly faults: readonly Problem[]
}

/**
 * Reads a job file and tells everything that is wrong with it at once. Never throws for anything in the text.
 *
 * @param fileName as it is to be named in faults
 */
export function readJob(text: string, fileName: string): JobRead {
  const tree = readTree(text, fileName)
  const page = new Page(tree)
  if (!page.isForm('job/1') || !tree.root) return { faults: inOrder(page.faults) }
  const written = shape(page, tree.root, jobSchema)
  const job = written && readSections(new Item(page, [], written), fileName)
  return page.faults.length === 0 && job ? { job, faults: [] } : { faults: inOrder(page.faults) }
}

function readSections(job: Item<WrittenJob>, file: string): Job {
  // Readings are what somebody saw: that is their standing unless the file says otherwise.
  const sizes: Sizes = { unit: job.value.sizes?.in ?? 'mm', standing: job.value.sizes?.standing ?? 'seen' }
  const [serial, variant] = [job.get('serial').text(), job.get('variant').text()]
  const [owner, note] = [job.get('owner').text(), job.get('note').text()]
  return {
    schema: 'job/1',
    file,
    id: job.get('job').text() ?? '',
    invented: job.value.invented === true,
    unit: job.get('unit').text() ?? '',
    ...(serial && { serial }),
    ...(variant && { variant }),
    variantAt: (variant ? job.get('variant') : job.get('serial')).valueAt,
    ...(owner && { owner }),
    ...(note && { note }),
    lengthUnit: sizes.unit,
    sizesStanding: sizes.standing,
    asFound: readAsFound(job),
    readings: job
      .get('readings')
      .list()
      .map((reading) => readReading(reading, sizes)),
    shims: job
      .get('shims in stock')
      .list()
      .map((shim) => readShim(shim, sizes)),
    plant: readPlant(job.get('plant'), sizes),
    done: listedPlaces(job.get('done')).map(({ name, at }) => ({ step: name, at })),
  }
}

function readAsFound(job: Item<WrittenJob>): Job['asFound'] {
  const all = new Map<string, AsFound>()
  for (const [part, found] of job.get('as found').entries()) {
    const [where, condition] = [found.get('where').text(), found.get('condition').text()]
    const decision = found.value?.decision
    all.set(part, {
      part,
      at: found.at,
      ...(where && { where }),
      ...(condition && { condition }),
      ...(decision && { decision }),
    })
  }
  return all
}

type One<T> = T extends readonly (infer Member)[] ? Member : T
type WrittenReading = One<NonNullable<WrittenJob['readings']>>
type WrittenMember = One<Exclude<NonNullable<NonNullable<WrittenJob['plant']>['people']>, number>>
type WrittenShim = One<NonNullable<WrittenJob['shims in stock']>>

function readReading(reading: Item<WrittenReading>, sizes: Sizes): Reading {
  const reads = known(reading.get('reads'), lengths(sizes))
  const temperature = known(reading.get('at'), { as: 'temperature', unit: '°C', standing: 'seen' })
  const instrument = reading.get('with').text()
  const [where, by, date] = [reading.get('where').text(), reading.get('by').text(), reading.get('date').text()]
  return {
    at: reading.valueAt,
    part: reading.get('part').text() ?? '',
    feature: reading.get('feature').text() ?? '',
    ...(reads && { reads }),
    ...(instrument && { with: instrument }),
    ...(temperature && { temperature }),
    ...(where && { where }),
    ...(by && { by }),
    ...(date && { date }),
  }
}

function readShim(shim: Item<WrittenShim>, sizes: Sizes): StockShim {
  const reads = known(shim.get('reads'), lengths(sizes))
  const nominal = known(shim.get('nominal'), { ...lengths(sizes), standing: 'told' })
  const use = shim.get('for').text()
  const id = shim.get('id').text() ?? ''
  return { id, at: shim.valueAt, ...(reads && { reads }), ...(nominal && { nominal }), ...(use && { for: use }) }
}

/** More do not work side by side at one machine; the sequence engine plans for so many. */
const MOST_PEOPLE = 4

function readPeople(
  people: Item<NonNullable<WrittenJob['plant']>['people']> | undefined,
): Pick<Plant, 'people' | 'crew'> {
  const { value } = people ?? {}
  if (!people || !Array.isArray(value)) return typeof value === 'number' ? { people: value } : {}
  const expected = `1 to ${MOST_PEOPLE} people by name`
  if (value.length < 1 || value.length > MOST_PEOPLE)
    people.fault('VALUE_NOT_EXPECTED', { received: `a list of ${value.length}`, expected, nearest: '' })
  const crew: CrewMember[] = []
  for (const one of (people as Item<readonly WrittenMember[]>).list()) {
    const name = one.get('name')?.text()
    if (name === undefined) continue
    if (crew.some((other) => other.name === name))
      one
        .get('name')
        ?.fault('VALUE_NOT_EXPECTED', { received: `'${name}' again`, expected: 'each person once', nearest: '' })
    crew.push({ name, skills: listed(one.get('skills')) })
  }
  return { people: Math.max(1, crew.length), crew }
}

function readPlant(plant: Item<WrittenJob['plant']>, sizes: Sizes): Plant {
  const room = known(plant.get('room'), { as: 'temperature', unit: '°C', standing: 'told' })
  const rating = known(plant.get('press').get('rating'), { as: 'force', unit: 'kN', standing: 'told' })
  const upTo = known(plant.get('oven').get('up to'), { as: 'temperature', unit: '°C', standing: 'told' })
  const instruments = new Map<string, Plant['instruments'] extends ReadonlyMap<string, infer One> ? One : never>()
  for (const [id, instrument] of plant.get('instruments').entries()) {
    const uncertainty = known(instrument.get('uncertainty'), { ...lengths(sizes), standing: 'told' })
    const due = instrument.get('due').text()
    instruments.set(id, { ...(uncertainty && { uncertainty }), ...(due && { due }) })
  }
  return {
    ...readPeople(plant.get('people')),
    ...(room && { room }),
    ...(plant.value?.press && { press: { ...(rating && { rating }) } }),
    ...(plant.value?.oven && { oven: { ...(upTo && { upTo }) } }),
    instruments,
    wrenches: plant
      .get('wrenches')
      .list()
      .map((wrench) => {
        const range = known(wrench.get('range'), { as: 'torque', unit: 'N·m', standing: 'told' })
        return { name: wrench.get('name').text() ?? '', ...(range && { range }) }
      }),
  }
}
