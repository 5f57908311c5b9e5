// What a person chooses for this device: units and scheme.
import { useSyncExternalStore } from 'react'
import type { System } from '../../quantity/printQuantity.ts'
import { draft, keepDraft } from '../sync/drafts.ts'

export type Scheme = 'device' | 'paper' | 'blackboard'

const listeners = new Set<() => void>()
const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

function choose(key: string, value: string): void {
  keepDraft(key, value)
  showScheme()
  for (const listener of listeners) listener()
}

/** The system chosen here; until somebody chooses, the one that the job's own sizes are written in. */
export function useSystem(lengthUnit: 'mm' | 'in' = 'mm'): readonly [System, (system: System) => void] {
  const chosen = useSyncExternalStore(subscribe, () => draft('system'))
  const system: System = chosen === 'inch' || chosen === 'metric' ? chosen : lengthUnit === 'in' ? 'inch' : 'metric'
  return [system, (value) => choose('system', value)]
}

export function useScheme(): readonly [Scheme, (scheme: Scheme) => void] {
  const chosen = useSyncExternalStore(subscribe, () => draft('scheme'))
  return [chosen === 'paper' || chosen === 'blackboard' ? chosen : 'device', (value) => choose('scheme', value)]
}

const isDark = () => matchMedia('(prefers-color-scheme: dark)')

/** Paper is paper, whatever the screen shows. */
let isPrinting = false

export function showScheme(): void {
  const chosen = isPrinting ? 'paper' : draft('scheme')
  const scheme = chosen === 'paper' || chosen === 'blackboard' ? chosen : isDark().matches ? 'blackboard' : 'paper'
  document.documentElement.dataset.scheme = scheme
}

/** The device may go over to its dark side at dusk. */
export function followScheme(): void {
  showScheme()
  isDark().addEventListener('change', showScheme)
  for (const [event, is] of [
    ['beforeprint', true],
    ['afterprint', false],
  ] as const)
    window.addEventListener(event, () => {
      isPrinting = is
      showScheme()
    })
}
