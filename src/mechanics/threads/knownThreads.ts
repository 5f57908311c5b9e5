// Every thread of the series that the quantity room holds, with the form of its flanks: what there is to choose from.
import { inch, metre, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { readThread, type Thread } from '../../quantity/readThread.ts'
import { BA, INCH_SERIES, METRIC_COARSE, METRIC_FINE, NPT, PIPE } from '../../quantity/threadSeries.ts'

/** What the flanks are like: depth as a multiple of the pitch, taken off the diameter. */
export interface ThreadForm {
  readonly name: string
  /** Degrees between the flanks. */
  readonly flankAngle: number
  /** From the major to the pitch diameter. */
  readonly toPitchDiameter: number
  /** From the major to the basic minor diameter, of the hole. */
  readonly toMinorDiameter: number
  /** From the major diameter to that of the stress area. */
  readonly toStressDiameter: number
  readonly source: string
}

const FORMS = {
  metric: {
    name: 'metric, 60°',
    flankAngle: 60,
    toPitchDiameter: 0.649519,
    toMinorDiameter: 1.082532,
    toStressDiameter: 0.9382,
    source: 'ISO 68-1, ISO 724; stress area ISO 898-1',
  },
  unified: {
    name: 'unified, 60°',
    flankAngle: 60,
    toPitchDiameter: 0.649519,
    toMinorDiameter: 1.082532,
    toStressDiameter: 0.9743,
    source: 'ASME B1.1',
  },
  whitworth: {
    name: 'Whitworth, 55°',
    flankAngle: 55,
    toPitchDiameter: 0.640327,
    toMinorDiameter: 1.280654,
    toStressDiameter: 0.960491,
    source: 'BS 84; stress area on the mean of pitch and minor diameter, from memory',
  },
  ba: {
    name: 'British Association, 47.5°',
    flankAngle: 47.5,
    toPitchDiameter: 0.6,
    toMinorDiameter: 1.2,
    toStressDiameter: 0.9,
    source: 'BS 93 (depth 0.6 P, read); stress area on the mean of pitch and minor diameter, from memory',
  },
  npt: {
    name: 'taper pipe, 60°',
    flankAngle: 60,
    toPitchDiameter: 0.8,
    toMinorDiameter: 1.6,
    toStressDiameter: 1.2,
    source: 'ASME B1.20.1 (depth 0.8 P), from memory',
  },
} as const satisfies Record<string, ThreadForm>

export interface KnownThread {
  readonly designation: string
  /** M, UNC, UNF, UNEF, BSW, BSF, BA, G, R or NPT. */
  readonly series: string
  readonly form: ThreadForm
  /** Symbol d; of a taper thread at the plane that is gauged, of NPT the outside of the pipe. */
  readonly nominalDiameter: Metre
  /** Symbol P. */
  readonly pitch: Metre
  /** Of taper threads alone. */
  readonly taper?: Taper
}

export interface Taper {
  /** Change of diameter over length. */
  readonly rate: number
  /** Of the thread that engages by hand: gauge length of R, L1 of NPT. */
  readonly handTight: Metre
}

/** Taper pipe threads are 1 in 16 on the diameter. */
const TAPER = 1 / 16

const FORM_OF: Readonly<Record<Thread['system'], ThreadForm>> = {
  ...FORMS,
  pipe: FORMS.whitworth,
  'taper pipe': FORMS.whitworth,
}
const SERIES_OF: Readonly<Partial<Record<Thread['system'], string>>> = {
  ...{ metric: 'M', ba: 'BA', pipe: 'G', 'taper pipe': 'R', npt: 'NPT' },
}

/** Every thread held, each designation once. */
export const KNOWN_THREADS: readonly KnownThread[] = [
  ...Object.keys(METRIC_COARSE).map((size) => `M${size}`),
  ...Object.entries(METRIC_FINE).flatMap(([size, pitches]) => pitches.map((pitch) => `M${size}×${pitch}`)),
  ...Object.entries(INCH_SERIES).flatMap(([series, sizes]) =>
    Object.entries(sizes).map(([size, perInch]) => `${size}-${perInch} ${series}`),
  ),
  ...Object.keys(PIPE).map((size) => `G ${size}`),
  ...Object.entries(PIPE).flatMap(([size, { gaugeLength }]) => (gaugeLength ? [`R ${size}`] : [])),
  ...Object.keys(BA).map((number) => `${number} BA`),
  ...Object.keys(NPT).map((size) => `${size} NPT`),
].map(knownThread)

/**
 * The thread that a designation means, with the form of its flanks.
 *
 * @throws THREAD_UNREADABLE, THREAD_PITCH_MISSING, THREAD_NOT_IN_SERIES, THREAD_SERIES_MISSING
 * @example knownThread('2 BA').pitch   // 0.81 mm
 * @example knownThread('1/2 NPT').designation   // '1/2-14 NPT'
 */
export function knownThread(designation: string): KnownThread {
  const { system, nominalDiameter, pitch, designation: printed } = readThread(designation)
  const series = SERIES_OF[system] ?? printed.match(/(UN[A-Z]*|BS[WF])/)?.[1] ?? ''
  const taper = taperOf(system, printed)
  return { designation: printed, series, form: FORM_OF[system], nominalDiameter, pitch, ...(taper ? { taper } : {}) }
}

function taperOf(system: Thread['system'], printed: string): Taper | undefined {
  if (system === 'npt') {
    const row = NPT[printed.replace(/-[\d.]+ NPT.*$/, '')]
    return row && { rate: TAPER, handTight: inch(Number(row.handTight)) }
  }
  if (system !== 'taper pipe') return undefined
  const row = PIPE[printed.replace(/^R | LH$/g, '')]
  return row && { rate: TAPER, handTight: mm(Number(row.gaugeLength)) }
}

/**
 * Diameter so many pitches below the major one.
 *
 * @example below({ nominalDiameter: mm(10), pitch: mm(1.5) }, 1)   // 8.5 mm
 */
export function below(
  { nominalDiameter, pitch }: { readonly nominalDiameter: Metre; readonly pitch: Metre },
  pitches: number,
): Metre {
  return metre(nominalDiameter - pitches * pitch)
}
