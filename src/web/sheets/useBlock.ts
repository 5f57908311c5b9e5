// The fields of the title block that every sheet of a job shares.
import type { JobOnSheet } from '../model/jobOnSheet.ts'
import { looksIn } from '../model/jobOnSheet.ts'
import { dayOf, sayWhen } from '../model/sayWhen.ts'
import { waitsFor } from '../model/signOff.ts'
import type { Stage } from '../model/stages.ts'
import type { WorkedJob } from '../model/workedJob.ts'
import type { BlockFields } from '../parts/TitleBlock.tsx'
import { useBenchState } from '../sync/BenchContext.tsx'
import type { BenchState } from '../sync/bench.ts'
import { words } from '../words/words.ts'

export function devicesField({ waiting, photos, contact }: BenchState): BlockFields['devices'] {
  const here = [...waiting.values()].reduce((sum, n) => sum + n, 0)
  const pictures = [...photos.waiting.values()].reduce((sum, n) => sum + n, 0)
  const text = words.block
  if (contact.is === 'refused') return { text: text.refused, isLook: true }
  if (contact.is === 'hindered') return { text: text.hindered, isLook: true }
  if (contact.is === 'shop fault' && here + pictures === 0) return { text: text.fault, isLook: true }
  if (pictures > 0) return { text: words.photos.here(here, pictures), isLook: contact.is !== 'in step' }
  if (here > 0) return { text: text.here(here), isLook: contact.is !== 'in step' }
  return contact.is === 'in step' ? { text: text.inStep, isLook: false } : { text: text.away, isLook: false }
}

/** Whether this device is in step, in a sentence. */
export function saysOf({ is, says = '', at_ms }: BenchState['contact']): string {
  const texts = words.devices
  if (is === 'refused') return texts.refused(says)
  if (is === 'hindered') return texts.hindered(says)
  if (is === 'shop fault') return texts.shopFault(says)
  if (at_ms === undefined) return texts.neverMet
  const time = sayWhen(at_ms, Date.now())
  return is === 'in step' ? texts.inStep(time) : texts.away(time)
}

interface About {
  readonly stage: Stage
  readonly sheet: string
  readonly job: JobOnSheet
  readonly worked: WorkedJob | undefined
}

export function useBlock({ stage, sheet, job, worked }: About): BlockFields {
  const state = useBenchState()
  const text = words.block
  const revision = worked?.revision
  return {
    unit: [text.unit, worked?.unit ?? job.job.unit],
    sheet,
    owner: [text.owner, job.job.owner ?? text.noOwner],
    job: [text.job, `${job.number}${revision === undefined ? '' : ` ${revision}`}`],
    date: dayOf(Date.now()),
    stage: [text.stage, words.stages[stage]],
    person: state.person,
    looks: looksIn(job) + (worked?.steps.filter((step) => waitsFor(job, step).length > 0).length ?? 0),
    devices: devicesField(state),
    toDevices: `/device?back=${encodeURIComponent(location.pathname)}`,
  }
}

/** The title block of a sheet that belongs to no job. */
export function useShopBlock(title: string, looks: number, jobs?: number): BlockFields {
  const state = useBenchState()
  const waiting = [...state.waiting.values()].reduce((sum, n) => sum + n, 0)
  const text = words.block
  return {
    unit: [text.title, title],
    sheet: '1/1',
    owner: [words.home.thisDevice, state.me?.device ?? words.home.ownMachine],
    job: [words.home.jobs, String(jobs ?? state.streams.size)],
    date: dayOf(Date.now()),
    stage: [text.toSend, waiting === 0 ? text.nothingOpen : String(waiting)],
    person: state.person,
    looks,
    devices: devicesField(state),
    toDevices: `/device?back=${encodeURIComponent(location.pathname)}`,
  }
}
