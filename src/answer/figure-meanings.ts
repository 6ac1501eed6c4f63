/** What each figure means, in one sentence. */
import type { FigureId } from '../figures/figure.ts'

export const FIGURE_MEANINGS: Readonly<Record<FigureId, string>> = {
  'resistance.between': 'direct-current resistance between two points, sources at rest',
  'impedance.between': 'size of the impedance between two points at one frequency, sources at rest',
  'loop.resistance': 'direct-current resistance of the set between its line wires',
  'loop.current': 'direct current that both line wires carry',
  'loop.voltage': 'direct voltage between the line wires at the socket',
  'transmitter.current': 'direct current that feeds the transmitter',
  'receiver.direct-current': 'direct current through the receiver',
  'bell.direct-current': 'direct current through a bell',
  'leakage.on-hook': 'direct current that the set draws on-hook',
  'leakage.earth': 'direct current from the set to earth',
  'ringing.current': 'alternating current in a bell while the line rings, rms',
  'ringing.voltage': 'alternating voltage across a bell while the line rings, rms',
  'ringing.capacitors': 'number of capacitors that carry the ringing current of a bell',
  'speech.send': 'current in the termination of the line for 1 V in series with the transmitter, rms',
  'speech.receive': 'current in the receiver for 1 V of the far end behind the termination, rms',
  'speech.sidetone': 'current in the receiver for 1 V in series with the transmitter, rms',
}
