import { bignumberDependencies, create, piDependencies } from 'mathjs'
import { solveTwice } from 'ringproof/opinion/answers'
import { describe, expect, test } from 'vitest'
import { shelfOf } from '../../support/sheets.ts'

/** Sixty digits for closed forms, so that forty can be judged. */
const { bignumber, pi } = create(
  { ...bignumberDependencies, ...piDependencies },
  { number: 'BigNumber', precision: 60 },
) as never as {
  bignumber(text: string): Decimal
  pi: Decimal
}
interface Decimal {
  plus(other: Decimal): Decimal
  minus(other: Decimal): Decimal
  times(other: Decimal): Decimal
  div(other: Decimal): Decimal
  neg(): Decimal
  abs(): Decimal
  sqrt(): Decimal
  cmp(other: Decimal): number
}

const d = bignumber

async function solved(parts: readonly string[], frequency: number) {
  const text = `ringproof: 1\nsheet: circuit\nname: net\nparts:\n${parts.map((one) => `  ${one}\n`).join('')}`
  const request = { target: '', text: { file: 'net.yaml', text }, frequency }
  const answer = await solveTwice(request, shelfOf([]), { digits: 40 })
  const opinion = answer['second opinion']
  if (opinion === undefined) throw new Error('no second opinion')
  return opinion
}

function close(found: unknown, re: Decimal, im: Decimal): void {
  const parts = found as { re: string; im: string }
  const size = re.times(re).plus(im.times(im)).sqrt()
  for (const [text, wanted] of [
    [parts.re, re],
    [parts.im, im],
  ] as const) {
    expect(
      d(text)
        .minus(wanted)
        .abs()
        .cmp(size.times(d('1e-39'))),
      `${text}`,
    ).toBeLessThanOrEqual(0)
  }
}

describe('alternating current in forty digits, as the real system of twice the size', () => {
  // closed form: i = U / (R + j(ωL − 1/(ωC)))
  test('is the closed form in a series circuit of R, L and C', async () => {
    const opinion = await solved(
      [
        'e: {kind: voltage-source, from: p, to: earth, alternating: 75 V at 0°}',
        'r: {kind: resistor, from: p, to: q, resistance: 3.3 kΩ}',
        'l: {kind: inductor, from: q, to: s, inductance: 41 H, resistance: 1.1 kΩ}',
        'c: {kind: capacitor, from: s, to: earth, capacitance: 1.8 µF}',
      ],
      25,
    )
    const omega = d('50').times(pi)
    const r = d('4400')
    const x = omega.times(d('41')).minus(d('1').div(omega.times(d('1.8e-6'))))
    const square = r.times(r).plus(x.times(x))
    const current = [r.times(d('75')).div(square), x.times(d('-75')).div(square)] as const
    close(opinion.currents?.['net/l'], ...current)
    // v = i/(jωC)
    const c = omega.times(d('1.8e-6'))
    close(opinion.voltages?.['net/s'], current[1].div(c), current[0].neg().div(c))
    expect(opinion['as doubles']).toEqual([])
    expect(opinion.unknowns).toBe(7)
  })

  // closed form: two coils of 4 H and 9 H coupled by 0.5 have M = k√(4·9) = 3 H; in aiding series L = 4 + 9 + 2·3 = 19 H
  // Boylestad, Introductory Circuit Analysis, coils in series with mutual inductance, from memory
  test('is the closed form with two coupled coils in series', async () => {
    const opinion = await solved(
      [
        'e: {kind: voltage-source, from: p, to: earth, alternating: 10 V at 0°}',
        'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
        'coil: {kind: induction-coil, windings: {a: {from: q, to: s, resistance: 0 Ω, inductance: 4 H}, b: {from: s, to: earth, resistance: 0 Ω, inductance: 9 H}}, coupling: 0.5}',
      ],
      16,
    )
    const x = d('32').times(pi).times(d('19'))
    const square = d('1e6').plus(x.times(x))
    close(opinion.currents?.['net/coil.b'], d('1e4').div(square), x.times(d('-10')).div(square))
  })

  test('says which parts enter as doubles: a source at an angle', async () => {
    const opinion = await solved(
      [
        'e: {kind: voltage-source, from: p, to: earth, alternating: 1 V at 30°}',
        'r: {kind: resistor, from: p, to: earth, resistance: 3 Ω}',
      ],
      50,
    )
    expect(opinion['as doubles']).toEqual(['net/e'])
    expect(opinion.currents?.['net/r']).toMatchObject({
      im: expect.stringMatching(/^0\.1666666666666666\d/),
    })
  })
})
