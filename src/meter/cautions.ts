/** What whoever holds the leads must know first. */

/** For every reading of a set by itself. */
export const UNPLUG: string =
  'Unplug the set before you open it or hold a lead to it: these readings are of a set that no line reaches. ' +
  'On a live line the ranges of ohms, diode and capacitance ruin the instrument and may hurt its owner.'

/** For readings on a line that is alive. */
export const LIVE: string =
  'These readings are on a live line. Ringing voltage can hurt and may arrive at any moment: take them only with ' +
  'insulated leads, one hand, nothing bare within reach, and only where local codes and licensed practice allow it; ' +
  'otherwise leave them to whoever is licensed. For everything else unplug the set.'
