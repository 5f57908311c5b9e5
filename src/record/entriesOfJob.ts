// A job file, written down as what happened.
import type { Job, Reading } from '../job/model/job.ts'
import type { Body, Kind } from '../journal/entry.ts'
import type { Known } from '../unit/model/unit.ts'

/** What an entry says, before a device gives it its number. */
export type Saying = { readonly [K in Kind]: { readonly kind: K; readonly body: Body<K> } }[Kind]

/**
 * What a job file says, in the order of the file. Give them to nextEntry one after the other; folded, they are the job again.
 *
 * @param unit SHA-256 of the unit file's bytes
 */
export function entriesOfJob(job: Job, unit: string): readonly Saying[] {
  return [
    { kind: 'job-opened', body: openedIn(job) },
    { kind: 'unit-adopted', body: { unit, file: job.unit } },
    ...[...job.asFound.values()].map(
      ({ part, where, condition, decision }): Saying => ({
        kind: 'part-seen',
        body: {
          part,
          ...(where !== undefined && { where }),
          ...(condition !== undefined && { condition }),
          ...(decision && { decision }),
          when: 'found',
        },
      }),
    ),
    ...job.readings.map((reading): Saying => ({ kind: 'reading', body: readingIn(reading) })),
    ...job.done.map(({ step }): Saying => ({ kind: 'step-signed', body: { step } })),
  ]
}

function openedIn(job: Job): Body<'job-opened'> {
  const { people, crew, room, press, oven, instruments, wrenches } = job.plant
  return {
    ...(job.serial !== undefined && { serial: job.serial }),
    ...(job.variant !== undefined && { variant: job.variant }),
    ...(job.owner !== undefined && { owner: job.owner }),
    ...(job.note !== undefined && { note: job.note }),
    ...(job.invented && { invented: true }),
    sizes: { in: job.lengthUnit, standing: job.sizesStanding },
    plant: {
      ...(people !== undefined && { people }),
      ...(crew && { crew: crew.map(({ name, skills }) => ({ name, skills: [...skills] })) }),
      ...(room && { room: plain(room) }),
      ...(press && { press: { ...(press.rating && { rating: plain(press.rating) }) } }),
      ...(oven && { oven: { ...(oven.upTo && { upTo: plain(oven.upTo) }) } }),
      instruments: [...instruments].map(([id, { uncertainty, due }]) => ({
        id,
        ...(uncertainty && { uncertainty: plain(uncertainty) }),
        ...(due !== undefined && { due }),
      })),
      wrenches: wrenches.map(({ name, range }) => ({ name, ...(range && { range: plain(range) }) })),
    },
    shims: job.shims.map(({ id, reads, nominal, for: use }) => ({
      id,
      ...(reads && { reads: plain(reads) }),
      ...(nominal && { nominal: plain(nominal) }),
      ...(use !== undefined && { for: use }),
    })),
  }
}

const readingIn = (reading: Reading): Body<'reading'> => ({
  part: reading.part,
  feature: reading.feature,
  reads: reading.reads ? plain(reading.reads) : null,
  ...(reading.with !== undefined && { with: reading.with }),
  ...(reading.temperature && { temperature: plain(reading.temperature) }),
  ...(reading.where !== undefined && { where: reading.where }),
  by: reading.by ?? null,
  date: reading.date ?? null,
})

type WrittenKnown = NonNullable<Body<'reading'>['reads']>

const plain = ({ low, high, standing, source }: Known<number>): WrittenKnown => ({
  low,
  high,
  standing,
  ...(source !== undefined && { source }),
})
