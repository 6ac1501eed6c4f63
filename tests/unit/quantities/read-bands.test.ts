import { solveCircuit } from 'ringproof'
import { ProblemError } from 'ringproof/problem'
import { type QuantityFault, readAt, readQuantity } from 'ringproof/quantities/quantity'
import { describe, expect, it } from 'vitest'

const faultOf = (text: string): QuantityFault => {
  const result = readQuantity(text, 'resistance')
  if (result.ok) throw new Error(`read as ${result.quantity.value}`)
  return result.fault
}

// IEC 60062, secondary copy: SEEN-S
describe('a resistance by its bands', () => {
  it('is its value with its tolerance, and keeps what was written', () => {
    const written = ' orange orange red gold '
    const quantity = { value: 3300, unit: 'Ω', tolerance: 0.05, text: 'orange orange red gold' }
    expect(readQuantity(written, 'resistance')).toEqual({ ok: true, quantity })
    expect(readQuantity('yellow violet yellow', 'resistance')).toMatchObject({
      quantity: { value: 470_000, tolerance: 0.2 },
    })
    expect(readQuantity('orange orange black brown brown red', 'resistance')).toMatchObject({
      quantity: { value: 3300, tolerance: 0.01 },
    })
  })

  it('may be written in any letter case and with either spelling of grey', () => {
    for (const text of ['Grey Red Black Gold', 'gray red black gold', 'GREY RED BLACK GOLD']) {
      expect(readQuantity(text, 'resistance')).toMatchObject({ quantity: { value: 82 } })
    }
  })

  it('may be the first half of a pair', () => {
    expect(readAt('brown green brown gold at 40 mA', 'resistance', 'current')).toMatchObject({
      value: { value: { value: 150, tolerance: 0.05 }, at: { value: 0.04 } },
    })
  })

  it.each([
    ['orange oragne red gold', 'orange orange red gold', 7],
    ['organge orange red gold', 'orange orange red gold', 0],
    ['yelow violet yellow', 'yellow violet yellow', 0],
    ['brown blak rad gold', 'brown black red gold', 6],
    ['purple violet yellow', undefined, 0],
  ])('with the strange colour in %s names the nearest', (text, meant, at) => {
    expect(faultOf(text)).toEqual({
      code: 'quantity-unreadable',
      found: `\`${text}\``,
      expected: 'black, brown, red, orange, yellow, green, blue, violet, grey, white, gold or silver',
      at,
      ...(meant === undefined ? {} : { mend: `write \`${meant}\`` }),
    })
  })

  it('from the wrong end is turned round where that reads', () => {
    expect(faultOf('gold red orange orange')).toMatchObject({
      expected: 'as first band brown, red, orange, yellow, green, blue, violet, grey or white',
      mend: 'write `orange orange red gold`',
      at: 0,
    })
    expect(faultOf('gold red orange silver')).not.toHaveProperty('mend')
  })

  it('says which place a colour cannot have', () => {
    expect(faultOf('black red red gold').expected).toMatch(/^as first band brown/)
    expect(faultOf('red gold red')).toMatchObject({
      at: 4,
      expected: expect.stringMatching(/^as second band black/),
    })
    expect(faultOf('red red red white')).toMatchObject({
      at: 12,
      expected: 'as fourth band brown, red, green, blue, violet, grey, gold or silver',
    })
    expect(faultOf('red red red red brown white').at).toBe(22)
  })

  it.each(['red', 'red red', 'red red red red brown red red'])('is never %s', (text) => {
    expect(faultOf(text)).toMatchObject({
      expected: 'three to six bands such as orange orange red gold',
      at: 0,
    })
  })

  it('tells its tolerance itself', () => {
    const fault = faultOf('orange orange red gold ± 1 %')
    expect(fault).toMatchObject({ code: 'quantity-unreadable', at: 23 })
    expect(fault.expected).toBe('bands alone, which tell the tolerance')
  })

  it('keeps within the limits of its key', () => {
    expect(readQuantity('brown black red gold', 'resistance', { max: 500 })).toMatchObject({
      fault: { code: 'quantity-out-of-range', at: 0 },
    })
  })

  it.each(['open', 'none', 'kilo ohm', 'ohm', '', 'some resistance or other', '33 orange'])(
    'is not what %s is taken for',
    (text) => {
      expect(faultOf(text).expected).toBe('a resistance such as 3.3 kΩ')
    },
  )

  it('is read where a resistance is due and nowhere else', () => {
    for (const dimension of ['capacitance', 'voltage', 'inductance'] as const) {
      expect(readQuantity('orange orange red gold', dimension)).toMatchObject({ ok: false })
    }
  })
})

describe('a sheet', () => {
  const circuit = (resistance: string): string =>
    `ringproof: 1\nsheet: circuit\nname: net\nparts:\n  e: {kind: voltage-source, from: p, to: earth, direct: 33 V}\n  r: {kind: resistor, from: p, to: earth, resistance: ${resistance}}\n`

  it('takes the bands of a resistor for its resistance', () => {
    expect(solveCircuit(circuit('orange orange red gold')).currents['net/r']).toBeCloseTo(0.01, 15)
  })

  it('is shown the band that is amiss, line and column', () => {
    const text = circuit('orange orange rad gold')
    try {
      solveCircuit(text)
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      expect(error.problems).toHaveLength(1)
      expect(error.problems[0]).toMatchObject({
        code: 'quantity-unreadable',
        mend: 'write `orange orange red gold`',
        place: { line: 6, column: (text.split('\n')[5] ?? '').indexOf('rad') + 1 },
      })
      return
    }
    throw new Error('the sheet was taken')
  })
})
