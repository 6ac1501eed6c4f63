import { figures } from 'ringproof'
import { contextsOf } from 'ringproof/answer/check-answer'
import { speechCurves } from 'ringproof/answer/speech-curves'
import { stand } from 'ringproof/answer/standing'
import { freshSupplier } from 'ringproof/figures/read'
import { SPEECH_THIRDS } from 'ringproof/figures/speech-band'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'

const speech = figures({ target: 'fescue', only: 'speech' }, DEMO).figures
const of = (id: string) => speech.filter((one) => one.id === id)

test('the thirds of an octave are a tenth of a decade apart, to the rounding of preferred frequencies', () => {
  // ISO 266: 10^(n/10)
  SPEECH_THIRDS.forEach((frequency, k) => {
    assertClose(frequency, 10 ** (2.3 + k / 10), { relative: 0.016 }, `${frequency} Hz`)
  })
  expect(SPEECH_THIRDS).toHaveLength(14)
})

describe('the figures of speech', () => {
  test('are there at each third of an octave, each once', () => {
    for (const id of ['speech.send', 'speech.receive', 'speech.sidetone', 'speech.impedance'])
      expect(
        of(id)
          .map(({ frequency }) => frequency)
          .sort((p, q) => (p ?? 0) - (q ?? 0)),
      ).toEqual(SPEECH_THIRDS)
    expect(of('speech.return-loss')).toHaveLength(5 * SPEECH_THIRDS.length)
    expect(speech).toHaveLength(9 * SPEECH_THIRDS.length)
  })

  test('have a return loss that follows from the impedance, against each network', () => {
    // 20 lg |(Z + 600)/(Z − 600)|
    for (const { frequency, value } of of('speech.return-loss').filter(({ subject }) =>
      subject.endsWith('against 600 Ω'),
    )) {
      const { re = 0, im = 0 } =
        of('speech.impedance').find((one) => one.frequency === frequency)?.phasor ?? {}
      const expected = 20 * Math.log10(Math.hypot(re + 600, im) / Math.hypot(re - 600, im))
      assertClose(value, expected, { relative: 1e-6 }, `${frequency} Hz`)
    }
  })

  test('have the size of their phasor', () => {
    for (const { value, phasor } of of('speech.impedance'))
      assertClose(value, Math.hypot(phasor?.re ?? 0, phasor?.im ?? 0), { relative: 1e-12 }, 'size')
  })

  test('show with a second set off-hook what the first is not heard of then', () => {
    const both = figures({ target: 'crossing-box', only: 'speech.receive' }, DEMO).figures
    const at = (up: number) =>
      both.filter(
        ({ subject, frequency, condition: { sets } }) =>
          subject === 'relief/receiver' &&
          frequency === 1000 &&
          Object.values(sets).filter(({ hook }) => hook === 'off-hook').length === up,
      )
    const [[alone], [beside]] = [at(1), at(2)]
    expect(beside?.value).toBeLessThan(0.9 * (alone?.value ?? 0))
    expect(beside?.value).toBeGreaterThan(0.3 * (alone?.value ?? 0))
  })

  test('are none of a bell without a handset', () => {
    const [bellset] = contextsOf(stand({ target: 'darnel' }, DEMO))
    expect(bellset && speechCurves(bellset)).toEqual([])
  })

  test('are not solved when they are not wanted', () => {
    const asked: string[] = []
    figures({ target: 'fescue', only: 'loop.current' }, DEMO, (net) => {
      const supplier = freshSupplier(net)
      return (question) => {
        asked.push(question.analysis)
        return supplier(question)
      }
    })
    expect(new Set(asked)).toEqual(new Set(['direct']))
  })
})

describe('the balance of a house', () => {
  const balance = figures({ target: 'station-house', only: 'balance' }, DEMO).figures
  const at = (frequency: number, words: string) =>
    balance.find((one) => one.frequency === frequency && one.subject === words)?.value ?? 0

  test('is given with its ringing lead and with the lead taken off, once for the house', () => {
    expect(new Set(balance.map(({ subject }) => subject))).toEqual(
      new Set(['front', 'front with its ringing lead taken off']),
    )
    expect(balance).toHaveLength(12)
  })

  test('is upset by the lead at broadband frequencies, which its removal mends', () => {
    for (const frequency of [10e3, 100e3, 1e6]) {
      const lead = at(frequency, 'front')
      expect(lead).toBeLessThan(46)
      expect(at(frequency, 'front with its ringing lead taken off')).toBeGreaterThan(lead + 20)
    }
  })

  test('is not spoken of where no cable has the lead', () => {
    expect(figures({ target: 'cottage', only: 'balance' }, DEMO).figures).toEqual([])
    expect(figures({ target: 'fescue', only: 'balance' }, DEMO).figures).toEqual([])
  })
})
