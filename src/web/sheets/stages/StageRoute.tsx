// The stages whose facts stand in the record or are worked out already: shown as they are, to be read.
import type { ReactNode } from 'react'
import type { System } from '../../../quantity/printQuantity.ts'
import { type JobOnSheet, stagesOf } from '../../model/jobOnSheet.ts'
import type { WorkedJob } from '../../model/workedJob.ts'
import { ActionLink } from '../../parts/Action.tsx'
import { Sheet } from '../../parts/Sheet.tsx'
import { StageLine } from '../../parts/StageLine.tsx'
import { TitleBlock } from '../../parts/TitleBlock.tsx'
import { words } from '../../words/words.ts'
import { NoJob, WorkingSheet } from '../JobSheets.tsx'
import { buildPath, type Shown, sequencePath, shownStage, stagePaths } from '../paths.ts'
import { useBlock } from '../useBlock.ts'
import { useJob } from '../useJob.ts'
import { useSystem } from '../usePreference.ts'
import { BookIn } from './BookIn.tsx'
import { HandOver } from './HandOver.tsx'
import { Inspect } from './Inspect.tsx'
import { Kit } from './Kit.tsx'
import { Parts } from './Parts.tsx'
import { Prove } from './Prove.tsx'
import { Settings } from './Settings.tsx'
import css from './Stages.module.css'
import { Told } from './Told.tsx'

export interface Stands {
  readonly job: JobOnSheet
  readonly worked: WorkedJob
  readonly system: System
}

const CONTENT: Readonly<Record<Shown, (stands: Stands) => ReactNode>> = {
  'book in': (stands) => <BookIn {...stands} />,
  strip: ({ job }) => <Parts job={job} of="strip" />,
  inspect: (stands) => <Inspect {...stands} />,
  decide: ({ job }) => <Parts job={job} of="decide" />,
  kit: (stands) => <Kit {...stands} />,
  set: (stands) => <Settings {...stands} />,
  prove: (stands) => <Prove {...stands} />,
  'hand over': (stands) => <HandOver {...stands} />,
}

export function StageRoute({ number, name }: { number: string; name: string }) {
  const [system] = useSystem()
  const { job, worked, working, again, stop } = useJob(number, system)
  const stage = shownStage(name)
  if (!job || !stage) return <NoJob number={number} />
  if (!worked || working.is === 'trouble' || working.is === 'no unit')
    return <WorkingSheet job={job} stage={stage} working={working} again={again} stop={stop} />
  return <StageSheet {...{ job, worked, system, stage }} />
}

function StageSheet({ stage, ...stands }: Stands & { readonly stage: Shown }) {
  const { job, worked } = stands
  const block = useBlock({ stage, sheet: '1/1', job, worked })
  const texts = words.desk
  return (
    <Sheet
      label={words.stages[stage]}
      head={<StageLine present={stage} states={stagesOf(job)} to={stagePaths(job.number)} />}
      actions={
        job.state.sequence ? (
          <ActionLink isMain to={buildPath(job.number)}>
            {texts.toBuild}
          </ActionLink>
        ) : (
          <ActionLink isMain to={sequencePath(job.number)}>
            {words.build.toSequence}
          </ActionLink>
        )
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.head}>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where nothing else on the sheet is reached by keys it is scrolled from here */}
        <h1 tabIndex={0}>{texts.heads[stage]}</h1>
        <p className="told">
          {texts.readOnly} <Told text={texts.does[stage]} />
        </p>
      </div>
      {CONTENT[stage](stands)}
    </Sheet>
  )
}
