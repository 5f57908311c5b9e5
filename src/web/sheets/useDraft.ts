// A text that is being typed; a reload finds it as it was.
import { useCallback, useEffect, useState } from 'react'
import { draft, keepDraft } from '../sync/drafts.ts'

export function useDraft(key: string): readonly [string, (text: string) => void] {
  const [text, setText] = useState(() => draft(key) ?? '')
  useEffect(() => setText(draft(key) ?? ''), [key])
  const change = useCallback(
    (next: string) => {
      keepDraft(key, next)
      setText(next)
    },
    [key],
  )
  return [text, change]
}
