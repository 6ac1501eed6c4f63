/** A kind of quantity that a sheet may ask for. The key in the sheet decides it, never the unit. */
export type Dimension =
  | 'resistance'
  | 'capacitance'
  | 'inductance'
  | 'voltage'
  | 'current'
  | 'frequency'
  | 'length'
  | 'time'
  | 'temperature'
  | 'angle'
  | 'ratio'
  | 'conductance'
  | 'power'
  | 'level'

/** The unit in which every value of a dimension is kept: SI base units, degrees Celsius, decibels. */
export type UnitName =
  | 'Ω'
  | 'F'
  | 'H'
  | 'V'
  | 'A'
  | 'Hz'
  | 'm'
  | 's'
  | '°C'
  | 'rad'
  | '1'
  | 'S'
  | 'W'
  | 'VA'
  | 'dB'

/** A value with its unit, and what was written. */
export interface Quantity {
  /** in `unit`, correctly rounded from the text */
  readonly value: number
  readonly unit: UnitName
  /** fraction of the value to either side: 0.05 for ± 5 % */
  readonly tolerance?: number
  /** as written, trimmed */
  readonly text: string
}

/** Power of ten between a spelling and the base unit; degrees are the one unit that is no power of ten. */
export type Scale = number | 'degree'

/** What is known of one dimension. */
export interface DimensionRow {
  readonly unit: UnitName
  /** with its article, for messages: `a resistance` */
  readonly says: string
  /** a well-formed example */
  readonly example: string
  /** the unit that a forgotten one most likely was */
  readonly usual: string
  /** sane limits in the base unit, both included; what lies beyond is a slip, not a telephone */
  readonly least: number
  readonly most: number
  /** a percentage behind the value has a meaning */
  readonly tolerated: boolean
  /** every accepted spelling of a unit, prefix included; `''` where a bare number is meant as it stands */
  readonly spellings: ReadonlyMap<string, Scale>
  /** refused spellings and what they most likely mean, old markings on parts among them */
  readonly slips?: ReadonlyMap<string, string>
}

type Scales = Readonly<Record<string, Scale>>

const small: Scales = { p: -12, n: -9, µ: -6, u: -6, m: -3, '': 0 }
const smallAndKilo: Scales = { ...small, k: 3 }
const all: Scales = { ...smallAndKilo, M: 6, G: 9 }
const ofLength: Scales = { µ: -6, u: -6, m: -3, c: -2, '': 0, k: 3 }

/** Every symbol with every prefix, and spellings of their own beside. */
function spelt(
  prefixes: Scales,
  symbols: readonly string[],
  further: Scales = {},
): ReadonlyMap<string, Scale> {
  const spellings = new Map<string, Scale>()
  for (const symbol of symbols) {
    for (const [prefix, scale] of Object.entries(prefixes)) spellings.set(prefix + symbol, scale)
  }
  for (const [spelling, scale] of Object.entries(further)) spellings.set(spelling, scale)
  return spellings
}

function meant(slips: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  return new Map(Object.entries(slips))
}

/**
 * The closed table of DIMENSIONS: unit, spellings, sane limits.
 *
 * The limits are our own choice, wide for telephones and narrow enough that a wrong prefix is caught:
 * resistance 0 … 1e15 Ω, capacitance 0 … 1 F, inductance 0 … 1e5 H, voltage and current ± 1e5, frequency 0 … 1e9 Hz,
 * length 0 … 1e7 m, time 0 … 1e9 s, temperature -90 … 200 °C, angle ± 1000 rad, ratio ± 1e9, conductance 0 … 1e15 S,
 * power 0 … 1e5 W, level ± 1000 dB. The prefixes M and G exist only where such values do, so that `3 MA` is a slip.
 *
 * @source our own choice, no source; prefixes and symbols by ISO 80000-1
 */
