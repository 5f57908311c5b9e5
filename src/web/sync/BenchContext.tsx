// Hands the bench to the sheets.
import { createContext, type ReactNode, useContext, useSyncExternalStore } from 'react'
import type { Workshop } from '../work/workshop.ts'
import type { Bench, BenchState } from './bench.ts'
import type { Keeper } from './keeper.ts'

interface Handed {
  readonly bench: Bench
  readonly workshop: Workshop
  readonly keeper: Keeper
}

const Context = createContext<Handed | undefined>(undefined)

export const BenchProvider = ({ children, ...handed }: Handed & { readonly children: ReactNode }) => (
  <Context value={handed}>{children}</Context>
)

function useHanded(): Handed {
  const handed = useContext(Context)
  if (!handed) throw new Error('assert: no bench was handed to this sheet')
  return handed
}

export const useBench = (): Bench => useHanded().bench
export const useWorkshop = (): Workshop => useHanded().workshop
export const useKeeper = (): Keeper => useHanded().keeper

export function useBenchState(): BenchState {
  const bench = useBench()
  return useSyncExternalStore(bench.subscribe, bench.snapshot)
}
