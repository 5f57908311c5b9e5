// Why a step stands where it stands, reason by reason.
import type { WhySheet } from '../model/workedJob.ts'
import { words } from '../words/words.ts'

export function Reasons({
  why,
  className,
}: {
  readonly why: readonly WhySheet[]
  readonly className?: string | undefined
}) {
  if (why.length === 0) return <p>{words.build.nothingHolds}</p>
  return (
    <ul className={className}>
      {why.map(({ side, step, number, says, standing, source }) => (
        <li key={`${side} ${step} ${says}`}>
          <b>
            {side} {number > 0 && `${number}, `}
            {step}:
          </b>{' '}
          {says}
          <small>
            {words.standings[standing]}
            {source !== undefined && `, ${source}`}
          </small>
        </li>
      ))}
    </ul>
  )
}
