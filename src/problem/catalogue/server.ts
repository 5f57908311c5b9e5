// Problems of the server: who may do what, and what may come over the wire.
import { table } from '../entry.ts'

export const SERVER = table({
  NOT_ENROLLED: {
    says: () => 'This device does not belong to the shop, or was shut out.',
    next: 'Ask the keeper of the shop for an invitation and enrol it. What was written on it stays on it until then.',
    http: 401,
  },
  NOT_SIGNED_IN: {
    says: ({ person }) =>
      person ? `${person} has not signed in on this device.` : 'Nobody has signed in on this device.',
    next: 'Choose your name and type your PIN. What was written stays on this device until then.',
    http: 401,
  },
  ROLE_MAY_NOT: {
    says: ({ person, role, what }) => `${person} is ${role} and may not ${what}.`,
    next: ({ wants }) => `A ${wants} may. Nothing was changed.`,
    http: 403,
  },
  NOT_FROM_HERE: {
    says: ({ received }) => `This was sent by a page from ${received}, which is not this server.`,
    next: 'Open Matchmark by its own address.',
    http: 403,
  },
  NAME_NOT_OURS: {
    says: ({ received }) => `This server was asked for as '${received}', which is none of its names.`,
    next: ({ known }) => `Ask for it by one of its names: ${known}.`,
    http: 403,
  },
  DEVICE_NOT_YOURS: {
    says: ({ received, device }) => `An entry says that ${received} wrote it; this is ${device}.`,
    next: 'A device sends only what it wrote itself. Nothing was taken.',
    http: 403,
  },
  STREAM_NOT_YOURS: {
    says: ({ stream }) => `Only the server writes into '${stream}'.`,
    next: 'People and devices are changed on the sheet of the shop. Nothing was taken.',
    http: 403,
  },
  SHOP_IN_USE: {
    says: ({ folder }) => `Another program has the shop in ${folder} open: most likely it is served.`,
    next: 'Stop it, then do this again. Nothing was changed.',
    http: 409,
  },
  SHOP_HELD: {
    says: ({ folder }) => `The shop in ${folder} is being restored or moved by another program.`,
    next: 'Wait until that has ended, then start again.',
    http: 503,
  },
  SHOP_NOT_THERE: {
    says: ({ place }) => `There is no record of a shop in ${place}.`,
    next: 'Look at the name after --in or --store. Nothing was made there.',
    http: 404,
  },
  SHOP_UNFINISHED: {
    says: ({ place, from }) => `The record in ${place} is not whole: filling it from ${from} was broken off.`,
    next: 'Do that again: it goes on where it stopped, and the record opens when it is whole.',
    http: 503,
  },
  SHOP_NOT_EMPTY: {
    says: ({ place, found }) => `There is another record in ${place} already: ${found}.`,
    next: "Name an empty database ('createdb NAME' makes one); the one that is there was left as it is.",
    http: 409,
  },
  SECOND_IS_FIRST: {
    says: ({ person, step }) => `${person} signed '${step}' and cannot be the second person too.`,
    next: 'Let somebody else look and sign. Alone: look again later by another method, with a photo.',
    http: 409,
  },
  PIN_UNFIT: {
    says: () => 'A PIN of 4 to 12 digits, not all alike, is wanted.',
    next: 'Choose another one.',
    http: 422,
  },
  PIN_WRONG: {
    says: () => 'This name and this PIN do not belong together.',
    next: 'Try again; after three times each try takes longer.',
    http: 401,
  },
  CODE_WRONG: {
    says: () => 'This code is not good, or not any more: it is good once and for a quarter of an hour.',
    next: 'Read it again from the page, or ask the keeper for a new invitation.',
    http: 401,
  },
  LOCKED_OUT: {
    says: () => 'There were too many wrong tries.',
    next: ({ seconds }) => `Wait ${seconds} seconds, then try again.`,
    http: 429,
  },
  TOO_MANY_ASKED: {
    says: () => 'Too much was asked in too short a time.',
    next: ({ seconds }) => `Wait ${seconds} seconds, then go on.`,
    http: 429,
  },
  PERSON_TAKEN: {
    says: ({ person }) => `There is a ${person} in the shop already.`,
    next: 'Give the name that people here go by, so that each is known by one.',
    http: 409,
  },
  NOT_HERE: {
    says: ({ what }) => `There is no ${what} here.`,
    next: 'Look into the list it should stand in.',
    http: 404,
  },
  REQUEST_SHAPE: {
    says: ({ where, reason }) => `${where} cannot be read: ${reason}.`,
    next: '/api/openapi.json says what is expected.',
    http: 422,
  },
  REQUEST_TOO_LARGE: {
    says: ({ most }) => `This is too large; at most ${most} are taken.`,
    next: 'Send less at once, or a smaller picture.',
    http: 413,
  },
  METHOD_NOT_HERE: {
    says: ({ method }) => `${method} is nothing that can be asked here.`,
    next: '/api/openapi.json says what can.',
    http: 405,
  },
  SERVER_FAULT: {
    says: () => 'The server could not do this, by a fault of its own.',
    next: 'What was written stays on the device. Try again; if it comes back, look into the log of the server.',
    http: 500,
  },
  STOPPING: {
    says: () => 'The server is stopping.',
    next: 'What was written stays on the device and goes out when the server is back.',
    http: 503,
  },
})