export const DIMENSIONS: Readonly<Record<Dimension, DimensionRow>> = {
  resistance: {
    unit: 'Ω',
    says: 'a resistance',
    example: '3.3 kΩ',
    usual: 'Ω',
    least: 0,
    most: 1e15,
    tolerated: true,
    spellings: spelt(all, ['Ω', 'ohm', 'ohms', 'Ohm', 'Ohms'], {
      ...{ kilohm: 3, kilohms: 3, megohm: 6, megohms: 6 },
      ...{ R: 0, k: 3, K: 3, M: 6, G: 9 }, // a letter of IEC 60062 behind the digits
    }),
  },
  capacitance: {
    unit: 'F',
    says: 'a capacitance',
    example: '1.8 µF',
    usual: 'µF',
    least: 0,
    most: 1,
    tolerated: true,
    spellings: spelt(small, ['F'], { p: -12, n: -9, µ: -6, u: -6 }),
    // markings of old capacitors (common practice, no source): M was once micro
    slips: meant({ MF: 'µF', MFD: 'µF', Mfd: 'µF', mfd: 'µF', MMF: 'pF', mmf: 'pF', mmfd: 'pF' }),
  },
  inductance: {
    unit: 'H',
    says: 'an inductance',
    example: '20 mH',
    usual: 'H',
    least: 0,
    most: 1e5,
    tolerated: true,
    spellings: spelt(smallAndKilo, ['H']),
    slips: meant({ Hy: 'H', hy: 'H' }),
  },
  voltage: {
    unit: 'V',
    says: 'a voltage',
    example: '50 V',
    usual: 'V',
    least: -1e5,
    most: 1e5,
    tolerated: true,
    spellings: spelt(smallAndKilo, ['V']),
  },
  current: {
    unit: 'A',
    says: 'a current',
    example: '40 mA',
    usual: 'mA',
    least: -1e5,
    most: 1e5,
    tolerated: true,
    spellings: spelt(smallAndKilo, ['A']),
  },
  frequency: {
    unit: 'Hz',
    says: 'a frequency',
    example: '25 Hz',
    usual: 'Hz',
    least: 0,
    most: 1e9,
    tolerated: true,
    spellings: spelt(all, ['Hz']),
    slips: meant({ 'c/s': 'Hz', cps: 'Hz', 'kc/s': 'kHz', 'Mc/s': 'MHz' }),
  },
  length: {
    unit: 'm',
    says: 'a length',
    example: '2 km',
    usual: 'm',
    least: 0,
    most: 1e7,
    tolerated: true,
    spellings: spelt(ofLength, ['m']),
  },
  time: {
    unit: 's',
    says: 'a time',
    example: '50 ms',
    usual: 'ms',
    least: 0,
    most: 1e9,
    tolerated: true,
    spellings: spelt(small, ['s']),
    slips: meant({ sec: 's', secs: 's', msec: 'ms' }),
  },
  temperature: {
    unit: '°C',
    says: 'a temperature',
    example: '20 °C',
    usual: '°C',
    least: -90,
    most: 200,
    tolerated: false,
    spellings: spelt({ '': 0 }, ['°C', '℃', 'ºC', 'degC']),
    slips: meant({ C: '°C', c: '°C', '°': '°C' }),
  },
  angle: {
    unit: 'rad',
    says: 'an angle',
    example: '30°',
    usual: '°',
    least: -1000,
    most: 1000,
    tolerated: false,
    spellings: spelt({ '': 'degree' }, ['°', 'º', 'deg', 'degrees'], { rad: 0 }),
  },
  ratio: {
    unit: '1',
    says: 'a ratio',
    example: '5 %',
    usual: '%',
    least: -1e9,
    most: 1e9,
    tolerated: true,
    spellings: spelt({}, [], { '%': -2, '': 0 }),
    slips: meant({ percent: '%', pc: '%' }),
  },
  conductance: {
    unit: 'S',
    says: 'a conductance',
    example: '2 mS',
    usual: 'mS',
    least: 0,
    most: 1e15,
    tolerated: true,
    spellings: spelt(all, ['S']),
  },
  power: {
    unit: 'W',
    says: 'a power',
    example: '50 mW',
    usual: 'W',
    least: 0,
    most: 1e5,
    tolerated: true,
    spellings: spelt(smallAndKilo, ['W']),
  },
  level: {
    unit: 'dB',
    says: 'a level',
    example: '-12 dB',
    usual: 'dB',
    least: -1000,
    most: 1000,
    tolerated: false,
    spellings: spelt({}, [], { dB: 0 }),
  },
}
