// Thread designations: M10×1.5, 3/8-16 UNC, 1/2 BSW, 2 BA, G 1/2, R 1/2, 1/2-14 NPT.
import { Problem } from '../problem/problem.ts'
import { clip } from './clip.ts'
import { inch } from './constructors.ts'
import { type Metre, quantity } from './quantity.ts'
import { divide, multiply, type Ratio, ratio, toNumber } from './ratio.ts'
import { readNumber, type WrittenNumber } from './readNumber.ts'
import { readQuantity } from './readQuantity.ts'
import { BA, INCH_SERIES, METRIC_COARSE, NPT, PIPE, UNC, UNF } from './threadSeries.ts'

/** A screw thread as its designation gives it. */
export interface Thread {
  /**
   * metric: ISO 68-1, 60° · unified: ASME B1.1, 60° · whitworth: BS 84, 55° · ba: BS 93, 47.5° · pipe: ISO 228-1, 55°
   * parallel · taper pipe: ISO 7-1, 55°, 1 in 16 · npt: ASME B1.20.1, 60°, 1 in 16.
   */
  readonly system: 'metric' | 'unified' | 'whitworth' | 'ba' | 'pipe' | 'taper pipe' | 'npt'
  /** Of a taper thread at the plane that is gauged, of NPT the outside of the pipe. */
  readonly nominalDiameter: Metre
  /** Distance between neighbouring threads. */
  readonly pitch: Metre
  readonly hand: 'right' | 'left'
  /** Printed one way, however it was written: `M10×1.5`, `3/8-16 UNC`. The class of fit is kept. */
  readonly designation: string
}

