// What is typed or chosen on this device and is no entry: drafts, the person, units, scheme. Written at once, so that a reload loses nothing.
const NAME = 'matchmark'

/** A storage that is full or shut off is no reason to stop a hand: what was typed then lasts as long as the page. */
const memory = new Map<string, string>()

export function draft(key: string): string | undefined {
  try {
    return localStorage.getItem(`${NAME} ${key}`) ?? memory.get(key)
  } catch {
    return memory.get(key)
  }
}

export function keepDraft(key: string, text: string | undefined): void {
  if (text === undefined || text === '') memory.delete(key)
  else memory.set(key, text)
  try {
    if (text === undefined || text === '') localStorage.removeItem(`${NAME} ${key}`)
    else localStorage.setItem(`${NAME} ${key}`, text)
  } catch {
    // kept in memory above
  }
}
