// Problems of the connections of a unit file.
import { table } from '../entry.ts'
import type { Facts } from '../facts.ts'

const meant = ({ nearest }: Facts): string => (nearest ? ` Did you mean '${nearest}'?` : '')

export const CONNECTIONS = table({
  CONNECTION_KIND_UNKNOWN: {
    says: (facts) => `'${facts.received}' is no kind of connection (at '${facts.connection}').${meant(facts)}`,
    next: ({ known }) => `Known kinds: ${known}. What each asks for: docs/reference/connections.md.`,
    http: 422,
  },
  CONNECTION_KEY_UNKNOWN: {
    says: (facts) =>
      `'${facts.key}' is nothing that a connection of the kind '${facts.kind}' knows (at '${facts.connection}').${meant(facts)}`,
    next: ({ known }) => `Known here: ${known}. What each is: docs/reference/connections.md.`,
    http: 422,
  },
  CONNECTION_KEY_MISSING: {
    says: ({ connection, kind, key }) => `'${connection}' is a connection of the kind '${kind}' without '${key}'.`,
    next: ({ key }) => `Give '${key}'. What it is: docs/reference/connections.md.`,
    http: 422,
  },
  CONNECTION_VALUE_WRONG: {
    says: ({ connection, key, received, reason }) =>
      `'${key}' of '${connection}' cannot be read, received ${received}: ${reason}`,
    next: 'Until it is mended it counts as not given.',
    http: 422,
  },
  CONNECTION_PART_UNKNOWN: {
    says: (facts) => `'${facts.connection}' names the part '${facts.part}', which is not in the unit.${meant(facts)}`,
    next: 'Give the name as it stands under parts.',
    http: 422,
  },
  PART_KIND_UNKNOWN: {
    says: (facts) => `'${facts.received}' is no word for how '${facts.part}' is connected.${meant(facts)}`,
    next: ({ known }) => `Known words: ${known}. Other connections stand in full under connections.`,
    http: 422,
  },
})
