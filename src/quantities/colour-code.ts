/** The colour code of resistors. */

/** Colours of bands, in the order of their digits; gold and silver have none. */
export const BANDS = [
  'black',
  'brown',
  'red',
  'orange',
  'yellow',
  'green',
  'blue',
  'violet',
  'grey',
  'white',
  'gold',
  'silver',
] as const
export type Band = (typeof BANDS)[number]

/** What a band stands for by its place: a digit, a power of ten, a tolerance, a drift with temperature. */
export type BandRole = 'digit' | 'multiplier' | 'tolerance' | 'drift'

/**
 * What each colour means in each role: the digit, the power of ten, the tolerance as a fraction, the drift in ppm/K.
 * No band for the tolerance means 20 %. Later editions give orange, yellow and grey other tolerances, from memory.
 * @source IEC 60062, secondary copy
 */
export const BAND_MEANINGS: Readonly<Record<BandRole, Readonly<Partial<Record<Band, number>>>>> = {
  digit: {
    ...{ black: 0, brown: 1, red: 2, orange: 3, yellow: 4 },
    ...{ green: 5, blue: 6, violet: 7, grey: 8, white: 9 },
  },
  multiplier: {
    ...{ silver: -2, gold: -1, black: 0, brown: 1, red: 2, orange: 3 },
    ...{ yellow: 4, green: 5, blue: 6, violet: 7, grey: 8, white: 9 },
  },
  tolerance: {
    ...{ brown: 0.01, red: 0.02, green: 0.005, blue: 0.0025 },
    ...{ violet: 0.001, grey: 0.0005, gold: 0.05, silver: 0.1 },
  },
  drift: {
    ...{ black: 250, brown: 100, red: 50, orange: 15, yellow: 25 },
    ...{ green: 20, blue: 10, violet: 5, grey: 1 },
  },
}

/** The tolerance that a missing band means. @source IEC 60062, secondary copy */
export const UNBANDED_TOLERANCE = 0.2

/** A resistance as its bands tell it: digits · 10^power Ω. */
export interface Marking {
  /** two or three digits, the first of them not 0 */
  readonly digits: string
  readonly power: number
  /** fraction to either side */
  readonly tolerance: number
  /** temperature coefficient, ppm/K, where a sixth band tells it */
  readonly drift?: number
}

/** What each of so many bands is; undefined for numbers of bands that mean nothing. */
export function bandRoles(count: number): readonly BandRole[] | undefined {
  if (count < 3 || count > 6) return undefined
  const digits = count < 5 ? 2 : 3
  const rest = ['multiplier', 'tolerance', 'drift'] as const
  return [...Array<BandRole>(digits).fill('digit'), ...rest.slice(0, count - digits)]
}

/** Reads 3, 4, 5 or 6 bands, the first one first; undefined where they are no marking of a resistor. */
export function readMarking(bands: readonly Band[]): Marking | undefined {
  const roles = bandRoles(bands.length)
  if (roles === undefined || bands[0] === 'black') return undefined
  const told: Record<BandRole, number[]> = { digit: [], multiplier: [], tolerance: [], drift: [] }
  for (const [at, role] of roles.entries()) {
    const meaning = BAND_MEANINGS[role][bands[at] ?? 'black']
    if (meaning === undefined) return undefined
    told[role].push(meaning)
  }
  const [drift] = told.drift
  return {
    digits: told.digit.join(''),
    power: told.multiplier[0] ?? 0,
    tolerance: told.tolerance[0] ?? UNBANDED_TOLERANCE,
    ...(drift === undefined ? {} : { drift }),
  }
}

/** The bands that tell a marking, the first one first; undefined where no bands can. */
export function writeMarking({ digits, power, tolerance, drift }: Marking): readonly Band[] | undefined {
  if (!/^[1-9]\d\d?$/.test(digits)) return undefined
  const short = digits.length === 2
  const unbanded = short && tolerance === UNBANDED_TOLERANCE && drift === undefined
  const bands = [
    ...Array.from(digits, (digit) => bandOf('digit', Number(digit))),
    bandOf('multiplier', power),
    ...(unbanded ? [] : [bandOf('tolerance', tolerance)]),
    ...(drift === undefined ? [] : [bandOf('drift', drift)]),
  ]
  // a drift needs its sixth place
  if (short && drift !== undefined) return undefined
  return bands.includes(undefined) ? undefined : (bands as Band[])
}

/** The value of a resistance as so many digits and a power of ten, exactly; undefined where it has more digits. */
export function markedDigits(ohms: number, digits: 2 | 3): Pick<Marking, 'digits' | 'power'> | undefined {
  if (!(ohms > 0) || !Number.isFinite(ohms)) return undefined
  const written = ohms.toExponential(digits - 1)
  if (Number(written) !== ohms) return undefined
  const [mantissa = '', power] = written.split('e')
  return { digits: mantissa.replace('.', ''), power: Number(power) - digits + 1 }
}

function bandOf(role: BandRole, meaning: number): Band | undefined {
  return BANDS.find((band) => BAND_MEANINGS[role][band] === meaning)
}
