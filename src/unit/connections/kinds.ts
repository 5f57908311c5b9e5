// The one table of kinds: the word that a file writes → the room that knows it. A new kind is a folder beside its siblings and a
// line here; docs/reference/connections.md gets its section (a test asks for it).
import { bearingShims } from './bearingShims/kind.ts'
import { cylindricalFit } from './cylindricalFit/kind.ts'
import { engagement } from './engagement/kind.ts'
import { fasteners } from './fasteners/kind.ts'
import { gasket } from './gasket/kind.ts'
import type { Kind } from './kind.ts'
import { lipSeal } from './lipSeal/kind.ts'
import { snapRing } from './snapRing/kind.ts'

/** In the order of the work inside one step: the gasket lies on before the screws are drawn up. */
const ALL: readonly Kind<unknown>[] = [gasket, bearingShims, engagement, cylindricalFit, snapRing, lipSeal, fasteners]

/** Name → kind. */
export const KINDS: ReadonlyMap<string, Kind<unknown>> = new Map(ALL.map((kind) => [kind.name, kind]))
