// The time of day for clocks on a sheet, once a second while one runs.
import { useEffect, useState } from 'react'

const SECOND_MS = 1000

export function useNow(isRunning: boolean): number {
  const [now_ms, setNow] = useState(() => Date.now())
  useEffect(() => {
    if (!isRunning) return
    setNow(Date.now())
    const timer = setInterval(() => setNow(Date.now()), SECOND_MS)
    return () => clearInterval(timer)
  }, [isRunning])
  return now_ms
}
