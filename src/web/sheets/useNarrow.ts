// Whether all stands in one column: a telephone, a tablet held upright. The same width as in the style sheets.
import { useSyncExternalStore } from 'react'

const narrow = () => matchMedia('(max-width: 899px)')

const subscribe = (changed: () => void) => {
  const list = narrow()
  list.addEventListener('change', changed)
  return () => list.removeEventListener('change', changed)
}

export const useNarrow = (): boolean => useSyncExternalStore(subscribe, () => narrow().matches)
