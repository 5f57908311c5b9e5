// What a step that shuts the case has to ask first: what nobody gets at again once it is shut.
import type { JobOnSheet } from '../../model/jobOnSheet.ts'
import { badBefore, unseenBefore } from '../../model/signOff.ts'
import type { StepSheetData, WorkedJob } from '../../model/workedJob.ts'
import { Mark } from '../../parts/Mark.tsx'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import css from './SecondPerson.module.css'

const texts = words.second

export function BeforeShut({ job, worked, step }: { job: JobOnSheet; worked: WorkedJob; step: StepSheetData }) {
  const shut = step.wants?.shuts.join(', ') ?? ''
  const says = [
    [badBefore(job, step, worked.steps), texts.bad],
    [unseenBefore(job, step, worked.steps), texts.unseen],
  ] as const
  const open = says.filter(([numbers]) => numbers.length > 0)
  if (open.length === 0) return null
  return (
    <Region title={texts.beforeShut(shut)} place={13} isWell>
      {open.map(([numbers, say]) => (
        <p key={say(numbers.join(', '), shut)} className={css.line}>
          <Mark name="look" size={20} />
          <span>{say(numbers.join(', '), shut)}</span>
        </p>
      ))}
    </Region>
  )
}
