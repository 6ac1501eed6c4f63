/** From figures by frequency to panels of curves; every value is a figure’s. */
import type { Figure } from '../../figures/figure.ts'

export interface CurvePoint {
  readonly frequency: number
  readonly value: number
}

export interface Curve {
  readonly name: string
  /** A short form for the label beside the curve; nothing where the side says it all. */
  readonly label: string
  readonly side: 'found' | 'proposed'
  /** Which of the panel’s quantities it is, for its mark. */
  readonly order: number
  /** Points without a gap between them; a figure without a number parts two runs. */
  readonly runs: readonly (readonly CurvePoint[])[]
}

export interface Panel {
  readonly id: 'speech' | 'impedance' | 'loss'
  readonly title: string
  readonly unit: string
  /** A value that the axis shows in any case. */
  readonly floor?: number
  readonly curves: readonly Curve[]
  /** What is to be said below: what letters stand for, what is nothing. */
  readonly notes: readonly string[]
}

const SPEECH: readonly (readonly [Figure['id'], string])[] = [
  ['speech.send', 'send'],
  ['speech.receive', 'receive'],
  ['speech.sidetone', 'sidetone'],
]

const AGAINST = ' against '

/** A current for 1 V below which only rounding is left, A; it has no place on a scale of decibels. */
const NOTHING = 1e-9

/** Panels of one set in one condition, those that have curves; `found` is drawn beside `proposed`. */
export function panelsOf(proposed: readonly Figure[], found: readonly Figure[]): readonly Panel[] {
  const sides = [
    ['found', firstSpeaking(found)],
    ['proposed', firstSpeaking(proposed)],
  ] as const
  const networks = [
    ...new Set(
      sides.flatMap(([, all]) => all.filter(({ id }) => id === 'speech.return-loss').map(networkOf)),
    ),
  ]
  const curves = (
    wanted: readonly (readonly [name: string, (figure: Figure) => boolean])[],
    amountIn: (figure: Figure) => number | undefined,
    labelOf: (name: string, order: number) => string = (name) => name,
  ): readonly Curve[] =>
    wanted.flatMap(([name, isMeant], order) =>
      sides.flatMap(([side, all]) => {
        const runs = runsOf(all.filter(isMeant), amountIn)
        return runs.length === 0 ? [] : [{ name, label: labelOf(name, order), side, order, runs }]
      }),
    )
  const panels: readonly Panel[] = [
    {
      id: 'speech',
      title: 'Speech currents for 1 V',
      unit: 'dB, 0 dB is 1 mA for 1 V',
      curves: curves(
        SPEECH.map(([id, name]) => [name, (figure) => figure.id === id]),
        ({ value }) => (value === null || value < NOTHING ? undefined : 20 * Math.log10(value * 1000)),
      ),
      notes: silentNotes(sides),
    },
    {
      id: 'impedance',
      title: 'Impedance between the line wires',
      unit: 'Ω',
      floor: 0,
      curves: curves([['impedance', ({ id }) => id === 'speech.impedance']], amountOf, () => ''),
      notes: [],
    },
    {
      id: 'loss',
      title: 'Return loss, more is better',
      unit: 'dB',
      floor: 0,
      curves: curves(
        networks.map((network) => [
          network,
          (figure) => figure.id === 'speech.return-loss' && networkOf(figure) === network,
        ]),
        amountOf,
        (name, order) => (networks.length === 1 ? name : letterOf(order)),
      ),
      notes: networks.length === 1 ? [] : networks.map((network, k) => `${letterOf(k)}: against ${network}`),
    },
  ]
  return panels.filter((panel) => panel.curves.length > 0)
}

/** `A`, `B` …; beyond the alphabet numbers. */
function letterOf(order: number): string {
  return order < 26 ? String.fromCharCode(65 + order) : String(order + 1)
}

/** What is nowhere on the scale since nothing flows at all. */
function silentNotes(
  sides: readonly (readonly [side: Curve['side'], figures: readonly Figure[]])[],
): readonly string[] {
  return sides.flatMap(([side, all]) =>
    SPEECH.flatMap(([id, name]) => {
      const own = all.filter((figure) => figure.id === id)
      const isSilent = own.length > 0 && own.every(({ value }) => value !== null && value < NOTHING)
      return isSilent ? [`${name}, ${side}: nothing, no current flows`] : []
    }),
  )
}

function amountOf({ value }: Figure): number | undefined {
  return value ?? undefined
}

function networkOf({ subject }: Figure): string {
  const at = subject.indexOf(AGAINST)
  return at < 0 ? subject : subject.slice(at + AGAINST.length)
}

/** Figures over frequency of the first place and condition that has them. */
function firstSpeaking(figures: readonly Figure[]): readonly Figure[] {
  const all = figures.filter(({ id, frequency }) => id.startsWith('speech.') && frequency !== undefined)
  const keyOf = (figure: Figure): string => JSON.stringify([placeOf(figure), figure.condition])
  const [first] = all
  return first === undefined ? [] : all.filter((figure) => keyOf(figure) === keyOf(first))
}

/** `kiosk` of `kiosk/transmitter` and of `kiosk against 600 Ω`. */
function placeOf({ id, subject }: Figure): string {
  const end = subject.indexOf(id === 'speech.return-loss' ? AGAINST : '/')
  return end < 0 ? subject : subject.slice(0, end)
}

function runsOf(
  figures: readonly Figure[],
  amountIn: (figure: Figure) => number | undefined,
): readonly (readonly CurvePoint[])[] {
  const byFrequency = new Map(figures.map((figure) => [figure.frequency ?? 0, figure]))
  const runs: CurvePoint[][] = [[]]
  for (const [frequency, figure] of [...byFrequency].sort(([p], [q]) => p - q)) {
    const value = amountIn(figure)
    if (value === undefined) runs.push([])
    else runs.at(-1)?.push({ frequency, value })
  }
  return runs.filter((run) => run.length > 0)
}
