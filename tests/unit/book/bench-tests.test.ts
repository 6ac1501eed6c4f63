import { SYMPTOMS } from 'ringproof/book/bench-tests/index'
import type { Change } from 'ringproof/figures/variants'
import type { PartSpec } from 'ringproof/parts/kind'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { lineText } from '../checks/_ask.ts'
import { onBench } from './_bench-tests.ts'

const sedge = onBench({ target: 'sedge' })
const fescue = onBench({ target: 'fescue' })
const foxtail = onBench({ target: 'foxtail' })
const house = onBench({ target: 'station-house', at: 'office' })

/** A core off its terminal, and on another one. */
const astray = (core: string, onto: string): readonly Change[] => [
  { lifted: sedge.branch(core).index },
  { bridge: { from: sedge.node(core), to: sedge.node(onto), ohms: 0.01 } },
]

describe('a sound set', () => {
  test('with a bridge shows no symptom', () => {
    expect(foxtail.amiss()).toEqual({})
  })

  test.each(['fescue', 'sedge', 'melick', 'brome', 'marram'])('%s shows no symptom', (target) => {
    expect(onBench({ target }).amiss()).toEqual({})
  })

  test('shows none beside four others, although its bell has a third of what it has alone', () => {
    expect(house.amiss()).toEqual({})
  })

  test('that stands on no line shows none, and is read unplugged only', () => {
    const alone = onBench({ target: 'fescue', on: 'none' })
    expect(alone.tests.length).toBeGreaterThan(40)
    expect(alone.tests.filter(({ words, live }) => words !== undefined || live)).toEqual([])
  })

  test('an extension bell is asked of ringing only', () => {
    const bell = onBench({ target: 'darnel' })
    const asked = bell.tests.flatMap(({ id, words }) => (words === undefined ? [] : [id]))
    expect(asked).toEqual(['rings', 'goes-on-ringing', 'engaged', 'either-way'])
  })

  test('its symptoms are among those with a name, in their order', () => {
    const asked = house.tests.flatMap(({ id, words }) => (words === undefined ? [] : [id]))
    expect(asked).toEqual(SYMPTOMS)
    expect(SYMPTOMS.length).toBeLessThanOrEqual(20)
  })

  test('nobody touches a live wire for a symptom, and each has one answer more than cuts that rise', () => {
    for (const one of house.tests.filter(({ words }) => words !== undefined)) {
      expect([one.site, one.live, one.error(1)]).toEqual(['in-use', false, 0])
      expect(one.words!.answers.length).toBe(one.words!.cuts.length + 1)
      expect([...one.words!.cuts].sort((p, q) => p - q)).toEqual(one.words!.cuts)
      expect(one.words!.answers.filter(({ fine }) => fine).length).toBe(1)
    }
  })
})

describe('it rings, but one cannot talk', () => {
  test('joined cores: rings, is heard, hears nothing', () => {
    const joined = astray('handset.r2', 'B3')
    expect(sedge.amiss(joined)).toEqual({
      ...{ tone: 'none', hears: 'no', talk: 'no', 'own-voice': 'none' },
      // where no tone is heard before, none goes
      'dial-breaks': 'stays',
    })
    expect(sedge.answer('heard', joined)).toBe('well')
    expect(sedge.answer('stops-ringing', joined)).toBe('stops')
  })

  test.each(['sedge', 'fescue'])('a shorted transmitter: hears, is not heard: %s', (target) => {
    const set = onBench({ target })
    expect(set.amiss(set.mode('transmitter', 'shorted'))).toEqual({
      heard: 'no',
      talk: 'no',
      'own-voice': 'none',
    })
  })

  test.each(['packed', 'damp'])('a transmitter that is %s is heard faintly', (mode) => {
    const { heard, rings } = sedge.amiss(sedge.mode('transmitter', mode))
    expect([heard, rings]).toEqual(['faint', undefined])
  })

  test('an open transmitter core: no tone, ringing is never tripped', () => {
    const open = [{ lifted: sedge.branch('handset.t1').index }]
    expect(sedge.amiss(open)).toMatchObject({ 'stops-ringing': 'no', tone: 'none', heard: 'no', hears: 'no' })
    expect(sedge.answer('rings', open)).toBe('rings')
  })

  test('a receiver of 10 dB less hears 10 dB less, and the tone is as faint', () => {
    const weak = sedge.mode('receiver', 'weak-magnet')
    // by the definition of the decibel
    assertClose(sedge.score('hears', weak) / sedge.score('hears'), 10 ** -0.5, { relative: 1e-12 }, 'score')
    expect(sedge.amiss(weak)).toEqual({ tone: 'faint', hears: 'faint', talk: 'no' })
  })

  test('a balance network that is open makes the own voice loud', () => {
    expect(fescue.amiss(fescue.mode('balance-c', 'open'))).toEqual({ 'own-voice': 'loud' })
  })

  test('resistance in both ways makes speech faint both ways', () => {
    const within = [{ within: { branch: sedge.branch('plug.5').index, ohms: 1500 } }]
    expect(sedge.answer('heard', within)).toBe('faint')
  })
})

