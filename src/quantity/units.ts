// The units people write, one row each. Only the definitions below are typed in; every other factor is derived from them.
//   inch 25.4 mm, pound 0.453 592 37 kg (international yard and pound, 1959) · standard gravity 9.806 65 m/s² (3rd CGPM, 1901)
//   US gallon 231 in³ · imperial gallon 4.546 09 l (UK Weights and Measures Act 1985) · 0 °C = 273.15 K · 0 °F = 459.67 °R, 1 °R = 5/9 K
// All of them: NIST SP 811 (2008), appendix B. The tests hold each row against a value printed there.
import type { Dimension } from './dimension.ts'
import { divide, multiply, powerOfTen, type Ratio, ratio } from './ratio.ts'

/** One unit: SI value = (number + offset) × factor. */
export interface Unit {
  readonly dimension: Dimension
  /** As it is printed; read back as well. */
  readonly symbol: string
  readonly name: string
  /** Other ways of writing it, apart from symbol and name. A space stands for any of space, `·`, `.`, `*` and `-`. */
  readonly spellings: readonly string[]
  readonly factor: Ratio
  /** Only for temperatures: what is added before multiplying. */
  readonly offset?: Ratio
  /** `inch` where a comma before three digits is a thousands comma. */
  readonly system: 'metric' | 'inch' | 'both'
}

const ONE = ratio(1n)
const whole = (value: number): Ratio => ratio(BigInt(value))
const per = (value: number): Ratio => ratio(1n, BigInt(value))

const INCH = ratio(254n, 10_000n)
const FOOT = multiply(INCH, whole(12))
const POUND = ratio(45_359_237n, 100_000_000n)
const GRAVITY = ratio(980_665n, 100_000n)
const LBF = multiply(POUND, GRAVITY)
const SQUARE_INCH = multiply(INCH, INCH)
const CUBIC_INCH = multiply(SQUARE_INCH, INCH)
const LITRE = per(1000)
const US_GALLON = multiply(CUBIC_INCH, whole(231))
const IMPERIAL_GALLON = multiply(ratio(454_609n, 100_000n), LITRE)
const FAHRENHEIT = ratio(5n, 9n)
/** π to forty digits: enough that no double can tell it from π. */
const PI = ratio(3_141_592_653_589_793_238_462_643_383_279_502_884_197n, 10n ** 39n)

/** Both orders of a force and an arm, apart and together: `ft lb`, `lb ft`, `ftlb`, `lbft`. */
const pairs = (forces: readonly string[], arms: readonly string[]): string[] =>
  forces.flatMap((force) =>
    arms.flatMap((arm) => [`${force} ${arm}`, `${arm} ${force}`, `${force}${arm}`, `${arm}${force}`]),
  )
/** Old strengths and press gauges are in tons on the square inch. */
const tonsOn = (which: string): string[] =>
  [`${which} ton`, `${which} tons`, `${which} tonf`].flatMap((ton) => [`${ton}/in²`, `${ton}/sq in`])
const POUNDS = ['lbf', 'lb', 'lbs', 'pound', 'pounds']

type Row = readonly [symbol: string, name: string, spellings: readonly string[], factor: Ratio, offset?: Ratio]

const table = (dimension: Dimension, system: Unit['system'], rows: readonly Row[]): Unit[] =>
  rows.map(([symbol, name, spellings, factor, offset]) => ({
    dimension,
    system,
    symbol,
    name,
    spellings,
    factor,
    ...(offset && { offset }),
  }))

