import { ringingCurrent, ringingVoltage } from 'ringproof/figures/ringing'
import { ringingPower, ringingShare, ringingSocketVoltage, soundersOf } from 'ringproof/figures/ringing-share'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { house, lineText, MASTER, plainSet, standing } from './_stand.ts'

const RINGING = { line: 'ringing', sets: {} } as const
const NEAR = { relative: 1e-9 }

const SOCKETS = [MASTER, 'back: {is: secondary, fed from: front}', 'top: {is: secondary, fed from: front}']
const pair = standing(
  house(
    lineText(),
    SOCKETS,
    ['desk: {set: plain, in: front}', 'wall: {set: heavy, in: back}'],
    plainSet(600),
    {
      file: 'heavy.yaml',
      text: 'ringproof: 1\nsheet: set\nname: heavy\nbased on: plain\nparts: {resistor: {resistance: 1 kΩ}}\n',
    },
  ),
)
const bells = soundersOf(pair.net)
const share = (k: number) => {
  const bell = bells[k]
  if (bell === undefined) throw new Error('no bell')
  return pair.context.figure(ringingShare(pair.net, bell, RINGING, 25))
}

describe('the share of a bell', () => {
  test('is as the admittances of the bells are, I1/I2 = Z2/Z1', () => {
    const w = 2 * Math.PI * 25
    const size = (ohms: number) => 1 / Math.hypot(ohms + 0.1, w * 12)
    const expected = size(4300) / (size(4300) + size(2000))
    // sockets without cable: links of 0 Ω
    assertClose(share(0).value, expected, { relative: 1e-6 }, 'first')
    assertClose((share(0).value ?? 0) + (share(1).value ?? 0), 1, NEAR, 'together')
    expect(share(0)).toMatchObject({ id: 'ringing.share', subject: 'desk/bell', unit: '1' })
  })

  test('is one of its kind among n equal ones, and undetermined where nothing rings', () => {
    const one = bells[0]
    if (one === undefined) throw new Error('no bell')
    const plan = ringingShare(pair.net, one, RINGING, 25)
    expect(plan.value(Float64Array.of(3, 4, 5, 0))).toBe(0.5)
    expect(plan.value(new Float64Array(4))).toBe('undetermined')
    expect(plan.value(new Float64Array())).toBe('undetermined')
  })
})

describe('the apparent power of a bell', () => {
  const [bell] = bells
  if (bell === undefined) throw new Error('no bell')

  test('is its voltage times its current', () => {
    const volts = pair.context.figure(ringingVoltage(bell, RINGING, 25)).value ?? 0
    const amperes = pair.context.figure(ringingCurrent(bell, RINGING, 25)).value ?? 0
    const power = pair.context.figure(ringingPower(bell, RINGING, 25, [1]))
    assertClose(power.value, volts * amperes, NEAR, 'power')
    expect(power).toMatchObject({ id: 'ringing.power', unit: 'VA', frequency: 25 })
  })

  test('takes rms over harmonics on both sides, by hand', () => {
    const plan = ringingPower(bell, RINGING, 25, [1, 3])
    expect(plan.value(Float64Array.of(3, 0, 4, 0, 0, 5, 12, 0))).toBe(5 * 13)
  })
})

describe('the voltage at a socket', () => {
  test('is what the source leaves of the generator', () => {
    const plan = ringingSocketVoltage(pair.place, pair.line, RINGING)
    const figure = plan && pair.context.figure(plan)
    expect(figure).toMatchObject({ id: 'ringing.socket-voltage', subject: 'desk', unit: 'V' })
    expect(figure?.value).toBeGreaterThan(60)
    expect(figure?.value).toBeLessThan(75)
  })

  test('is none where the set stands in no socket, or nothing rings', () => {
    expect(ringingSocketVoltage({ ...pair.place, socket: undefined }, pair.line, RINGING)).toBeUndefined()
    const quiet = { ...pair.line, ringingFrequency: undefined }
    expect(ringingSocketVoltage(pair.place, quiet, RINGING)).toBeUndefined()
  })
})
