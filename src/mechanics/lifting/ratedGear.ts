/** Said with every figure about something that hangs. */
export const RATED_GEAR: readonly string[] = [
  'A figure is no permission: the plate of each sling, eye, shackle and hoist decides, and a competent person chooses them.',
  'Lift a hand’s breadth, look, then go on. Nobody under it. Local rules come first (29 CFR 1910.184, LOLER).',
]
