import type { Figure } from 'ringproof'
import { copyText, speechTables } from 'ringproof/web/views/speech/rows'
import { describe, expect, test } from 'vitest'

function figure(
  id: Figure['id'],
  frequency: number,
  value: number | null,
  more: Partial<Figure> = {},
): Figure {
  const condition = { line: 'speech', sets: {} } as const
  return { id, subject: 'here/part', condition, frequency, value, unit: 'A', residual: 0, ...more }
}

const found = [
  figure('speech.send', 1000, 1e-3),
  figure('speech.send', 200, 2e-3),
  figure('speech.impedance', 200, 600, { unit: 'Ω', phasor: { re: 424.26, im: -424.26 } }),
  figure('speech.return-loss', 200, null, {
    unit: 'dB',
    state: 'beyond-range',
    subject: 'here against 600 Ω',
  }),
]

describe('speech as tables', () => {
  test('frequencies rise, and each quantity has its column', () => {
    const [currents, losses] = speechTables({ found }, () => 'speech')
    expect(currents?.frequencies).toEqual([200, 1000])
    expect(currents?.columns.map(({ heading }) => heading)).toEqual(['send', 'impedance'])
    expect(currents?.columns[0]?.cells.get(200)).toBe('2.00 mA')
    expect(currents?.columns[1]?.cells.get(200)).toBe('600 Ω, −45°')
    expect(losses?.columns).toEqual([{ heading: '600 Ω', cells: new Map([[200, '∞']]) }])
  })

  test('both sides stand beside each other', () => {
    const proposed = [figure('speech.send', 200, 1e-15)]
    const [currents] = speechTables({ found, proposed }, () => 'speech')
    expect(currents?.columns.map(({ heading }) => heading)).toEqual([
      'send, as found',
      'send, as proposed',
      'impedance, as found',
    ])
    // what rounding leaves of nothing is nothing
    expect(currents?.columns[1]?.cells.get(200)).toBe('0')
  })

  test('the text to copy has a line for each frequency', () => {
    const text = copyText(speechTables({ found }, () => 'speech'))
    expect(text.split('\n').slice(1, 4)).toEqual([
      'Hz\tsend\timpedance',
      '200\t2.00 mA\t600 Ω, −45°',
      '1000\t1.00 mA\t',
    ])
  })
})
