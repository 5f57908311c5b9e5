// Problems of the journal: entries that cannot be taken and chains that do not hold.
import { table } from '../entry.ts'

export const JOURNAL = table({
  ENTRY_SHAPE: {
    says: ({ where, received, expected }) => `In an entry, '${where}' is ${received}; expected ${expected}.`,
    next: 'The shapes of all entries stand in src/journal/entry.ts. The entry was not taken; nothing else was changed.',
    http: 422,
  },
  ENTRY_KIND_UNKNOWN: {
    says: ({ kind, v, known }) =>
      `An entry of the kind '${kind}', version ${v}, is not known here. Known are: ${known}.`,
    next: 'It may come from a newer Matchmark: bring this one up to date and send the entry again. Until then it stays where it was made.',
    http: 422,
  },
  ENTRY_TOO_LARGE: {
    says: ({ size, most }) => `An entry is ${size} bytes long; at most ${most} are taken.`,
    next: 'Photos and other files go beside the journal, and an entry names them by their hash.',
    http: 413,
  },
  ENTRIES_TOO_MANY: {
    says: ({ count, most }) => `${count} entries came at once; at most ${most} are taken.`,
    next: 'Send them in several goes; the order does not matter.',
    http: 413,
  },
  ENTRY_ID_TAKEN: {
    says: ({ id, stream }) =>
      `The id ${id} already belongs to another entry of '${stream}'; entries are never changed.`,
    next: 'Make a new entry with an id of its own. What was to be corrected is withdrawn by an entry of its own.',
    http: 409,
  },
  NOT_CANONICAL: {
    says: ({ reason }) => `This cannot be written in the one form that is hashed: ${reason}.`,
    next: 'Only texts, finite numbers, true, false, null, lists and plain objects can be written; see RFC 8785.',
    http: 422,
  },
  ARCHIVE_BROKEN: {
    says: ({ file, reason }) => `${file} is not as it was sealed: ${reason}`,
    next: "Nothing was taken from it. 'matchmark verify' says all that is wrong; ask for the archive anew.",
    http: 422,
  },
  ARCHIVE_OF_OTHERS: {
    says: ({ file, received, expected }) => `${file} was sealed with the key ${received}; expected ${expected}.`,
    next: 'Ask who sent it. Without --from it is taken from any shop.',
    http: 409,
  },
  ARCHIVE_SPEAKS_FOR_US: {
    says: ({ file, device, person, key }) =>
      `${file} brings what ${person} is to have said on ${device}, a device of this shop, and it is not here. It was sealed with the key ${key}.`,
    next: 'Ask who sent it. Where you know the key, and that they have what this shop has lost, name it with --from. Nothing was taken.',
    http: 409,
  },
  FOLDER_TAKEN: {
    says: ({ folder }) => `There is something in ${folder} already.`,
    next: 'Name a folder that is not there yet; each backup has one of its own.',
    http: 409,
  },
})
