/**
 * The middles of the thirds of an octave from 200 Hz to 4 kHz, Hz.
 * @source ISO 266 and IEC 61260-1, preferred frequencies, from memory
 */
export const SPEECH_THIRDS: readonly number[] = [
  200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000,
]