const LONGEST = 60
const METRIC = /^M\s*([\d.,]+)(?:\s*[×xX*]\s*([\d.,]+))?(?:\s*-\s*(\d\w{1,4}))?(?:\s*-?\s*(LH))?$/
const PIPE_THREAD = /^(G|BSPP|R|BSPT)\s*(\d[\d\s/-]*?)(?:\s+in)?(?:\s*([AB]))?(?:\s*-?\s*(LH))?$/
const NPT_THREAD = /^(\d[\d\s/.¼-¾⅐-⅞-]*?)\s*NPT(?:\s*-?\s*(LH))?$/i
const BA_THREAD = /^(?:(\d{1,2})\s*BA|BA\s*(\d{1,2}))(?:\s*-?\s*(LH))?$/i
const INCH =
  /^(#|No\.?\s*)?([\d\s/.¼-¾⅐-⅞-]+?)\s*(UN[A-Z]{0,3}|BSW|BSF|Whitworth|Whit\.?)?(?:\s*-?\s*([123][AB]))?(?:\s*-?\s*(LH))?$/i
const IN_INCHES = ratio(254n, 10_000n)

/**
 * The thread that a designation stands for. Without a pitch the coarse one of ISO 261 is meant; an inch thread without a series has to
 * be one of UNC or UNF.
 *
 * @throws THREAD_UNREADABLE, THREAD_PITCH_MISSING, THREAD_NOT_IN_SERIES, THREAD_SERIES_MISSING
 * @source ISO 261, ISO 228-1, ISO 7-1, ASME B1.1 and B1.20.1, BS 84, BS 93; what was read and what is from memory stands with the tables
 * @example readThread('M10').pitch   // 0.0015 m
 * @example readThread('3/8-16 UNC').nominalDiameter   // 0.009525 m
 */
export function readThread(text: string): Thread {
  const written =
    text.length > LONGEST
      ? ''
      : text
          .trim()
          .replace(/[‐‑–−]/g, '-')
          .replace(/["”″]/g, '')
          .replace(/[⁄∕]/g, '/')
  const metric = METRIC.exec(written)
  if (metric) return metricThread(text, metric)
  const pipe = PIPE_THREAD.exec(written)
  if (pipe) return pipeThread(text, pipe)
  const npt = NPT_THREAD.exec(written)
  if (npt) return nptThread(text, npt)
  const ba = BA_THREAD.exec(written)
  if (ba) return baThread(text, ba)
  const found = INCH.exec(written)
  if (found) return inchThread(text, found)
  throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
}

function metricThread(text: string, [, diameterText, pitchText, fit, left]: RegExpExecArray): Thread {
  const diameter = positive(text, diameterText!)
  const size = asDecimal(diameter)
  const coarse = METRIC_COARSE[size]
  if (!pitchText && !coarse) throw new Problem('THREAD_PITCH_MISSING', { text: clip(text) })
  const pitch = pitchText ? asDecimal(positive(text, pitchText)) : coarse!
  return checked(text, {
    system: 'metric',
    nominalDiameter: readQuantity(size, { as: 'length', unit: 'mm' }),
    pitch: readQuantity(pitch, { as: 'length', unit: 'mm' }),
    hand: left ? 'left' : 'right',
    designation: `M${size}×${pitch}${fit ? `-${fit}` : ''}${left ? '-LH' : ''}`,
  })
}

function pipeThread(text: string, [, mark, sizeText, fit, left]: RegExpExecArray): Thread {
  const isTaper = mark === 'R' || mark === 'BSPT'
  const series = isTaper ? 'R' : 'G'
  const size = asInches(positive(text, sizeText!.trim()))
  const row = PIPE[size]
  // Not every size has a taper thread, and the letters A and B are classes of the parallel one alone.
  if (!row || (isTaper && (fit || !row.gaugeLength))) {
    throw notInSeries(
      text,
      series,
      Object.keys(PIPE).filter((held) => !isTaper || PIPE[held]?.gaugeLength),
    )
  }
  return {
    system: isTaper ? 'taper pipe' : 'pipe',
    nominalDiameter: readQuantity(row.diameter, { as: 'length', unit: 'mm' }),
    pitch: perInch(positive(text, row.perInch).value),
    hand: left ? 'left' : 'right',
    designation: `${series} ${size}${fit ? ` ${fit}` : ''}${left ? ' LH' : ''}`,
  }
}

/** `1/2 NPT`, `1/2-14 NPT`: the size is that of the pipe, not of the thread. */
function nptThread(text: string, [, numbers, left]: RegExpExecArray): Thread {
  const { size, threads } = sizeAndThreads(text, numbers!.trim(), false)
  const row = NPT[size]
  if (!row) throw notInSeries(text, 'NPT', Object.keys(NPT))
  if (threads && threads !== row.perInch) throw notInSeries(text, 'NPT', [`${size}-${row.perInch}`])
  return {
    system: 'npt',
    nominalDiameter: readQuantity(row.diameter, { as: 'length', unit: 'in' }),
    pitch: perInch(positive(text, row.perInch).value),
    hand: left ? 'left' : 'right',
    designation: `${size}-${row.perInch} NPT${left ? '-LH' : ''}`,
  }
}

function baThread(text: string, [, before, behind, left]: RegExpExecArray): Thread {
  const number = `${Number(before ?? behind)}`
  const row = BA[number]
  if (!row) throw notInSeries(text, 'BA', Object.keys(BA))
  return {
    system: 'ba',
    nominalDiameter: readQuantity(row.diameter, { as: 'length', unit: 'mm' }),
    pitch: readQuantity(row.pitch, { as: 'length', unit: 'mm' }),
    hand: left ? 'left' : 'right',
    designation: `${number} BA${left ? '-LH' : ''}`,
  }
}

function notInSeries(text: string, series: string, held: readonly string[]): Problem {
  return new Problem('THREAD_NOT_IN_SERIES', { text: clip(text), series, expected: held.join(', ') })
}

function inchThread(text: string, [, hash, numbers, seriesText, fit, left]: RegExpExecArray): Thread {
  const { size, diameter, threads } = sizeAndThreads(text, numbers!.trim().replace(/-$/, ''), hash !== undefined)
  const series = seriesText ? seriesName(seriesText) : seriesOf(text, size, threads)
  const listed = INCH_SERIES[series]?.[size]
  if (INCH_SERIES[series] && threads && listed !== threads) {
    const expected = listed ? `${size}-${listed}` : Object.keys(INCH_SERIES[series]).join(', ')
    throw new Problem('THREAD_NOT_IN_SERIES', { text: clip(text), series, expected })
  }
  const count = threads ?? listed
  if (!count) throw new Problem('THREAD_PITCH_MISSING', { text: clip(text) })
  return checked(text, {
    system: series.startsWith('BS') ? 'whitworth' : 'unified',
    nominalDiameter: diameter,
    pitch: perInch(positive(text, count).value),
    hand: left ? 'left' : 'right',
    designation: `${size}-${count} ${series}${fit ? `-${fit.toUpperCase()}` : ''}${left ? '-LH' : ''}`,
  })
}

/** `3/8-16`, `1-1/4-7`, `1 1/4-7`, `.375-16`, `10-32` and, before a series, the size alone. */
function sizeAndThreads(
  text: string,
  numbers: string,
  hash: boolean,
): { size: string; diameter: Metre; threads: string | undefined } {
  const first = readNumber(numbers, 0)
  if (!first) throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
  const rest = /^\s*-\s*([\d.]+)$/.exec(numbers.slice(first.end))
  if (!rest && first.end < numbers.length) throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
  const threads = rest ? asDecimal(positive(text, rest[1]!)) : undefined
  const number = `#${first.value.n}`
  // 10-32 is a numbered size where the fine or coarse series has it so; 1-8 and 4-4 are inches.
  const listed = [UNC, UNF].some((series) => threads !== undefined && series[number] === threads)
  if (first.kind === 'whole' && (hash || listed)) {
    if (!(number in UNC || number in UNF)) throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
    return { size: number, diameter: numberedDiameter(first.value), threads }
  }
  if (hash) throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
  const diameter = quantity(toNumber(multiply(first.value, IN_INCHES)), 'm')
  return { size: asInches(first), diameter, threads }
}

/** ASME B1.1: number n is 0.060 in + 0.013 in × n. */
const numberedDiameter = ({ n }: Ratio): Metre => inch((60 + 13 * Number(n)) / 1000)

const perInch = (threads: Ratio): Metre => quantity(toNumber(divide(IN_INCHES, threads)), 'm')

const seriesName = (text: string): string => (/^whit/i.test(text) ? 'BSW' : text.toUpperCase())

function seriesOf(text: string, size: string, threads: string | undefined): string {
  if (threads !== undefined && UNC[size] === threads) return 'UNC'
  if (threads !== undefined && UNF[size] === threads) return 'UNF'
  throw new Problem('THREAD_SERIES_MISSING', { text: clip(text) })
}

function positive(text: string, number: string): WrittenNumber {
  const read = readNumber(number, 0)
  if (read?.end !== number.length || read.commaUnclear || read.value.n <= 0n) {
    throw new Problem('THREAD_UNREADABLE', { text: clip(text) })
  }
  return read
}

/** `0.35`, `10`, `4.5`: one way of writing millimetres and threads per inch. */
const asDecimal = ({ value }: WrittenNumber): string => `${toNumber(value)}`

/** `3/8`, `1-1/4`, `2`; a size that is not in sixty-fourths stays a decimal. */
function asInches(number: WrittenNumber): string {
  const { n, d } = number.value
  if (d === 1n || 64n % d !== 0n) return asDecimal(number)
  const whole = n / d
  return `${whole === 0n ? '' : `${whole}-`}${n % d}/${d}`
}

function checked(text: string, thread: Thread): Thread {
  // The core of an ISO 68-1 thread is d − 1.0825 P; nothing is left of it long before the pitch reaches the diameter.
  if (thread.nominalDiameter <= 1.0825 * thread.pitch) throw new Problem('THREAD_NO_CORE', { text: clip(text) })
  return thread
}
