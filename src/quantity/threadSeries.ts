// Thread series as data: what a designation without a pitch stands for, and what one with a pitch may say.

/** ISO 261 coarse pitches: nominal diameter → pitch, both in mm. Compared with two printed ISO 261 lists for M1.6 to M64; the rest from memory. */
export const METRIC_COARSE: Readonly<Record<string, string>> = {
  ...{
    '1': '0.25',
    '1.1': '0.25',
    '1.2': '0.25',
    '1.4': '0.3',
    '1.6': '0.35',
    '1.8': '0.35',
    '2': '0.4',
    '2.2': '0.45',
  },
  ...{
    '2.5': '0.45',
    '3': '0.5',
    '3.5': '0.6',
    '4': '0.7',
    '4.5': '0.75',
    '5': '0.8',
    '6': '1',
    '7': '1',
    '8': '1.25',
  },
  ...{
    '9': '1.25',
    '10': '1.5',
    '11': '1.5',
    '12': '1.75',
    '14': '2',
    '16': '2',
    '18': '2.5',
    '20': '2.5',
    '22': '2.5',
  },
  ...{ '24': '3', '27': '3', '30': '3.5', '33': '3.5', '36': '4', '39': '4', '42': '4.5', '45': '4.5', '48': '5' },
  ...{ '52': '5', '56': '5.5', '60': '5.5', '64': '6', '68': '6' },
}

/** ISO 261 and 262 fine pitches in use: nominal diameter → pitches, mm; from memory. */
export const METRIC_FINE: Readonly<Record<string, readonly string[]>> = {
  ...{ '4': ['0.5'], '5': ['0.5'], '6': ['0.75', '0.5'], '8': ['1', '0.75'], '10': ['1.25', '1', '0.75'] },
  ...{
    '12': ['1.5', '1.25', '1'],
    '14': ['1.5', '1.25'],
    '16': ['1.5', '1'],
    '18': ['2', '1.5'],
    '20': ['2', '1.5', '1'],
  },
  ...{ '22': ['2', '1.5'], '24': ['2', '1.5'], '25': ['1.5'], '26': ['1.5'], '27': ['2', '1.5'], '30': ['2', '1.5'] },
  ...{
    '33': ['2', '1.5'],
    '35': ['1.5'],
    '36': ['3', '2', '1.5'],
    '39': ['3', '2'],
    '40': ['1.5'],
    '42': ['3', '2', '1.5'],
  },
  ...{
    '45': ['3', '2', '1.5'],
    '48': ['3', '2', '1.5'],
    '50': ['1.5'],
    '52': ['4', '3', '2', '1.5'],
    '55': ['2', '1.5'],
  },
  ...{ '56': ['4', '3', '2'], '60': ['4', '3', '2'], '64': ['4', '3', '2'] },
}

/** Threads per inch by nominal size in inches (or by number, `#10`). */
export type InchSeries = Readonly<Record<string, string>>

/** ASME B1.1, coarse series; from memory, 1/4 to 1 compared with Shigley, 9th ed., Table 8-2. */
export const UNC: InchSeries = {
  ...{ '#1': '64', '#2': '56', '#3': '48', '#4': '40', '#5': '40', '#6': '32', '#8': '32', '#10': '24', '#12': '24' },
  ...{ '1/4': '20', '5/16': '18', '3/8': '16', '7/16': '14', '1/2': '13', '9/16': '12', '5/8': '11', '3/4': '10' },
  ...{ '7/8': '9', '1': '8', '1-1/8': '7', '1-1/4': '7', '1-3/8': '6', '1-1/2': '6', '1-3/4': '5', '2': '4.5' },
  ...{ '2-1/4': '4.5', '2-1/2': '4', '2-3/4': '4', '3': '4', '3-1/4': '4', '3-1/2': '4', '3-3/4': '4', '4': '4' },
}