describe('the bell', () => {
  const bell = (factor: number): Change =>
    sedge.becomes('bell', (spec) => {
      const from = (spec as PartSpec & { 'rings from': { value: { value: number } } })['rings from']
      return {
        ...spec,
        'rings from': { ...from, value: { ...from.value, value: factor * from.value.value } },
      } as PartSpec
    })

  test('that needs more of the same current rings weakly, then not at all', () => {
    const sound = sedge.score('rings')
    assertClose(sedge.score('rings', [bell(2)]), sound / 2, { relative: 1e-12 }, 'score')
    expect([1, 2, 5, 10].map((factor) => sedge.answer('rings', [bell(factor)]))).toEqual([
      'rings',
      'weak',
      'weak',
      'silent',
    ])
  })

  test('is silent with its coils opposed, whatever flows', () => {
    const melick = onBench({ target: 'melick' })
    const opposed = melick.mode('bell', 'coils-opposed')
    expect(melick.score('rings', opposed)).toBe(0)
    expect(melick.answer('rings', opposed)).toBe('silent')
  })

  test('is silent without its ringing lead', () => {
    expect(sedge.amiss([{ lifted: sedge.branch('plug.3').index }])).toEqual({ rings: 'silent' })
  })

  test('gets more alone than beside four others, and one way round as the other', () => {
    expect(house.score('rings-alone')).toBeGreaterThan(2 * house.score('rings'))
    assertClose(
      house.score('rings-alone'),
      onBench({ target: 'fescue' }).score('rings'),
      { relative: 1e-2 },
      'score',
    )
  })

  test('that rings only beside another says so where others stand', () => {
    // without the capacitor of the master socket its ringing lead ends in the bells of the others
    const { net } = house
    const capacitor = net.branches.find(({ id }) => id === 'front/capacitor')
    if (capacitor === undefined) throw new Error('a master socket has a capacitor')
    expect(house.answer('rings-alone', [{ lifted: capacitor.index }])).toBe('silent')
  })
})

