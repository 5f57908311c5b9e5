// Every calculation that can be asked for by itself, by rooms.
import { BEARING_LIFE } from './bearings/life.ts'
import { BEARING_DRAG } from './bearings/rolling.ts'
import { BEARING_SEATS } from './bearings/seats.ts'
import { BEARING_SETTING } from './bearings/setting.ts'
import type { Figure } from './frame/figure.ts'

export const ROOMS: Readonly<Record<string, readonly Figure[]>> = {
  bearings: [...BEARING_SETTING, ...BEARING_SEATS, ...BEARING_DRAG, ...BEARING_LIFE],
}

export const FIGURES: readonly Figure[] = Object.values(ROOMS).flat()
