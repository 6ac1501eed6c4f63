/** What is heard: dial tone, the far end, the own voice, and whether a talk is possible at all. */
import type { BenchAnswer, BenchTest } from '../bench-test.ts'
import { amiss, ask, fine } from './ask.ts'
import { hasContact, type OnLine } from './bench-set.ts'
import { loopSeen } from './loop.ts'
import { type Loudness, loudnessOf } from './loudness.ts'
import { least, type Measure } from './measure.ts'

/** Loudness at which a sound is faint no more, and below which nothing is heard. */
export function speechCuts(bench: OnLine): readonly number[] {
  return [bench.limit('heard-at-all'), bench.limit('speech-left')]
}

/** Dial tone at a set that is lifted: a loop for the exchange, and a receiver that sounds. */
export function toneAt(bench: OnLine, { received }: Loudness): Measure | undefined {
  const [none = 0] = speechCuts(bench)
  if (received === undefined || !hasContact(bench, 'off-hook')) return undefined
  return least(received, loopSeen(bench, none))
}

const FAR_END: readonly BenchAnswer[] = [
  amiss('no', 'not at all'),
  amiss('faint', 'faintly', 'yes'),
  fine('well', 'well', 'yes'),
]

/** Symptoms of speech, in the order in which a person meets them. */
export function speechTests(bench: OnLine): readonly BenchTest[] {
  const cuts = speechCuts(bench)
  const [none = 0, well = 1] = cuts
  const loudness = loudnessOf(bench)
  const { own } = loudness
  const tone = toneAt(bench, loudness)
  const called = loopSeen(bench, none)
  const sent = loudness.sent && least(loudness.sent, called)
  const received = loudness.received && least(loudness.received, called)
  const tests: BenchTest[] = []
  if (tone !== undefined) {
    tests.push(
      ask(bench, {
        id: 'tone',
        asks: 'Is there dial tone when you lift the handset?',
        how: 'With the line at rest lift the handset and listen, dial at rest.',
        when: 'off-hook',
        measure: tone,
        answers: [amiss('none', 'none', 'no'), amiss('faint', 'faint', 'yes'), fine('clear', 'clear', 'yes')],
        cuts,
      }),
    )
  }
  if (sent !== undefined) {
    tests.push(
      ask(bench, {
        id: 'heard',
        asks: 'Does the far end hear you?',
        how: 'Have somebody call this line or call somebody, from another telephone if this one does not; lift, speak as usual, and ask how loud you are.',
        when: 'off-hook/speech',
        effort: 'in-use-helped',
        measure: sent,
        answers: FAR_END,
        cuts,
      }),
    )
  }
  if (received !== undefined) {
    tests.push(
      ask(bench, {
        id: 'hears',
        asks: 'Do you hear the far end?',
        how: 'In the same call let the far end speak as usual, and listen.',
        when: 'off-hook/speech',
        effort: 'in-use-helped',
        measure: received,
        answers: FAR_END,
        cuts,
      }),
    )
  }
  if (sent !== undefined && received !== undefined) {
    tests.push(
      ask(bench, {
        id: 'talk',
        asks: 'Can you talk with the far end, both ways, as loud as usual?',
        how: 'In a call speak and listen in turn.',
        when: 'off-hook/speech',
        effort: 'in-use-helped',
        measure: least(sent, received),
        answers: [amiss('no', 'no: one way or both fail or are faint'), fine('yes', 'yes')],
        cuts: [well],
      }),
    )
  }
  if (own !== undefined) {
    tests.push(
      ask(bench, {
        id: 'own-voice',
        asks: 'How loud is your own voice in the receiver?',
        how: 'Lift the handset, dial one digit so that the tone goes, and blow gently into the transmitter.',
        when: 'off-hook/speech',
        measure: own,
        answers: [
          amiss('none', 'not there'),
          fine('normal', 'there, and quieter than a caller'),
          amiss('loud', 'uncomfortably loud'),
        ],
        cuts: [bench.limit('own-voice-heard'), bench.limit('own-voice-loud')],
      }),
    )
  }
  return tests
}
