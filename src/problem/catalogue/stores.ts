// Problems of the places where entries and files are kept.
import { table } from '../entry.ts'

export const STORES = table({
  STORE_CLOSED: {
    says: ({ store }) => `The record (${store}) is closed.`,
    next: 'Open it again. What was not acknowledged is sent again; nothing is stored twice.',
    http: 503,
  },
  STORE_FULL: {
    says: ({ store, reason }) => `The record (${store}) cannot grow: ${reason}.`,
    next: 'Make room on the disk and send again. All that was acknowledged is kept.',
    http: 507,
  },
  STORE_READ_ONLY: {
    says: ({ store, reason }) => `The record (${store}) cannot be written: ${reason}.`,
    next: 'Give the folder to the user that Matchmark runs as, or name another one.',
    http: 503,
  },
  STORE_BUSY: {
    says: ({ store, seconds }) => `The record (${store}) was held by another program for more than ${seconds} s.`,
    next: 'Send again. If it lasts, look which program has the file open.',
    http: 503,
  },
  STORE_DAMAGED: {
    says: ({ store, reason }) => `The record (${store}) is damaged: ${reason}.`,
    next: 'Change nothing in its folder, copy it away, and restore the last backup beside it.',
    http: 500,
  },
  STORE_NOT_OURS: {
    says: ({ store, found }) => `${store} is no record of Matchmark: ${found}.`,
    next: 'Name another file; this one is left as it is.',
    http: 409,
  },
  STORE_NEWER: {
    says: ({ store, found, known }) => `The record (${store}) has form ${found}; this Matchmark knows up to ${known}.`,
    next: 'Use the newer Matchmark that wrote it. The record is left as it is.',
    http: 409,
  },
  STORE_UNREACHABLE: {
    says: ({ store, reason }) => `The record (${store}) does not answer: ${reason}.`,
    next: 'See that its server runs and the address is right, and send again; nothing is stored twice.',
    http: 503,
  },
  STORE_ADDRESS: {
    says: ({ received }) => `'${received}' is no address of a PostgreSQL.`,
    next: 'Give it as postgres://user@host:port/database. Nothing was changed.',
    http: 422,
  },
  STORE_NOT_SAFE: {
    says: ({ store, setting, value }) =>
      `The record (${store}) has ${setting} = ${value} and may lose what it acknowledged.`,
    next: ({ setting }) => `Set ${setting} = on in the server's settings.`,
    http: 503,
  },
  STORED_FILE_OTHER: {
    says: ({ received, expected }) => `The file has the hash ${received}; it was sent as ${expected}.`,
    next: 'It was changed on the way. Send it again.',
    http: 422,
  },
  STORED_FILE_TYPE: {
    says: ({ received, known }) => `By its content the file is ${received}; what is kept is ${known}.`,
    next: 'Save it as one of these and send it again. The name of a file is not asked for.',
    http: 415,
  },
  STORED_FILE_TOO_LARGE: {
    says: ({ size, most, type }) => `The file is ${size} bytes long; at most ${most} are kept of ${type}.`,
    next: 'Make the photo smaller and send it again.',
    http: 413,
  },
  STORED_FILE_HASH: {
    says: ({ received }) => `'${received}' is no SHA-256.`,
    next: 'Files are asked for by 64 hexadecimal digits, small letters.',
    http: 400,
  },
  STORED_FILE_PICTURE: {
    says: ({ reason }) => `The picture cannot be opened: ${reason}.`,
    next: 'Take it again, or save it as JPEG.',
    http: 422,
  },
})
