// An address at which no sheet stands: it says so, and leads back. Job books that the device does not have say so here too.
import { useLocation } from 'wouter'
import { Action, ActionLink } from '../parts/Action.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { NameLine } from '../parts/StageLine.tsx'
import { TitleBlock } from '../parts/TitleBlock.tsx'
import { words } from '../words/words.ts'
import css from './Plain.module.css'
import { useShopBlock } from './useBlock.ts'

const texts = words.lost
/** Pages of the shop's server, not of the app: the app answers for them where the shop is not reached. */
const BOOKS = /^\/books(\/|$)/

export function NoSheet() {
  const [path] = useLocation()
  const isBooks = BOOKS.test(path)
  const title = isBooks ? texts.books : texts.title
  const block = useShopBlock(title, 0)
  return (
    <Sheet
      label={title}
      head={<NameLine />}
      actions={
        <>
          <ActionLink isMain to="/">
            {words.working.toHome}
          </ActionLink>
          {isBooks && <Action onDo={() => location.reload()}>{texts.booksAgain}</Action>}
        </>
      }
      block={<TitleBlock {...block} />}
    >
      <div className={css.plain}>
        <h1>{title}</h1>
        {isBooks ? (
          <p>{texts.booksWhy}</p>
        ) : (
          <>
            <p className={css.address}>{texts.says(path)}</p>
            <p>{texts.why}</p>
          </>
        )}
      </div>
    </Sheet>
  )
}
