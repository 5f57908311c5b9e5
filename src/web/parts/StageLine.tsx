// The stages of a job, like parts on a centre line. What is done is struck across; the present one is a solid part.
import { Link } from 'wouter'
import { STAGES, type Stage, type StageState } from '../model/stages.ts'
import { words } from '../words/words.ts'
import { Mark } from './Mark.tsx'
import css from './StageLine.module.css'

interface Line {
  readonly present: Stage
  readonly states: Readonly<Partial<Record<Stage, StageState>>>
  /** Where a stage that has a sheet leads. */
  readonly to: Readonly<Partial<Record<Stage, string>>>
}

export function StageLine({ present, states, to }: Line) {
  const at = STAGES.indexOf(present)
  return (
    <nav className={css.line} aria-label={words.stageLine}>
      <Link
        href="/"
        className={`${css.stage} ${css.home}`}
        aria-label={`${words.block.toHome}, ${words.block.toHomeAlso}`}
      >
        <span className={css.mark}>
          <Joint />
        </span>
        <span>{words.block.toHome}</span>
      </Link>
      {STAGES.map((stage, index) => {
        const state = states[stage] ?? 'to come'
        const isPresent = stage === present
        const far = Math.abs(index - at) > 1 ? css.far : ''
        const kind = isPresent ? css.present : state === 'to come' ? css.toCome : ''
        const word = state === 'done' ? words.stageDone : state === 'in hand' ? words.stageInHand : words.stageToCome
        const target = to[stage]
        const inner = (
          <>
            <span className={css.mark}>{!isPresent && state !== 'to come' && <Mark name={state} size={24} />}</span>
            <span>{words.stages[stage]}</span>
            <span className="aside">{`, ${target === undefined && !isPresent ? words.stageNoSheet : word}`}</span>
          </>
        )
        return target !== undefined && !isPresent ? (
          <Link key={stage} href={target} className={`${css.stage} ${far}`}>
            {inner}
          </Link>
        ) : (
          <span key={stage} className={`${css.stage} ${far} ${kind}`} aria-current={isPresent ? 'step' : undefined}>
            {inner}
          </span>
        )
      })}
    </nav>
  )
}

/** The head of a sheet that belongs to no job. */
export function NameLine() {
  const [before, after] = [words.name.slice(0, 5), words.name.slice(5)]
  return (
    <div className={css.title}>
      <Link href="/" aria-label={words.name}>
        {before}
        <Joint />
        {after}
      </Link>
      <i aria-hidden="true" />
    </div>
  )
}

/** The mark of the name: a match mark across a joint. */
const Joint = () => (
  <svg className={css.joint} viewBox="0 0 34 46" fill="currentColor" aria-hidden="true">
    <path d="M17 0V46" stroke="currentColor" strokeWidth="3.4" />
    <circle cx="7" cy="23" r="5" />
    <circle cx="27" cy="23" r="5" />
  </svg>
)
