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
export const INCH_SERIES: Readonly<Record<string, InchSeries>> = { UNC, UNF, BSW, BSF }

/** ISO 228-1: size → major diameter in mm and threads per inch. Compared with a printed list up to G 1-1/4; 1-1/2 and 2 from memory. */
export const PIPE: Readonly<Record<string, { readonly diameter: string; readonly perInch: string }>> = {
  '1/16': { diameter: '7.723', perInch: '28' },
  '1/8': { diameter: '9.728', perInch: '28' },
  '1/4': { diameter: '13.157', perInch: '19' },
  '3/8': { diameter: '16.662', perInch: '19' },
  '1/2': { diameter: '20.955', perInch: '14' },
  '5/8': { diameter: '22.911', perInch: '14' },
  '3/4': { diameter: '26.441', perInch: '14' },
  '7/8': { diameter: '30.201', perInch: '14' },
  '1': { diameter: '33.249', perInch: '11' },
  '1-1/8': { diameter: '37.897', perInch: '11' },
  '1-1/4': { diameter: '41.910', perInch: '11' },
  '1-1/2': { diameter: '47.803', perInch: '11' },
  '2': { diameter: '59.614', perInch: '11' },
}