export const UNITS: readonly Unit[] = [
  ...table('length', 'metric', [
    ['m', 'metre', ['metres', 'meter', 'meters'], ONE],
    ['cm', 'centimetre', ['centimetres', 'centimeter', 'centimeters'], per(100)],
    ['mm', 'millimetre', ['millimetres', 'millimeter', 'millimeters'], per(1000)],
    ['µm', 'micrometre', ['um', 'micrometres', 'micron', 'microns'], per(1_000_000)],
  ]),
  ...table('length', 'inch', [
    ['in', 'inch', ['"', "''", 'inches', 'ins'], INCH],
    ['ft', 'foot', ["'", 'feet'], FOOT],
    ['thou', 'thousandth of an inch', ['thousandths of an inch'], multiply(INCH, per(1000))],
    ['µin', 'microinch', ['uin', 'microinches'], multiply(INCH, per(1_000_000))],
  ]),
  ...table('area', 'metric', [
    ['m²', 'square metre', ['sq m'], ONE],
    ['cm²', 'square centimetre', ['sq cm'], per(10_000)],
    ['mm²', 'square millimetre', ['sq mm'], per(1_000_000)],
  ]),
  ...table('area', 'inch', [['in²', 'square inch', ['sq in', 'square inches'], SQUARE_INCH]]),
  ...table('volume', 'metric', [
    ['m³', 'cubic metre', [], ONE],
    ['l', 'litre', ['L', 'litres', 'liter', 'liters'], LITRE],
    ['ml', 'millilitre', ['mL', 'millilitres', 'cm³', 'cc'], multiply(LITRE, per(1000))],
    ['mm³', 'cubic millimetre', [], per(1_000_000_000)],
  ]),
  ...table('volume', 'inch', [
    ['in³', 'cubic inch', ['cu in', 'cubic inches'], CUBIC_INCH],
    ['imp gal', 'imperial gallon', ['imperial gallons', 'imp gallon', 'imp gallons', 'UK gal'], IMPERIAL_GALLON],
    ['imp qt', 'imperial quart', ['imperial quarts', 'imp quart', 'imp quarts'], multiply(IMPERIAL_GALLON, per(4))],
    [
      'imp pt',
      'imperial pint',
      ['imperial pints', 'imp pint', 'imp pints', 'UK pt'],
      multiply(IMPERIAL_GALLON, per(8)),
    ],
    ['imp fl oz', 'imperial fluid ounce', [], multiply(IMPERIAL_GALLON, per(160))],
    ['US gal', 'US gallon', ['US gallons'], US_GALLON],
    ['US qt', 'US quart', ['US quarts'], multiply(US_GALLON, per(4))],
    ['US pt', 'US pint', ['US pints'], multiply(US_GALLON, per(8))],
    ['US fl oz', 'US fluid ounce', [], multiply(US_GALLON, per(128))],
  ]),
  ...table('mass', 'metric', [
    ['kg', 'kilogram', ['kilograms', 'kilo', 'kilos'], ONE],
    ['g', 'gram', ['grams'], per(1000)],
    ['t', 'tonne', ['tonnes', 'metric ton'], whole(1000)],
  ]),
  ...table('mass', 'inch', [
    ['lb', 'pound', ['lbs', 'pounds'], POUND],
    ['oz', 'ounce', ['ounces'], multiply(POUND, per(16))],
    ['imp cwt', 'imperial hundredweight', ['long cwt'], multiply(POUND, whole(112))],
    ['long ton', 'imperial ton', ['long tons', 'imperial tons', 'imp ton', 'imp tons'], multiply(POUND, whole(2240))],
    ['short ton', 'US ton', ['short tons', 'US tons'], multiply(POUND, whole(2000))],
  ]),
  ...table('time', 'both', [
    ['s', 'second', ['sec', 'secs', 'seconds'], ONE],
    ['min', 'minute', ['mins', 'minutes', 'm'], whole(60)],
    ['h', 'hour', ['hr', 'hrs', 'hours'], whole(3600)],
    ['d', 'day', ['days'], whole(86_400)],
  ]),
  ...table('force', 'metric', [
    ['N', 'newton', ['newtons'], ONE],
    ['kN', 'kilonewton', ['kilonewtons'], whole(1000)],
    ['kgf', 'kilogram-force', ['kp'], GRAVITY],
    ['tf', 'tonne-force', [], multiply(GRAVITY, whole(1000))],
  ]),
  ...table('force', 'inch', [
    ['lbf', 'pound-force', ['lb', 'lbs', 'pounds'], LBF],
    ['ozf', 'ounce-force', ['oz', 'ounces'], multiply(LBF, per(16))],
    ['long tonf', 'imperial ton-force', ['long ton', 'long tons', 'imp ton', 'imp tons'], multiply(LBF, whole(2240))],
    ['short tonf', 'US ton-force', ['short ton', 'short tons', 'US ton', 'US tons'], multiply(LBF, whole(2000))],
  ]),
  ...table('torque', 'metric', [
    ['N·m', 'newton metre', ['Nm', 'newton metres', 'newton meters'], ONE],
    ['N·mm', 'newton millimetre', ['Nmm'], per(1000)],
    ['N·cm', 'newton centimetre', ['Ncm'], per(100)],
    ['kN·m', 'kilonewton metre', ['kNm'], whole(1000)],
    ['kgf·m', 'kilogram-force metre', pairs(['kgf', 'kg', 'kp'], ['m']), GRAVITY],
    ['kgf·cm', 'kilogram-force centimetre', pairs(['kgf', 'kg', 'kp'], ['cm']), multiply(GRAVITY, per(100))],
  ]),
  ...table('torque', 'inch', [
    ['lbf·ft', 'pound-force foot', pairs(POUNDS, ['ft', 'foot', 'feet']), multiply(LBF, FOOT)],
    ['lbf·in', 'pound-force inch', pairs(POUNDS, ['in', 'inch', 'inches']), multiply(LBF, INCH)],
    ['ozf·in', 'ounce-force inch', pairs(['ozf', 'oz'], ['in']), multiply(multiply(LBF, per(16)), INCH)],
  ]),
  ...table('pressure', 'metric', [
    ['Pa', 'pascal', ['pascals', 'N/m²'], ONE],
    ['kPa', 'kilopascal', [], whole(1000)],
    ['MPa', 'megapascal', ['N/mm²'], whole(1_000_000)],
    ['GPa', 'gigapascal', ['kN/mm²'], whole(1_000_000_000)],
    ['bar', 'bar', ['bars'], whole(100_000)],
    ['mbar', 'millibar', [], whole(100)],
    ['kgf/cm²', 'kilogram-force per square centimetre', ['kg/cm²', 'kp/cm²'], multiply(GRAVITY, whole(10_000))],
  ]),
  ...table('pressure', 'inch', [
    ['psi', 'pound-force per square inch', ['lbf/in²', 'lb/in²', 'lb/sq in', 'p s i'], divide(LBF, SQUARE_INCH)],
    ['ksi', 'thousand pound-force per square inch', [], multiply(divide(LBF, SQUARE_INCH), whole(1000))],
    [
      'long tonf/in²',
      'long ton-force per square inch',
      tonsOn('long'),
      multiply(divide(LBF, SQUARE_INCH), whole(2240)),
    ],
    [
      'short tonf/in²',
      'short ton-force per square inch',
      tonsOn('short'),
      multiply(divide(LBF, SQUARE_INCH), whole(2000)),
    ],
  ]),
  ...table('angle', 'both', [
    ['°', 'degree', ['deg', 'degs', 'degrees'], multiply(PI, per(180))],
    ['′', 'minute of arc', ["'", 'arcmin', 'min'], multiply(PI, per(10_800))],
    ['″', 'second of arc', ['"', "''", 'arcsec'], multiply(PI, per(648_000))],
    ['rad', 'radian', ['radians'], ONE],
    ['mrad', 'milliradian', [], per(1000)],
    ['turn', 'turn', ['turns', 'rev'], multiply(PI, whole(2))],
  ]),
  ...table('temperature', 'metric', [
    ['°C', 'degree Celsius', ['C', 'deg C', 'degC', '℃', '° C', 'celsius', 'degrees C'], ONE, ratio(27_315n, 100n)],
    ['K', 'kelvin', ['kelvins'], ONE],
  ]),
  ...table('temperature', 'inch', [
    [
      '°F',
      'degree Fahrenheit',
      ['F', 'deg F', 'degF', '℉', '° F', 'fahrenheit', 'degrees F'],
      FAHRENHEIT,
      ratio(45_967n, 100n),
    ],
  ]),
  ...table('temperature difference', 'metric', [
    ['°C', 'degree Celsius', ['C', 'deg C', 'degC', '℃', '° C', 'celsius', 'degrees C'], ONE],
    ['K', 'kelvin', ['kelvins'], ONE],
  ]),
  ...table('temperature difference', 'inch', [
    ['°F', 'degree Fahrenheit', ['F', 'deg F', 'degF', '℉', '° F', 'fahrenheit', 'degrees F'], FAHRENHEIT],
  ]),
  ...table('speed of rotation', 'both', [
    ['rpm', 'revolution per minute', ['r/min', 'rev/min', '/min', 'r p m', 'min⁻¹'], multiply(PI, per(30))],
    ['rad/s', 'radian per second', [], ONE],
  ]),
  ...table('thermal expansion', 'metric', [
    ['/K', 'per kelvin', ['/°C', 'per K', 'per °C'], ONE],
    ['µm/m·K', 'micrometre per metre and kelvin', ['µm/m·°C', 'ppm/K', 'ppm/°C'], powerOfTen(-6)],
  ]),
  ...table('thermal expansion', 'inch', [
    ['/°F', 'per degree Fahrenheit', ['per °F', '/F'], divide(ONE, FAHRENHEIT)],
    ['µin/in·°F', 'microinch per inch and degree Fahrenheit', ['ppm/°F'], divide(powerOfTen(-6), FAHRENHEIT)],
  ]),
  ...table('speed', 'metric', [
    ['m/s', 'metre per second', ['metres per second', 'meters per second'], ONE],
    ['mm/s', 'millimetre per second', [], per(1000)],
    ['m/min', 'metre per minute', [], per(60)],
    ['km/h', 'kilometre per hour', ['kph', 'km/hr'], ratio(1000n, 3600n)],
  ]),
  ...table('speed', 'inch', [
    ['ft/min', 'foot per minute', ['fpm', 'feet per minute'], multiply(FOOT, per(60))],
    ['ft/s', 'foot per second', ['fps', 'ft/sec', 'feet per second'], FOOT],
    ['in/s', 'inch per second', ['in/sec'], INCH],
    ['mph', 'mile per hour', ['miles per hour', 'mile/h'], multiply(FOOT, ratio(5280n, 3600n))],
  ]),
  ...table('power', 'metric', [
    ['W', 'watt', ['watts'], ONE],
    ['kW', 'kilowatt', ['kilowatts'], whole(1000)],
    ['PS', 'metric horsepower', ['metric hp', 'CV'], multiply(GRAVITY, whole(75))],
  ]),
  ...table('power', 'inch', [['hp', 'horsepower', ['HP', 'bhp', 'BHP'], multiply(multiply(LBF, FOOT), whole(550))]]),
  ...table('energy', 'metric', [
    ['J', 'joule', ['joules', 'N·m', 'Nm'], ONE],
    ['kJ', 'kilojoule', [], whole(1000)],
    ['kWh', 'kilowatt-hour', ['kW·h'], whole(3_600_000)],
  ]),
  ...table('energy', 'inch', [
    ['ft·lbf', 'foot pound-force', pairs(POUNDS, ['ft', 'foot', 'feet']), multiply(LBF, FOOT)],
    ['in·lbf', 'inch pound-force', pairs(POUNDS, ['in', 'inch', 'inches']), multiply(LBF, INCH)],
  ]),
  ...table('flow', 'metric', [
    ['m³/s', 'cubic metre per second', [], ONE],
    ['l/min', 'litre per minute', ['L/min', 'lpm', 'LPM', 'litres per minute'], multiply(LITRE, per(60))],
    ['l/s', 'litre per second', ['L/s'], LITRE],
    ['ml/min', 'millilitre per minute', ['mL/min', 'cm³/min', 'cc/min'], multiply(LITRE, per(60_000))],
  ]),
  ...table('flow', 'inch', [
    ['US gpm', 'US gallon per minute', ['US gal/min', 'US gallons per minute'], multiply(US_GALLON, per(60))],
    [
      'imp gpm',
      'imperial gallon per minute',
      ['imp gal/min', 'UK gpm', 'imperial gallons per minute'],
      multiply(IMPERIAL_GALLON, per(60)),
    ],
    ['in³/min', 'cubic inch per minute', ['cu in/min'], multiply(CUBIC_INCH, per(60))],
    ['in³/s', 'cubic inch per second', ['cu in/s'], CUBIC_INCH],
  ]),
  ...table('viscosity', 'metric', [
    ['mm²/s', 'square millimetre per second', ['cSt', 'centistoke', 'centistokes'], per(1_000_000)],
    ['m²/s', 'square metre per second', [], ONE],
    ['St', 'stokes', [], per(10_000)],
  ]),
  ...table('dynamic viscosity', 'metric', [
    ['mPa·s', 'millipascal second', ['cP', 'centipoise'], per(1000)],
    ['Pa·s', 'pascal second', [], ONE],
  ]),
  ...table('density', 'metric', [
    ['kg/m³', 'kilogram per cubic metre', [], ONE],
    ['kg/l', 'kilogram per litre', ['kg/L', 'g/cm³', 'g/ml', 'g/mL', 'kg/dm³'], whole(1000)],
  ]),
  ...table('density', 'inch', [
    ['lb/ft³', 'pound per cubic foot', ['lb/cu ft'], divide(POUND, multiply(FOOT, multiply(FOOT, FOOT)))],
    ['lb/in³', 'pound per cubic inch', ['lb/cu in'], divide(POUND, CUBIC_INCH)],
  ]),
  ...table('stiffness', 'metric', [
    ['N/m', 'newton per metre', [], ONE],
    ['N/mm', 'newton per millimetre', [], whole(1000)],
    ['kN/mm', 'kilonewton per millimetre', ['N/µm', 'MN/m'], whole(1_000_000)],
  ]),
  ...table('stiffness', 'inch', [['lbf/in', 'pound-force per inch', ['lb/in'], divide(LBF, INCH)]]),
]

