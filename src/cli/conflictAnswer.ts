// A conflict for machines, as every answer gives it.
import type { PlanResult } from '../planning/model/sequence.ts'

export const conflictAnswer = (conflict: PlanResult['conflict']) =>
  conflict && {
    members: conflict.members.map(({ kind, id, op, reason, giveUp }) => ({
      kind,
      id,
      step: op,
      says: reason.says,
      giveUp,
    })),
    cheapest: [...conflict.cheapest],
    irreducible: conflict.irreducible,
  }
