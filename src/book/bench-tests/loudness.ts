/** How loud speech comes out, beside the same transmitter or receiver in good order straight across the same line. */
import type { Changes, FigurePlan } from '../../figures/figure.ts'
import { SPEECH_FREQUENCY, speechPlans } from '../../figures/speech.ts'
import { straightAcross } from '../../figures/straight.ts'
import { OPEN } from '../../figures/variants.ts'
import type { Branch } from '../../netlist/netlist.ts'
import type { LawSink, PartLaw, PartSpec } from '../../parts/kind.ts'
import { USUAL_SENSITIVITY } from '../../parts/receiver.ts'
import type { Quantity } from '../../quantities/quantity.ts'
import type { SpecAt } from '../bench-test.ts'
import { whenSet } from './ask.ts'
import { firstOf, type OnLine, partOf, plugLinksOf } from './bench-set.ts'
import { flowing, type Measure } from './measure.ts'

/** Measures of speech; each absent where the handset lacks the part for it. */
export interface Loudness {
  /** At the far end, for the own voice. */
  readonly sent?: Measure
  /** In the own receiver, for a voice or a tone from the far end. */
  readonly received?: Measure
  /** In the own receiver, for the own voice: 1 where it is as loud as an equal speaker at the far end straight across. */
  readonly own?: Measure
  /** As `received`, while the dial is off its rest with its pulse contact closed. */
  readonly dialling?: Measure
}

/** How loud a set is in each direction on the line where it stands. */
export function loudnessOf(bench: OnLine): Loudness {
  const sender = firstOf(bench, 'sender')
  const receiver = firstOf(bench, 'receiver')
  const heard = receiver && full(bench, 'speech.receive', receiver)
  const said = sender && full(bench, 'speech.send', sender)
  const drive = sender && fullDrive(bench, sender)
  const sent = sender && said && drive ? sentBy(bench, sender, said * drive) : undefined
  const received = receiver && heard ? receivedBy(bench, receiver, 'off-hook/speech', heard) : undefined
  const dialling = receiver && heard ? receivedBy(bench, receiver, 'off-hook/make/speech', heard) : undefined
  const own =
    sender && receiver && heard && drive ? ownVoice(bench, sender, receiver, heard * drive) : undefined
  return {
    ...(sent === undefined ? {} : { sent }),
    ...(received === undefined ? {} : { received }),
    ...(own === undefined ? {} : { own }),
    ...(dialling === undefined ? {} : { dialling }),
  }
}

/** What the sound part gives straight across the line, A for 1 V; undefined where nothing passes. */
function full(bench: OnLine, id: 'speech.send' | 'speech.receive', part: Branch): number | undefined {
  const condition = whenSet(bench, 'off-hook/speech')
  const { line, socket } = bench
  const amount = bench.amount(
    straightAcross(id, bench.net, { line, socket, part, condition, frequency: SPEECH_FREQUENCY }),
  )
  return amount > 0 && amount < OPEN ? amount : undefined
}

function receivedBy(bench: OnLine, receiver: Branch, words: string, due: number): Measure {
  const { line } = bench
  const [, plan] = speechPlans({ line, sender: receiver, receiver }, whenSet(bench, words))
  const { index, spec } = partOf(bench.net, receiver)
  return {
    plans: plan === undefined ? [] : [plan],
    of: ([current], specs) => (flowing(current) * sensitivity(specs(index), spec)) / due,
  }
}

/**
 * A transmitter gives in proportion to the direct voltage across it (design 6), so that its sound at the far end is
 * that voltage times what passes of each volt.
 */
function sentBy(bench: OnLine, sender: Branch, due: number): Measure {
  const { line } = bench
  const [plan] = speechPlans({ line, sender, receiver: sender }, whenSet(bench, 'off-hook/speech'))
  return driven(bench, sender, plan, (current) => current / due)
}

function ownVoice(bench: OnLine, sender: Branch, receiver: Branch, due: number): Measure {
  const { line } = bench
  const [, , plan] = speechPlans({ line, sender, receiver }, whenSet(bench, 'off-hook/speech'))
  const { index, spec } = partOf(bench.net, receiver)
  return driven(bench, sender, plan, (current, specs) => (current * sensitivity(specs(index), spec)) / due)
}