/** ASME B1.1, fine series; from memory, #0 to #2 compared with a printed B1.1 table. */
export const UNF: InchSeries = {
  ...{ '#0': '80', '#1': '72', '#2': '64', '#3': '56', '#4': '48', '#5': '44', '#6': '40', '#8': '36', '#10': '32' },
  ...{ '#12': '28', '1/4': '28', '5/16': '24', '3/8': '24', '7/16': '20', '1/2': '20', '9/16': '18', '5/8': '18' },
  ...{ '3/4': '16', '7/8': '14', '1': '12', '1-1/8': '12', '1-1/4': '12', '1-3/8': '12', '1-1/2': '12' },
}

/** ASME B1.1, extra-fine series; from memory. */
const UNEF: InchSeries = {
  ...{ '#12': '32', '1/4': '32', '5/16': '32', '3/8': '32', '7/16': '28', '1/2': '28', '9/16': '24', '5/8': '24' },
  ...{
    '11/16': '24',
    '3/4': '20',
    '13/16': '20',
    '7/8': '20',
    '15/16': '20',
    '1': '20',
    '1-1/16': '18',
    '1-1/8': '18',
  },
  ...{ '1-3/16': '18', '1-1/4': '18', '1-5/16': '18', '1-3/8': '18', '1-7/16': '18', '1-1/2': '18', '1-9/16': '18' },
  ...{ '1-5/8': '18', '1-11/16': '18' },
}

/** BS 84 Whitworth; compared with a printed list of BS 84 gauges, except 1-3/8 (from memory). */
const BSW: InchSeries = {
  ...{ '1/8': '40', '3/16': '24', '1/4': '20', '5/16': '18', '3/8': '16', '7/16': '14', '1/2': '12', '9/16': '12' },
  ...{ '5/8': '11', '11/16': '11', '3/4': '10', '7/8': '9', '1': '8', '1-1/8': '7', '1-1/4': '7', '1-3/8': '6' },
  ...{ '1-1/2': '6', '1-3/4': '5', '2': '4.5', '2-1/4': '4', '2-1/2': '4', '2-3/4': '3.5', '3': '3.5' },
}

/** BS 84 fine; compared with the same printed list. */
const BSF: InchSeries = {
  ...{ '3/16': '32', '7/32': '28', '1/4': '26', '5/16': '22', '3/8': '20', '7/16': '18', '1/2': '16', '9/16': '16' },
  ...{ '5/8': '14', '11/16': '14', '3/4': '12', '7/8': '11', '1': '10', '1-1/8': '9', '1-1/4': '9', '1-3/8': '8' },
  ...{ '1-1/2': '8', '1-3/4': '7', '2': '7', '2-1/4': '6', '2-1/2': '6', '2-3/4': '6', '3': '5' },
}

/** The series whose threads per inch follow from the size. */
export const INCH_SERIES: Readonly<Record<string, InchSeries>> = { UNC, UNF, UNEF, BSW, BSF }

export interface PipeRow {
  readonly diameter: string
  readonly perInch: string
  /** Basic gauge length of the taper thread of ISO 7-1; left out where there is none of this size. */
  readonly gaugeLength?: string
}

/**
 * ISO 228-1: size → major diameter in mm and threads per inch. Compared with a printed list up to G 1-1/4; larger ones from
 * memory. ISO 7-1 has the same diameters at its gauge plane; gauge lengths in mm, from memory.
 */
