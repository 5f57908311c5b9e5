// Whether an operation may start, given what is done: the needs as the closing left them.
import type { Instance, MaskedNeed } from './instance.ts'

/** Whether each need has an alternative that holds in a done-set (words of many sets, one after another). */
export function needsHold(needs: readonly MaskedNeed[], words: Uint32Array, at: number): boolean {
  for (const anyOf of needs) {
    let met = false
    for (const { done, notDone } of anyOf) {
      met = true
      for (let word = 0; word < done.length && met; word++) {
        const set = words[at + word]!
        met = (done[word]! & ~set) === 0 && (notDone[word]! & set) === 0
      }
      if (met) break
    }
    if (!met) return false
  }
  return true
}

/** Whether an operation's own needs hold; its modes have needs of their own. */
export function isReady(instance: Instance, op: number, words: Uint32Array, at: number): boolean {
  for (const before of instance.rightBefore[op]!) {
    if (((words[at + (before >>> 5)]! >>> (before & 31)) & 1) === 0) return false
  }
  return needsHold(instance.needs[op]!, words, at)
}

/** Whether an operation may start in at least one mode. */
export function mayStart(instance: Instance, op: number, words: Uint32Array, at: number): boolean {
  return (
    isReady(instance, op, words, at) &&
    instance.modesOf[op]!.some((mode) => needsHold(instance.modes[mode]!.needs, words, at))
  )
}