describe('the line', () => {
  // 50 V behind 400 Ω, no cable
  const bare = onBench({ target: 'sedge', onText: lineText({}, 'trip: {current: 12 mA, within: 200 ms}') })
  const leak = (ohms: number): Change => ({
    bridge: { from: bare.node('plug.a'), to: bare.node('plug.b'), ohms },
  })

  test('is engaged from 12 mA on, by Ohm’s law', () => {
    // AS/CA S002:2010, 5.5.1.8: a loop is closed from 12 mA; 50 V / 12 mA − 400 Ω
    const limit = 50 / 0.012 - 400
    expect(bare.answer('engaged', [leak(0.99 * limit)])).toBe('engaged')
    expect(bare.answer('engaged', [leak(1.01 * limit)])).toBe('free')
    assertClose(bare.score('engaged', [leak(limit)]), 1, { relative: 1e-3 }, 'score')
  })

  test('drops a call that rings by what trips the ringing', () => {
    // the ringing rides on 50 V behind 400 Ω
    const limit = 50 / 0.012 - 400
    expect(bare.answer('goes-on-ringing', [leak(0.99 * limit)])).toBe('drops')
    expect(bare.answer('goes-on-ringing', [leak(1.01 * limit)])).toBe('goes-on')
  })

  test('does not hear a dial whose pulse contact passes more than 2.8 mA', () => {
    // AS/CA S002:2010, 5.5.1.8: a break is at most 2.8 mA
    const across = (ohms: number): Change => {
      const { from, to } = bare.branch('impulse')
      return { bridge: { from, to, ohms } }
    }
    const limit = 50 / 0.0028 - 400
    expect(bare.answer('dial-breaks', [across(0.9 * limit)])).toBe('stays')
    expect(bare.answer('dial-breaks', [across(1.1 * limit)])).toBe('goes')
  })

  test('that takes no pulses is not asked for them', () => {
    const port = onBench({ target: 'sedge', on: 'adapter-port' })
    expect(port.tests.some(({ id }) => id === 'dial-breaks')).toBe(false)
    expect(onBench({ target: 'cottage', at: 'parlour' }).answer('dial-breaks')).toBe('goes')
  })

  test('without a trip current in its sheet is not asked what trips it', () => {
    const silent = onBench({ target: 'sedge', onText: lineText() })
    expect(silent.tests.some(({ id }) => id === 'stops-ringing' || id === 'goes-on-ringing')).toBe(false)
  })

  test('that is not there lets nothing work but what needs no exchange', () => {
    const open = [{ lifted: sedge.branch('plug.2').index }]
    expect(sedge.amiss(open)).toMatchObject({ tone: 'none', 'stops-ringing': 'no', 'dial-breaks': 'stays' })
  })
})

describe('other telephones', () => {
  const short: Change = { bridge: { from: house.node('plug.a'), to: house.node('plug.b'), ohms: 10 } }

  test('have neither tone nor bells beside a set that shorts the line', () => {
    expect(house.amiss([short])).toMatchObject({
      others: 'affected',
      'others-ring': 'silent',
      'others-tone': 'none',
      engaged: 'engaged',
      'goes-on-ringing': 'drops',
    })
  })

  test('keep their tone beside one that takes the ringing only', () => {
    const lead = house.node('plug.ringing')
    const taken = [{ bridge: { from: lead, to: house.node('plug.a'), ohms: 1000 } }]
    expect(house.answer('others-ring', taken)).not.toBe('ring')
    expect(house.answer('others-tone', taken)).toBe('clear')
    expect(house.answer('others', taken)).toBe('affected')
  })
})

describe('the pair either way round', () => {
  test('makes no difference to a sound set, nor to one that fails either way', () => {
    expect(sedge.answer('either-way')).toBe('same')
    expect(sedge.answer('either-way', [{ lifted: sedge.branch('plug.2').index }])).toBe('same')
  })

  test('matters to a set with a diode in its loop', () => {
    // a bridge of which one arm is gone passes one way only, whichever arm it is
    const arms = foxtail.net.branches.filter(({ part }) => part.id === 'foxtail/bridge')
    const ways = arms.map(({ index }) => foxtail.answer('either-way', [{ lifted: index }]))
    expect(ways).toEqual(['one-way', 'one-way', 'one-way', 'one-way'])
  })
})

describe('the dial', () => {
  test('breaks no tone where an open transmitter core leaves none, though dialling itself closes the loop', () => {
    const open = [{ lifted: sedge.branch('handset.t1').index }]
    expect(sedge.answer('tone', open)).toBe('none')
    expect(sedge.answer('dial-breaks', open)).toBe('stays')
    expect(sedge.answer('dial-breaks')).toBe('goes')
  })

  test('clicks in the ear with both its mute contacts open', () => {
    const open = ['mute-ear', 'mute-speech'].map((name): Change => ({ lifted: sedge.branch(name).index }))
    expect(sedge.amiss(open)).toEqual({ 'dial-mutes': 'clicks' })
  })
})
