// Words of photos and of the second person; a part of the one catalogue.
/** The number stays with its word where a line breaks. */
const count = (n: number, one: string, many: string): string => `${n}\u{a0}${n === 1 ? one : many}`

export const photos = {
  title: 'Photos',
  take: 'Take a photo',
  keeping: 'keeping it …',
  kept: 'The photo is kept.',
  wanted: (of: string) => `A photo is wanted: ${of}.`,
  without: 'Go on without it',
  of: (person: string, when: string) => `Photo by ${person}, ${when}`,
  opens: (person: string, when: string) => `Photo by ${person}, ${when}: open it large`,
  coming: 'not here yet',
  looking: 'fetching it …',
  onlySmall: 'Only the small picture is here; the whole one comes from the shop when it is reached.',
  close: 'Close',
  aPhoto: 'a photo',
  here: (entries: number, n: number) =>
    entries > 0 ? `${entries}\u{a0}here, ${count(n, 'photo', 'photos')}` : count(n, 'photo', 'photos'),
  waiting: (n: number) => `${count(n, 'photo waits', 'photos wait')} here to be sent.`,
  forJob: (entries: string, n: number) =>
    [entries, count(n, 'photo', 'photos')].filter((text) => text !== '').join(', '),
  refused: (says: string) => `The shop does not take a photo; it stays on this device: ${says}`,
} as const

export const second = {
  title: 'Second person',
  before: 'Two people sign this step: one does it, another looks and signs too.',
  wanted: 'A second person is wanted',
  why: (why: string) => `${why.slice(0, 1).toUpperCase()}${why.slice(1)}.`,
  still: 'I have looked at it myself; it stands in the place of the check alone',
  can: (person: string) => `${person} can look at it and sign.`,
  sign: 'Sign as the second person',
  signAlso: (did: string) => `done by ${did}; I have looked at it myself`,
  other: 'Somebody else is here',
  otherAlso: 'to the sheet of this device: name, PIN',
  alone: 'Alone: check it again',
  aloneAlso: 'later, by another method, with a photo',
  aloneWhy:
    'It is recorded as one person, checked again. Use a method other than the first: what missed it once misses it again.',
  method: 'Method, other than the first: feeler at the tab, torque in the direction of tightening',
  found: 'What was found or read',
  photo: (when: string) => `With the photo of ${when}.`,
  noPhoto: 'A photo that was taken after the signature is wanted.',
  signAlone: 'Sign: one person, checked again',
  notReady: 'a method and a photo are wanted first',
  close: 'Close',
  given: (person: string, when: string) => `Looked at and signed by ${person} as the second person, ${when}`,
  one: (person: string, when: string) => `One person, checked again: ${person}, ${when}`,
  byMethod: (method: string, found: string | undefined) => (found === undefined ? method : `${method}: ${found}`),
  beforeShut: (shut: string) => `Before ${shut} is shut`,
  bad: (numbers: string, shut: string) =>
    `Checked as not good: ${numbers}. It is put right before ${shut} is shut, or somebody answers for it.`,
  unseen: (numbers: string, shut: string) =>
    `Nobody else has looked at ${numbers} yet, and nobody sees it again once ${shut} is shut.`,
  waits: { 'second person': 'a second person is wanted', photo: 'a photo is wanted' },
  oneShort: 'one person, checked again',
} as const
