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
import { BEVELS } from './gears/bevels.ts'
import { GEAR_MESH } from './gears/mesh.ts'
import { GEAR_SIZES } from './gears/sizes.ts'
import { TRAINS } from './gears/trains.ts'
import { CYLINDERS } from './hydraulics/cylinders.ts'
import { OIL } from './hydraulics/oil.ts'
import { LIFTING } from './lifting/lifting.ts'
import { READINGS } from './measuring/readings.ts'
import { KEYS } from './shafts/keys.ts'
import { SEALS } from './shafts/seals.ts'
import { SHAFTS } from './shafts/shafts.ts'
import { LOOPS } from './stackup/loops.ts'
import { JOINTS } from './threads/joints.ts'
import { THREADS } from './threads/threads.ts'
import { TIGHTENING } from './threads/tightening.ts'
import { TIMES } from './times/times.ts'

export const ROOMS: Readonly<Record<string, readonly Figure[]>> = {
  fits: [...PRESSING, ...HEATING, ...BUSHES, ...LIMITS],
  threads: [...THREADS, ...TIGHTENING, ...JOINTS],
  bearings: [...BEARING_SETTING, ...BEARING_SEATS, ...BEARING_DRAG, ...BEARING_LIFE],
  gears: [...GEAR_SIZES, ...GEAR_MESH, ...BEVELS, ...TRAINS],
  shafts: [...SHAFTS, ...KEYS, ...SEALS],
  'loops and shims': LOOPS,
  hydraulics: [...CYLINDERS, ...OIL],
  lifting: LIFTING,
  measuring: READINGS,
  'time of work': TIMES,
}

export const FIGURES: readonly Figure[] = Object.values(ROOMS).flat()
