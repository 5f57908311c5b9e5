// ISO 286-1:2010, Tables 2 to 5: fundamental deviations in µm, as data. Read in a public listing of the tables and, for
// m to s up to 180 mm, in Narayana, Kannaiah and Reddy, Machine Drawing, Table 15.2; the rest is from memory.

/** Steps that most letters use: "up to and including" in mm. */
const MAIN = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500]
/** Steps of c, r and s, which divide the larger main steps. */
// biome-ignore format: a table reads as a table
const FINE = [3, 6, 10, 18, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500]

export interface DeviationRow {
  readonly steps: readonly number[]
  readonly micrometres: readonly number[]
}

const main = (...micrometres: number[]): DeviationRow => ({ steps: MAIN, micrometres })
const fine = (...micrometres: number[]): DeviationRow => ({ steps: FINE, micrometres })

/** Shafts whose upper deviation is the fundamental one; symbol es. */
export const UPPER_OF_SHAFT: Readonly<Record<string, DeviationRow>> = {
  // biome-ignore format: a table reads as a table
  c: fine(-60, -70, -80, -95, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230, -240, -260, -280, -300, -330, -360, -400, -440, -480),
  d: main(-20, -30, -40, -50, -65, -80, -100, -120, -145, -170, -190, -210, -230),
  e: main(-14, -20, -25, -32, -40, -50, -60, -72, -85, -100, -110, -125, -135),
  f: main(-6, -10, -13, -16, -20, -25, -30, -36, -43, -50, -56, -62, -68),
  g: main(-2, -4, -5, -6, -7, -9, -10, -12, -14, -15, -17, -18, -20),
  h: main(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0),
}

/** Shafts whose lower deviation is the fundamental one; symbol ei. k as here for grades 4 to 7 only, else 0. */
export const LOWER_OF_SHAFT: Readonly<Record<string, DeviationRow>> = {
  k: main(0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5),
  m: main(2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23),
  n: main(4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40),
  p: main(6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68),
  // biome-ignore format: a table reads as a table
  r: fine(10, 15, 19, 23, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132),
  // biome-ignore format: a table reads as a table
  s: fine(14, 19, 23, 28, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252),
}

/** Lower deviation of j shafts by grade; symbol ei. */
export const LOWER_OF_J_SHAFT: Readonly<Record<number, DeviationRow>> = {
  5: main(-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20),
  6: main(-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20),
  7: main(-4, -4, -5, -6, -8, -10, -12, -15, -18, -21, -26, -28, -32),
}

/** Upper deviation of J holes by grade; symbol ES. */
export const UPPER_OF_J_HOLE: Readonly<Record<number, DeviationRow>> = {
  6: main(2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33),
  7: main(4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43),
  8: main(6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66),
}
