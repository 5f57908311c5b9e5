// Hand over: how far it is, the job book, the sealed record.
import { isDone, looksIn } from '../../model/jobOnSheet.ts'
import { Region } from '../../parts/Region.tsx'
import { words } from '../../words/words.ts'
import { MakeBook } from './MakeBook.tsx'
import { goodChecks } from './Prove.tsx'
import type { Stands } from './StageRoute.tsx'
import css from './Stages.module.css'
import { Told } from './Told.tsx'

const texts = words.desk

export function HandOver({ job, worked }: Stands) {
  const steps = job.state.sequence?.steps ?? []
  const signed = steps.filter(({ step }) => isDone(job.state.steps.get(step))).length
  return (
    <>
      <Region title={texts.state} place={10}>
        <ul className={css.rows}>
          <li>{steps.length > 0 ? texts.signed(signed, steps.length) : texts.noSequence}</li>
          <li>{texts.checks(goodChecks(job, worked), worked.desk.checks.length)}</li>
          <li>{texts.looks(looksIn(job))}</li>
        </ul>
      </Region>
      <Region title={texts.book} place={20}>
        <p>
          {texts.bookWhy} <a href="/books">{words.home.book}</a>
        </p>
        <MakeBook job={job.number} />
      </Region>
      <Region title={texts.sealed} place={30}>
        <p>{texts.sealedWhy}</p>
        <p>
          <code>{texts.command(job.number)}</code>
        </p>
      </Region>
      <Region title={texts.teach} place={40}>
        <p>
          <Told text={texts.teachWhy} />
        </p>
      </Region>
    </>
  )
}