export const PIPE: Readonly<Record<string, PipeRow>> = {
  '1/16': { diameter: '7.723', perInch: '28', gaugeLength: '4.0' },
  '1/8': { diameter: '9.728', perInch: '28', gaugeLength: '4.0' },
  '1/4': { diameter: '13.157', perInch: '19', gaugeLength: '6.0' },
  '3/8': { diameter: '16.662', perInch: '19', gaugeLength: '6.4' },
  '1/2': { diameter: '20.955', perInch: '14', gaugeLength: '8.2' },
  '5/8': { diameter: '22.911', perInch: '14' },
  '3/4': { diameter: '26.441', perInch: '14', gaugeLength: '9.5' },
  '7/8': { diameter: '30.201', perInch: '14' },
  '1': { diameter: '33.249', perInch: '11', gaugeLength: '10.4' },
  '1-1/8': { diameter: '37.897', perInch: '11' },
  '1-1/4': { diameter: '41.910', perInch: '11', gaugeLength: '12.7' },
  '1-1/2': { diameter: '47.803', perInch: '11', gaugeLength: '12.7' },
  '2': { diameter: '59.614', perInch: '11', gaugeLength: '15.9' },
  '2-1/4': { diameter: '65.710', perInch: '11' },
  '2-1/2': { diameter: '75.184', perInch: '11', gaugeLength: '17.5' },
  '2-3/4': { diameter: '81.534', perInch: '11' },
  '3': { diameter: '87.884', perInch: '11', gaugeLength: '20.6' },
  '3-1/2': { diameter: '100.330', perInch: '11', gaugeLength: '22.2' },
  '4': { diameter: '113.030', perInch: '11', gaugeLength: '25.4' },
}

/** BS 93 British Association: number → major diameter and pitch in mm; the rule d = 6 p^1.2 read, the list from memory. */
export const BA: Readonly<Record<string, { readonly diameter: string; readonly pitch: string }>> = {
  '0': { diameter: '6', pitch: '1' },
  '1': { diameter: '5.3', pitch: '0.9' },
  '2': { diameter: '4.7', pitch: '0.81' },
  '3': { diameter: '4.1', pitch: '0.73' },
  '4': { diameter: '3.6', pitch: '0.66' },
  '5': { diameter: '3.2', pitch: '0.59' },
  '6': { diameter: '2.8', pitch: '0.53' },
  '7': { diameter: '2.5', pitch: '0.48' },
  '8': { diameter: '2.2', pitch: '0.43' },
  '9': { diameter: '1.9', pitch: '0.39' },
  '10': { diameter: '1.7', pitch: '0.35' },
  '11': { diameter: '1.5', pitch: '0.31' },
  '12': { diameter: '1.3', pitch: '0.28' },
  '13': { diameter: '1.2', pitch: '0.25' },
  '14': { diameter: '1', pitch: '0.23' },
  '15': { diameter: '0.9', pitch: '0.21' },
  '16': { diameter: '0.79', pitch: '0.19' },
}

export interface NptRow {
  readonly diameter: string
  readonly perInch: string
  /** Symbol L1, length that engages by hand. */
  readonly handTight: string
}

/** ASME B1.20.1 taper pipe thread: size → outside of the pipe and L1 in inches, threads per inch; from memory. */
export const NPT: Readonly<Record<string, NptRow>> = {
  '1/16': { diameter: '0.3125', perInch: '27', handTight: '0.160' },
  '1/8': { diameter: '0.405', perInch: '27', handTight: '0.1615' },
  '1/4': { diameter: '0.540', perInch: '18', handTight: '0.2278' },
  '3/8': { diameter: '0.675', perInch: '18', handTight: '0.240' },
  '1/2': { diameter: '0.840', perInch: '14', handTight: '0.320' },
  '3/4': { diameter: '1.050', perInch: '14', handTight: '0.339' },
  '1': { diameter: '1.315', perInch: '11.5', handTight: '0.400' },
  '1-1/4': { diameter: '1.660', perInch: '11.5', handTight: '0.420' },
  '1-1/2': { diameter: '1.900', perInch: '11.5', handTight: '0.420' },
  '2': { diameter: '2.375', perInch: '11.5', handTight: '0.436' },
  '2-1/2': { diameter: '2.875', perInch: '8', handTight: '0.682' },
  '3': { diameter: '3.500', perInch: '8', handTight: '0.766' },
  '4': { diameter: '4.500', perInch: '8', handTight: '0.844' },
}
