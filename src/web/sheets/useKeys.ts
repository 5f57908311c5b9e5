// Single keys for a sheet, told on the devices sheet. A key that is typed into a field is no shortcut.
import { useEffect, useRef } from 'react'

export function useKeys(keys: Readonly<Record<string, (() => void) | undefined>>): void {
  const latest = useRef(keys)
  latest.current = keys
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return
      if (document.querySelector('dialog[open]')) return
      const { target } = event
      if (target instanceof HTMLElement && /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)) return
      const act = latest.current[event.key.toLowerCase()]
      if (!act) return
      event.preventDefault()
      act()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [])
}
