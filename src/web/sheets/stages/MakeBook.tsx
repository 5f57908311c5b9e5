// The job book as the shop makes it from the record, kept on this device as one page.
import { useState } from 'react'
import { Action } from '../../parts/Action.tsx'
import { jobBook, ShopAway } from '../../sync/shop.ts'
import { words } from '../../words/words.ts'

const texts = words.desk

type Making =
  | { readonly is: 'not asked' }
  | { readonly is: 'making' }
  | { readonly is: 'made'; readonly name: string }
  | { readonly is: 'trouble'; readonly says: string }

export function MakeBook({ job }: { job: string }) {
  const [making, setMaking] = useState<Making>({ is: 'not asked' })
  const make = async () => {
    if (making.is === 'making') return
    setMaking({ is: 'making' })
    try {
      const html = await jobBook(job)
      const name = `job book ${job.replaceAll(/[^\w.-]+/g, '-')}.html`
      keep(html, name)
      setMaking({ is: 'made', name })
    } catch (error) {
      const says = error instanceof Error ? error.message : String(error)
      setMaking({ is: 'trouble', says: error instanceof ShopAway ? texts.bookAway : says })
    }
  }
  return (
    <>
      <Action onDo={() => void make()} also={texts.bookAlso} isOff={making.is === 'making'}>
        {texts.bookMake}
      </Action>
      <p aria-live="polite">
        {making.is === 'making' && texts.bookMaking}
        {making.is === 'made' && texts.bookMade(making.name)}
        {making.is === 'trouble' && making.says}
      </p>
    </>
  )
}

/** The page's policy lets nothing made here be opened in it; a file of the device may be. */
function keep(html: string, name: string): void {
  const address = URL.createObjectURL(new Blob([html], { type: 'text/html' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
