// How much room a drawing has; asked again when the sheet is turned.
import { useEffect, useState } from 'react'
import type { System } from '../../quantity/printQuantity.ts'
import type { Room } from '../model/drawings.ts'

const NARROW = 900
const SIDE = 352
const MARGIN = 80
/** Steps of px, so that a sheet that is pulled does not ask for a new drawing at every pixel. */
const STEP = 40
const MOST = 860
const LEAST = 320

function widthNow(): number {
  const free = innerWidth < NARROW ? innerWidth - 44 : innerWidth - SIDE - MARGIN
  return Math.max(LEAST, Math.min(MOST, Math.floor(free / STEP) * STEP))
}

export function useRoom(system: System): Room {
  const [width, setWidth] = useState(widthNow)
  useEffect(() => {
    const look = () => setWidth(widthNow())
    window.addEventListener('resize', look)
    return () => window.removeEventListener('resize', look)
  }, [])
  return { width, mostHeight: width < 500 ? 260 : 340, system }
}
