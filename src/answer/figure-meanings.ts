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
  'leakage.ringing': 'direct current that the set draws while the line rings',
  'ringing.power': 'apparent power of a bell while the line rings',
  'ringing.share': 'share of a bell in the current of all bells, as sizes',
  'ringing.line-current': 'alternating current that the line gives while it rings, rms',
  'ringing.socket-voltage':
    'alternating voltage between the line wires at the socket while the line rings, rms',
  'ringing.load.four-kilohm-unit': 'ringing load of a set as 4 kΩ over its impedance at 25 Hz',
  'ringing.load.unit-ringer':
    'ringing load of a set by counting: how many of it make a given source fall as unit ringers do',
  'ringing.load.type-a': 'ringing load of a set by the limits for 20 Hz and 30 Hz',
  'ringing.load.type-b': 'ringing load of a set by the limit for 15.3 Hz to 68 Hz',
  'ringing.load.older-european': 'ringing load of a set beside 1.8 kΩ and 1 µF in series',
  'ringing.load.sixteen-kilohm':
    'ringing load of a set as 16 kΩ over its impedance at 25 Hz and 50 Hz, the worse',
  'ringing.trip-margin':
    'how far the direct current while ringing stays below what trips the ringing, as a part of that',
  'dial.resistance-made': 'direct-current resistance of the set while its pulse contact is closed',
  'dial.leakage-open': 'direct current that the line still gives while the pulse contact is open',
  'speech.impedance': 'size of the impedance of the set between its line wires off-hook',
  'speech.return-loss': 'return loss of the set against a reference impedance',
  'balance.conversion-loss': 'voltage to earth over the voltage between the wires that it causes, 2 × 300 Ω',
}
