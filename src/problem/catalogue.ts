// Every problem that can be shown: one table for each room, joined here.
import { CONNECTIONS } from './catalogue/connections.ts'
import { DERIVE } from './catalogue/derive.ts'
import { EDGES } from './catalogue/edges.ts'
import { JOURNAL } from './catalogue/journal.ts'
import { MECHANICS } from './catalogue/mechanics.ts'
import { PLANNING } from './catalogue/planning.ts'
import { QUANTITY } from './catalogue/quantity.ts'
import { SERVER } from './catalogue/server.ts'
import { STORES } from './catalogue/stores.ts'
import { UNIT } from './catalogue/unit.ts'
import type { Entry } from './entry.ts'

const TABLES = {
  ...QUANTITY,
  ...MECHANICS,
  ...PLANNING,
  ...UNIT,
  ...CONNECTIONS,
  ...DERIVE,
  ...EDGES,
  ...JOURNAL,
  ...STORES,
  ...SERVER,
}

export type ProblemCode = keyof typeof TABLES

/** Code → sentence, next step, HTTP status. */
export const CATALOGUE: Readonly<Record<ProblemCode, Entry>> = TABLES
