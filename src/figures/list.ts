// Every calculation that can be asked for by itself, by rooms.
import { BEARING_LIFE } from './bearings/life.ts'
import { BEARING_DRAG } from './bearings/rolling.ts'
import { BEARING_SEATS } from './bearings/seats.ts'
import { BEARING_SETTING } from './bearings/setting.ts'
import { BUSHES } from './fits/bushes.ts'
import { HEATING } from './fits/heating.ts'
import { LIMITS } from './fits/limits.ts'
import { PRESSING } from './fits/pressing.ts'
import type { Figure } from './frame/figure.ts'
import { KEYS } from './shafts/keys.ts'
import { SEALS } from './shafts/seals.ts'
import { SHAFTS } from './shafts/shafts.ts'

export const ROOMS: Readonly<Record<string, readonly Figure[]>> = {
  fits: [...PRESSING, ...HEATING, ...BUSHES, ...LIMITS],
  bearings: [...BEARING_SETTING, ...BEARING_SEATS, ...BEARING_DRAG, ...BEARING_LIFE],
  shafts: [...SHAFTS, ...KEYS, ...SEALS],
}

export const FIGURES: readonly Figure[] = Object.values(ROOMS).flat()
