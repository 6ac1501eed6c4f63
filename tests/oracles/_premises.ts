import { type CheckAnswer, check, type Figure, type FiguresAnswer, figures } from 'ringproof'
import type { SheetText, Shelf } from 'ringproof/sheet/shelf'
import { shelfOf } from '../support/sheets.ts'

/** A line without cable; everything that is not said is as good as absent. */
export interface Exchange {
  /** V of the battery, also while it rings */
  readonly battery: number
  /** Ω between battery and pair, also while it rings unless `ringingSource` is said */
  readonly feed: number
  /** V rms of the ringing generator; 75 when absent */
  readonly ringing?: number
  /** Hz; 25 when absent */
  readonly frequency?: number
  readonly ringingSource?: number
  /** an impedance as a sheet writes it; `[600 Ω]` when absent */
  readonly speech?: string
  /** lines of a sheet, such as `limits: {…}` */
  readonly more?: readonly string[]
}

/** A set by the lines of its sheet below its strip: terminals A1 (a wire), A2 (b wire), A3 (ringing lead), A4 to A9 free. */
export type Wiring = readonly string[]

/** Ω of the two plug contacts through which a set that lies between two wires is reached; its cores have none. */
export const PLUG = 0.1

/** A set of one part, such as `bell: {kind: bell, from: A1, to: A2, …}`, or of a few. */
export const parts = (...all: readonly string[]): Wiring => [`parts: {${all.join(', ')}}`]
export const bell = (name: string, from: string, to: string, ohms: number, henries: number): string =>
  `${name}: {kind: bell, from: ${from}, to: ${to}, resistance: ${ohms} Ω, inductance: ${henries} H, rings from: 3 mA at 25 Hz}`
/** A bell that is a resistance, which textbooks love. */
export const plainBell = (name: string, from: string, to: string, ohms: number): string =>
  bell(name, from, to, ohms, 1e-9)
export const ohms = (name: string, from: string, to: string, value: number): string =>
  `${name}: {kind: resistor, from: ${from}, to: ${to}, resistance: ${value} Ω}`
export const farads = (name: string, from: string, to: string, value: number): string =>
  `${name}: {kind: capacitor, from: ${from}, to: ${to}, capacitance: ${value} F}`

/** The line as a sheet. */
export function lineSheet(exchange: Exchange): SheetText {
  const { battery, feed, ringing = 75, frequency = 25, ringingSource = feed } = exchange
  return sheet('line', 'ideal', [
    `feed: {voltage: ${battery} V, resistance: ${feed} Ω, negative: b wire, earth: positive pole}`,
    `ringing: {voltage: ${ringing} V, frequency: ${frequency} Hz, wave: sine, source: ${ringingSource} Ω, sent to: b wire, over battery: ${battery} V}`,
    `speech: {impedance: ${exchange.speech ?? '[600 Ω]'}}`,
    ...(exchange.more ?? []),
  ])
}

const LINE_CORD =
  'line: {ends in: plug, cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: A2, resistance: 0 Ω}, ringing: {lands: A3, resistance: 0 Ω}}}'
/** For a set with a `handset:`, its transmitter from A4 to A5 and its receiver from A6 to A7. */
const HANDSET_CORD =
  'handset: {ends in: handset, cores: {t1: {lands: A4, resistance: 0 Ω}, t2: {lands: A5, resistance: 0 Ω}, r1: {lands: A6, resistance: 0 Ω}, r2: {lands: A7, resistance: 0 Ω}}}'

/** A set that is these parts, on cords whose cores have no resistance. */
export function setSheet(name: string, wiring: Wiring): SheetText {
  const cords = wiring.some((line) => line.startsWith('handset:')) ? [LINE_CORD, HANDSET_CORD] : [LINE_CORD]
  return sheet('set', name, [
    'strips: {A: 9}',
    ...wiring,
    `cords: {${cords.join(', ')}}`,
    'plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}',
  ])
}

/** What the socket is: capacitor in farads, resistor in ohms. A resistor of 1e15 Ω is as good as none. */
export interface Socket {
  readonly farads?: number
  readonly ohms?: number
  /** cable from it to each of the others; none when absent */
  readonly over?: string
}

/** Sets side by side in sockets fed from one master socket, without cable unless it is said, places `set1`, … */
export function premises(
  exchange: Exchange,
  sets: readonly Wiring[],
  { farads: c = 1.8e-6, ohms: r = 1e15, over }: Socket = {},
): Shelf {
  return shelfOf([
    lineSheet(exchange),
    ...sets.map((wiring, k) => setSheet(`wiring${k + 1}`, wiring)),
    sheet('premises', 'house', [
      'line: ideal',
      'sockets:',
      `  front: {is: master, capacitance: ${c} F, resistance: ${r} Ω}`,
      ...sets.map(
        (_, k) =>
          `  socket${k + 1}: {is: secondary, fed from: front${over === undefined ? '' : `, over: ${over}`}}`,
      ),
      'sets:',
      ...sets.map((_, k) => `  set${k + 1}: {set: wiring${k + 1}, in: socket${k + 1}}`),
    ]),
  ])
}

/** All figures of such premises, or those whose id begins so. */
export function figuresOf(shelf: Shelf, only?: string): readonly Figure[] {
  const answer: FiguresAnswer = figures({ target: 'house', ...(only === undefined ? {} : { only }) }, shelf)
  return answer.figures
}

/** All checks of such premises. */
export function checksOf(shelf: Shelf): CheckAnswer {
  return check({ target: 'house' }, shelf)
}

/** The one figure of an id, of a place where there are several sets. */
export function figureOf(found: readonly Figure[], id: string, place?: string, hertz?: number): Figure {
  const all = found.filter(
    (one) =>
      one.id === id &&
      (place === undefined || one.subject === place || one.subject.startsWith(`${place}/`)) &&
      (hertz === undefined || one.frequency === hertz),
  )
  const [only] = all
  if (only === undefined || all.length > 1)
    throw new Error(`${id} of ${place ?? 'the house'} was found ${all.length} times`)
  return only
}

/** The value of that figure. */
export function amountOf(found: readonly Figure[], id: string, place?: string, hertz?: number): number {
  const { value, state } = figureOf(found, id, place, hertz)
  if (value === null) throw new Error(`${id} is ${state}`)
  return value
}

function sheet(kind: string, name: string, lines: readonly string[]): SheetText {
  return {
    file: `${name}.yaml`,
    text: ['ringproof: 1', `sheet: ${kind}`, `name: ${name}`, ...lines, ''].join('\n'),
  }
}
