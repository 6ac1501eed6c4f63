import type { FiguresAnswer } from 'ringproof/answer/answer'
import type { Figure } from 'ringproof/figures/figure'
import { PLAIN } from 'ringproof/report/paint'
import { curvesOf, curveTables } from 'ringproof/report/text-curves'
import { figuresText } from 'ringproof/report/text-figures'
import { columns } from 'ringproof/report/wrap'
import { describe, expect, test } from 'vitest'
import { at, figure } from './answers.ts'

// invented numbers, only to be laid out
const FREQUENCIES = [500, 1000, 2000]
const NETWORKS = ['270 Ω + 750 Ω ∥ 150 nF', '600 Ω']

function numberless(figure: Figure, state: NonNullable<Figure['state']>): Figure {
  const { phasor: _, ...rest } = figure
  return { ...rest, value: null, state }
}

function curve(place: string, condition = at('off-hook/speech', place)): Figure[] {
  return FREQUENCIES.flatMap((frequency, k) => [
    figure({
      id: 'speech.send',
      subject: `${place}/transmitter`,
      condition,
      frequency,
      value: 0.001 * (k + 1),
    }),
    figure({ id: 'speech.receive', subject: `${place}/receiver`, condition, frequency, value: 0.00075 }),
    figure({ id: 'speech.sidetone', subject: `${place}/receiver`, condition, frequency, value: 1e-15 }),
    figure({
      id: 'speech.impedance',
      subject: place,
      condition,
      frequency,
      unit: 'Ω',
      value: 500,
      phasor: { re: 300, im: k === 0 ? 400 : -400 },
    }),
    ...NETWORKS.map((network, n) =>
      figure({
        id: 'speech.return-loss',
        subject: `${place} against ${network}`,
        condition,
        frequency,
        unit: 'dB',
        value: n === 0 ? 12.34 : -0.96,
      }),
    ),
  ])
}

const page = (width: number) => ({ width, paint: PLAIN })
const text = (figures: readonly Figure[], width = 80, ...place: readonly (string | undefined)[]) =>
  curveTables(curvesOf(figures).curves, place.length === 0 ? 'kiosk' : place[0], page(width)).join('\n')

describe('speech by frequency', () => {
  test('says what is good, and what less than 0 dB means where there is any', () => {
    const says = (figures: readonly Figure[]) => text(figures).replace(/\s+/g, ' ')
    expect(says(curve('kiosk'))).toContain(
      'more send and receive is better, less sidetone is; more return loss is better',
    )
    expect(says(curve('kiosk'))).toContain('below 0 dB more comes back than arrives')
    const above = curve('kiosk').filter(({ value }) => (value ?? 0) >= 0)
    expect(says(above)).not.toContain('below 0 dB')
    expect(says(above.filter(({ id }) => id !== 'speech.return-loss'))).not.toContain('return loss is better')
  })

  test('is one row a frequency, with all that was computed at it', () => {
    const lines = text(curve('kiosk')).split('\n')
    expect(lines[0]).toBe('Speech by frequency, handset up, speech')
    expect(lines[2]?.trim().split(/ +/)).toEqual([
      'Hz',
      'send',
      'receive',
      'sidetone',
      'Ω',
      'phase',
      'A',
      'B',
    ])
    const row = ['0.750', '0', '500']
    expect(lines.slice(3, 6).map((line) => line.trim().split(/ +/))).toEqual([
      ['500', '1.00', ...row, '53°', '12.3', '−1.0'],
      ['1000', '2.00', ...row, '−53°', '12.3', '−1.0'],
      ['2000', '3.00', ...row, '−53°', '12.3', '−1.0'],
    ])
  })

  test('says what the columns are', () => {
    const all = text(curve('kiosk'))
    expect(all).toContain('send, receive, sidetone: mA for 1 V; Ω, phase: impedance between the line wires')
    expect(all).toContain('A  return loss, dB, against 270 Ω + 750 Ω ∥ 150 nF')
    expect(all).toContain('B  return loss, dB, against 600 Ω')
  })

  test('shows only the columns that there are figures for', () => {
    const losses = curve('kiosk').filter(({ id }) => id === 'speech.return-loss')
    expect(text(losses).split('\n')[2]?.trim().split(/ +/)).toEqual(['Hz', 'A', 'B'])
    expect(text(losses)).not.toContain('mA for 1 V')
    const impedances = curve('kiosk').filter(({ id }) => id === 'speech.impedance')
    expect(text(impedances).split('\n')[2]?.trim().split(/ +/)).toEqual(['Hz', 'Ω', 'phase'])
    expect(text(impedances)).not.toContain('return loss')
  })

  test.each([60, 77, 78, 120])('fits %d columns', (width) => {
    const lines = text([...curve('kiosk'), ...curve('porch')], width, undefined).split('\n')
    expect(lines.filter((line) => columns(line) > width)).toEqual([])
  })

  test('takes two tables on a narrow page', () => {
    const rows = (width: number) => text(curve('kiosk'), width).match(/^ +1000 /gm)?.length
    expect(rows(60)).toBe(2)
    expect(rows(80)).toBe(1)
  })

  test('names the place of each curve where there are several, and shares one list of networks', () => {
    const all = text([...curve('kiosk'), ...curve('porch')], 80, undefined)
    expect(all).toContain('Speech by frequency, kiosk: handset up, speech')
    expect(all).toContain('Speech by frequency, porch: handset up, speech')
    expect(all.match(/against 600 Ω/g)).toHaveLength(1)
  })

  test('keeps conditions apart', () => {
    const other = { ...at('off-hook/speech'), line: 'idle' as const }
    expect(curvesOf([...curve('kiosk'), ...curve('kiosk', other)]).curves).toHaveLength(2)
  })

  test('marks what rests on a stand-in', () => {
    const rests = curve('kiosk').map((one) => ({ ...one, approximate: 'a stand-in' }))
    expect(text(rests)).toContain('≈ Speech by frequency')
  })

  test('has words where there is no number', () => {
    const states = { 'speech.impedance': 'open', 'speech.return-loss': 'beyond-range' } as const
    const all = curve('kiosk').map((one) =>
      numberless(one, one.id in states ? states[one.id as keyof typeof states] : 'no-convergence'),
    )
    expect(text(all).split('\n')[3]?.trim().split(/ +/)).toEqual(['500', '–', '–', '–', 'open', '∞', '∞'])
  })
})

describe('the text of figures', () => {
  const answer = (figures: readonly Figure[]): FiguresAnswer => ({
    ringproof: 'figures/1',
    'made by': '0.0.0',
    request: { figures: 'kiosk' },
    problems: [],
    outcome: 'answered',
    figures,
  })
  const single = figure({ id: 'loop.current', frequency: undefined as never, condition: at('off-hook') })
  const shown = (figures: readonly Figure[]) => figuresText(answer(figures), page(80)).join('\n')

  test('shows curves as such and all else in its table', () => {
    const all = shown([single, ...curve('kiosk')])
    expect(all).toContain('loop current')
    expect(all).toContain('Speech by frequency')
    expect(all).not.toContain('speech sent for 1 V')
  })

  test('leaves one or two frequencies in the table', () => {
    const few = curve('kiosk').filter(({ frequency }) => frequency !== 2000)
    expect(curvesOf(few)).toEqual({ curves: [], others: few })
    expect(shown(few)).toMatch(/speech sent for 1 V/)
  })

  test('says once why something is approximate', () => {
    const all = [single, ...curve('kiosk')].map((one) => ({ ...one, approximate: 'a stand-in' }))
    expect(shown(all).match(/a stand-in/g)).toHaveLength(1)
  })
})
