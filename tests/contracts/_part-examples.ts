/** One part or several of every kind, as a sheet writes them, for the contract of kinds. */

/** A part as a sheet writes it. */
export interface Written {
  readonly kind: string
  readonly [key: string]: unknown
}

/** What a kind may claim for itself besides the contract. */
export interface Traits {
  /** Small signals find the chord at the direct current, not the tangent: what follows slowly. */
  readonly small?: 'chord'
  /** Which coordinate its `settle` holds back; absent where the kind has none. */
  readonly settles?: 'voltage' | 'current'
}

/** Examples of a kind and what it claims. */
export interface Examples extends Traits {
  readonly parts: Readonly<Record<string, Written>>
}

const ends = { from: 'p', to: 'q' }
const ringsFrom = { 'rings from': '3 mA at 25 Hz' }

/** By kind. */
export const EXAMPLES: Readonly<Record<string, Examples>> = {
  resistor: {
    parts: {
      large: { kind: 'resistor', ...ends, resistance: '3.3 kΩ ± 5 %' },
      small: { kind: 'resistor', ...ends, resistance: '0.2 Ω' },
    },
  },
  capacitor: {
    parts: {
      tight: { kind: 'capacitor', ...ends, capacitance: '1.8 µF' },
      leaky: { kind: 'capacitor', ...ends, capacitance: '1.8 µF', leakage: '4 MΩ' },
    },
  },
  inductor: {
    parts: {
      lossless: { kind: 'inductor', ...ends, inductance: '2 H' },
      lossy: { kind: 'inductor', ...ends, inductance: '2 H', resistance: '40 Ω' },
    },
  },
  'induction-coil': {
    parts: {
      three: {
        kind: 'induction-coil',
        windings: {
          a: { from: 'p', to: 'q', resistance: '25 Ω', inductance: '0.40 H' },
          b: { from: 'q', to: 'r', resistance: '37 Ω', inductance: '1.07 H' },
          c: { from: 's', to: 't', resistance: '30 Ω', inductance: '0.107 H' },
        },
        coupling: { 'a-b': 0.985, 'a-c': -0.9, 'b-c': -0.9 },
      },
    },
  },
  strap: {
    parts: {
      plain: { kind: 'strap', ...ends },
      ideal: { kind: 'strap', ...ends, resistance: '0 Ω' },
      open: { kind: 'strap', ...ends, resistance: 'open' },
    },
  },
  contact: {
    parts: {
      make: { kind: 'contact', ...ends, 'closed when': 'off-normal', order: 'first' },
      break: { kind: 'contact', ...ends, 'open when': 'break', resistance: '2 Ω', leakage: '4 MΩ' },
      tight: { kind: 'contact', ...ends, 'open when': 'key', leakage: 'open' },
    },
  },
  quench: {
    parts: {
      usual: { kind: 'quench', ...ends, resistance: '100 Ω', capacitance: '0.1 µF' },
      bare: { kind: 'quench', ...ends, resistance: '0 Ω', capacitance: '0.1 µF' },
    },
  },
  diode: {
    settles: 'voltage',
    parts: {
      'by its drop': { kind: 'diode', ...ends, drop: '0.7 V at 10 mA' },
      'with resistance': {
        kind: 'diode',
        ...ends,
        'saturation current': '1e-9 A',
        emission: 1,
        resistance: '2 Ω',
        temperature: '27 °C',
      },
    },
  },
  bridge: {
    settles: 'voltage',
    parts: {
      usual: { kind: 'bridge', first: 'p', second: 'q', plus: 'r', minus: 's', drop: '0.8 V at 50 mA' },
    },
  },
  varistor: {
    settles: 'voltage',
    parts: {
      soft: { kind: 'varistor', ...ends, 'voltage at 1 A': '1.2 V', exponent: 5 },
      hard: { kind: 'varistor', ...ends, 'voltage at 1 A': '220 V', exponent: 60 },
      straight: { kind: 'varistor', ...ends, 'voltage at 1 A': '60 V', exponent: 1 },
    },
  },
  'gas-tube': {
    settles: 'voltage',
    parts: {
      usual: { kind: 'gas-tube', ...ends, 'holds off': '230 V' },
      'with its arc': { kind: 'gas-tube', ...ends, 'holds off': '90 V', arc: '15 V' },
    },
  },
  'current-resistor': {
    settles: 'current',
    small: 'chord',
    parts: {
      usual: {
        kind: 'current-resistor',
        ...ends,
        resistance: '20 Ω at 20 mA',
        'rises with exponent': 1.5,
      },
      steep: { kind: 'current-resistor', ...ends, resistance: '20 Ω at 20 mA', 'rises with exponent': 4 },
      fixed: { kind: 'current-resistor', ...ends, resistance: '20 Ω at 20 mA', 'rises with exponent': 0 },
    },
  },
  transmitter: {
    small: 'chord',
    parts: {
      usual: { kind: 'transmitter', ...ends, resistance: '150 Ω at 40 mA', 'falls with exponent': 0.5 },
      most: { kind: 'transmitter', ...ends, resistance: '150 Ω at 40 mA', 'falls with exponent': 0.8 },
      fixed: { kind: 'transmitter', ...ends, resistance: '150 Ω at 40 mA', 'falls with exponent': 0 },
    },
  },
  receiver: {
    parts: {
      plain: { kind: 'receiver', ...ends, resistance: '150 Ω', inductance: '20 mH' },
      known: { kind: 'receiver', ...ends, resistance: '150 Ω', inductance: '20 mH', sensitivity: '43 dB' },
    },
  },
  bell: {
    parts: {
      whole: { kind: 'bell', ...ends, resistance: '1 kΩ', inductance: '12 H', ...ringsFrom },
      'in series': {
        kind: 'bell',
        ...ends,
        coils: { resistance: '500 Ω', inductance: '3 H', joined: 'series' },
        ...ringsFrom,
      },
      'in parallel, opposed': {
        kind: 'bell',
        ...ends,
        coils: { resistance: '500 Ω', inductance: '3 H', joined: 'parallel', turned: 'yes', coupling: 0.6 },
        ...ringsFrom,
      },
    },
  },
  'tone-ringer': {
    parts: {
      bare: { kind: 'tone-ringer', ...ends, threshold: '20 V', load: '8 kΩ', ...ringsFrom },
      'with a capacitor': {
        kind: 'tone-ringer',
        ...ends,
        threshold: '20 V',
        load: '8 kΩ',
        resistance: '2.2 kΩ',
        capacitance: '0.82 µF',
        ...ringsFrom,
      },
    },
  },
  cable: {
    parts: {
      pair: {
        kind: 'cable',
        'from a': 'p',
        'from b': 'q',
        'to a': 'r',
        'to b': 's',
        length: '2 km',
        'resistance per km': '170 Ω',
        'capacitance per km': '50 nF',
        'inductance per km': '0.6 mH',
        'leakance per km': '1e-6 S',
      },
    },
  },
  'voltage-source': {
    parts: {
      both: { kind: 'voltage-source', ...ends, direct: '50 V', alternating: '75 V at 30°' },
      neither: { kind: 'voltage-source', ...ends },
    },
  },
  'current-source': {
    parts: {
      both: { kind: 'current-source', ...ends, direct: '40 mA', alternating: '1 mA at 90°' },
      neither: { kind: 'current-source', ...ends },
    },
  },
}