/** Words that stand for two sizes; the person has to say which. */
export const TWO_MEANINGS: Readonly<Record<string, string>> = {
  pint: 'imp pint (0.568 l) or US pint (0.473 l)',
  quart: 'imp quart (1.137 l) or US quart (0.946 l)',
  gallon: 'imp gallon (4.546 l) or US gallon (3.785 l)',
  'fluid ounce': 'imp fl oz (28.4 ml) or US fl oz (29.6 ml)',
  ton: 't (1000 kg), long ton (2240 lb) or short ton (2000 lb)',
  'ton per square inch': 'long tons/in² (2240 lb; old British strengths) or short tons/in² (2000 lb)',
  hundredweight: 'imp cwt (112 lb), or pounds',
  gpm: 'US gpm (3.785 l/min) or imp gpm (4.546 l/min)',
  mil: 'thou (0.001 in) or mm',
  tenth: 'the number in inches (0.0001 in) or in mm (0.1 mm)',
}

/** Spelling → the word of `TWO_MEANINGS` that it is. */
export const TWO_MEANINGS_SPELT: Readonly<Record<string, string>> = {
  ...{ pint: 'pint', pints: 'pint', pt: 'pint', quart: 'quart', quarts: 'quart', qt: 'quart' },
  ...{ gallon: 'gallon', gallons: 'gallon', gal: 'gallon', fl·oz: 'fluid ounce' },
  ...{
    ton: 'ton',
    tons: 'ton',
    'ton/in²': 'ton per square inch',
    'tons/in²': 'ton per square inch',
    'tons/sq in': 'ton per square inch',
    tsi: 'ton per square inch',
    cwt: 'hundredweight',
    gpm: 'gpm',
    'gal/min': 'gpm',
    mil: 'mil',
    mils: 'mil',
    tenth: 'tenth',
    tenths: 'tenth',
  },
}
