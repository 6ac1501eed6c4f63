/** The demo's sets that the lesson uses, and how a hand does to them what a step asks for. */

export type FleetName = 'table' | 'heavy' | 'beside' | 'in-line' | 'two-wire'

export interface FleetSet {
  readonly sheet: string
  /** What it is called in a sentence. */
  readonly says: string
  /** Moves that make it what its name here says. */
  readonly moves: readonly string[]
  /** A resistor lies in its bell path. */
  readonly hasResistor: boolean
  /** Where a capacitor of its own lies, for the picture. */
  readonly ownCapacitor?: 'beside' | 'in-line' | 'pair'
  readonly ways: {
    /** Takes the resistor out where it has one, fits one where it has none. */
    readonly resistor: readonly string[]
    readonly touchesA: readonly string[]
    readonly touchesB: readonly string[]
  }
}

const NO_WAYS = { resistor: [], touchesA: [], touchesB: [] }

const RESISTOR = 'with: {kind: resistor, from: P1, to: P2, resistance: 3.3 kΩ ± 5 %}'

export const FLEET: Readonly<Record<FleetName, FleetSet>> = {
  table: {
    sheet: 'fescue',
    says: 'table set',
    moves: [],
    hasResistor: true,
    ways: {
      resistor: ['lift part: bell-resistor', 'fit strap: C1-C2'],
      touchesA: ['fit strap: C1-A1'],
      touchesB: ['fit strap: C1-B5'],
    },
  },
  heavy: {
    sheet: 'marram',
    says: 'heavy set',
    moves: [],
    hasResistor: false,
    ways: {
      ...NO_WAYS,
      resistor: ['lift strap: P1-P2', `fit part: bell-resistor, ${RESISTOR}`],
    },
  },
  // whoever lands the third wire and leaves the capacitor of two wires at the set's line terminals: it then lies
  // before the bell resistor, between the third wire and the b wire, as the socket's own does
  beside: {
    sheet: 'fescue',
    says: 'table set',
    moves: ['fit part: own-capacitor, with: {kind: capacitor, from: C1, to: B5, capacitance: 1.8 µF ± 20 %}'],
    hasResistor: true,
    ownCapacitor: 'beside',
    ways: NO_WAYS,
  },
  'in-line': {
    sheet: 'fescue',
    says: 'table set',
    moves: [
      'lift part: bell-resistor',
      'fit part: own-capacitor, with: {kind: capacitor, from: C1, to: C2, capacitance: 1.8 µF ± 20 %}',
    ],
    hasResistor: false,
    ownCapacitor: 'in-line',
    ways: NO_WAYS,
  },
  'two-wire': {
    sheet: 'melick',
    says: 'two-wire set',
    moves: [],
    hasResistor: false,
    ownCapacitor: 'pair',
    ways: NO_WAYS,
  },
}
