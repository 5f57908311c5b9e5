// Which part of a file is asked for.

/** First and last byte, both included. */
export interface Part {
  readonly from: number
  readonly to: number
}

/**
 * One range of bytes. Several at once, or what cannot be read, is answered with the whole, as the standard allows.
 *
 * @source RFC 9110 section 14
 * @example rangeOf('bytes=-500', 2000)   // { from: 1500, to: 1999 }
 */
export function rangeOf(header: string | undefined, size: number): Part | 'whole' | 'outside' {
  const [, first, last] = /^bytes=(\d*)-(\d*)$/.exec(header ?? '') ?? []
  if (first === undefined || last === undefined || (first === '' && last === '')) return 'whole'
  if (first === '') {
    const length = Math.min(Number(last), size)
    return length > 0 ? { from: size - length, to: size - 1 } : 'outside'
  }
  const from = Number(first)
  const to = last === '' ? size - 1 : Math.min(Number(last), size - 1)
  if (last !== '' && Number(last) < from) return 'whole'
  return from < size ? { from, to } : 'outside'
}