/** What passes of each volt, times the volts that the transmitter gives. */
function driven(
  bench: OnLine,
  sender: Branch,
  passes: FigurePlan | undefined,
  make: (current: number, specs: SpecAt) => number,
): Measure {
  const { index, spec } = partOf(bench.net, sender)
  const { law } = sender.part
  return {
    plans: [directVoltage(bench, sender), ...(passes === undefined ? [] : [passes])],
    of: ([volts, current], specs) =>
      make(flowing(volts) * flowing(current), specs) * alive(law, spec, specs(index)),
  }
}

/** The direct voltage across a transmitter off-hook, V. */
function directVoltage(bench: OnLine, { id, from, to }: Branch, changes: Changes = {}): FigurePlan {
  const condition = whenSet(bench, 'off-hook')
  return {
    id: 'loop.voltage',
    subject: id,
    condition,
    unit: 'V',
    taps: [{ question: { analysis: 'direct', condition, ...changes }, voltage: [from, to] }],
    value: ([volts = 0]) => Math.abs(volts),
  }
}

/** Steps in which a resistance that hangs on its own current is found; each takes most of what is left. */
const STEPS = 12
/** The current at which two transmitters are compared, A. */
const COMPARED_AT = 0.04

/**
 * The direct voltage across the sound transmitter by itself straight across the socket, V: the set is unplugged, and
 * a resistance in its place is made that of the transmitter at the current that it lets through.
 */
function fullDrive(bench: OnLine, sender: Branch): number | undefined {
  const { net, place, socket } = bench
  const lifted = plugLinksOf(net, [place])
  const { law, spec } = sender.part
  let ohms = chord(law, spec, COMPARED_AT)
  let volts = 0
  for (let step = 0; step < STEPS && ohms > 0; step += 1) {
    const bridges = [{ from: socket.a, to: socket.b, ohms }]
    const plan = directVoltage(bench, { ...sender, from: socket.a, to: socket.b }, { lifted, bridges })
    volts = bench.amount(plan)
    if (!(volts > 0 && volts < OPEN)) return undefined
    ohms = chord(law, spec, volts / ohms)
  }
  return volts > 0 ? volts : undefined
}

/**
 * How much of a transmitter's resistance still moves with the voice, as a share of what moved when it was sound. Packed
 * grains and caked ones stand still: the further its resistance is from its sheet's, up or down, the less of it moves,
 * by the square of the ratio. Our own law, from memory; no source tells more than that both speak faintly.
 */
function alive(law: PartLaw, sound: PartSpec, now: PartSpec): number {
  if (now === sound) return 1
  const ratio = chord(law, now, COMPARED_AT) / chord(law, sound, COMPARED_AT)
  if (!(ratio > 0)) return 1
  return Math.min(ratio, 1 / ratio) ** 2
}

/** What speech finds of a part at a direct current: the resistance in its law, ohms. */
function chord(law: PartLaw, spec: PartSpec, current: number): number {
  let ohms = 0
  const sink: LawSink = {
    admittance: (_branch, yRe) => {
      ohms = 1 / yRe
    },
    equation: (_branch, a, zRe) => {
      ohms = a === 0 ? 0 : zRe / a
    },
    mutual: () => undefined,
  }
  const omega = 2 * Math.PI * SPEECH_FREQUENCY
  law.law(spec, { analysis: 'alternating', omega, direct: () => ({ voltage: 0, current }) }, 'closed', sink)
  return ohms
}

/** Sound of a receiver for its current, as a share of what it was when sound; sheets tell it in dB. */
function sensitivity(now: PartSpec, sound: PartSpec): number {
  return now === sound ? 1 : 10 ** ((levelOf(now) - levelOf(sound)) / 20)
}

function levelOf(spec: PartSpec & { readonly sensitivity?: Quantity }): number {
  return spec.sensitivity?.value ?? USUAL_SENSITIVITY
}
