/**
 * The wave of a ringing generator as Fourier coefficients: a sine, or a symmetric trapezoid between a square wave
 * and a triangle, told by its crest factor (peak over rms).
 */

/** A generator's wave. */
export interface RingingWave {
  /** Hz */
  readonly frequency: number
  /** peak over rms of a trapezoid, 1 (square) to √3 (triangle); a sine when absent */
  readonly crest?: number
}

/**
 * The harmonics over which a trapezoid's figures are summed: the odd ones up to the fifteenth. What is left out
 * is 1.3 % of the rms value of a square wave (and of its current in a resistance; less in a bell, whose impedance
 * rises), 0.03 % at a crest factor of 1.25, 0.01 % of a triangle.
 */
export const TRAPEZOID_HARMONICS: readonly number[] = [1, 3, 5, 7, 9, 11, 13, 15]

/** The harmonics over which a wave's figures are summed. */
export function harmonicsOf(wave: RingingWave): readonly number[] {
  return wave.crest === undefined ? [1] : TRAPEZOID_HARMONICS
}

/**
 * Angle that a symmetric trapezoid takes from zero to its peak, rad: 0 for a square wave, π/2 for a triangle.
 * From its mean square, peak²·(1 − 4φ/(3π)) = peak²/crest².
 * @source closed form by integration
 */
export function rampOf(crest: number): number {
  const ramp = ((3 * Math.PI) / 4) * (1 - 1 / (crest * crest))
  return Math.min(Math.max(ramp, 0), Math.PI / 2)
}

/**
 * The h-th Fourier coefficient of a symmetric trapezoid of 1 V rms in phase with sin ωt, V rms: 0 for even h,
 * (4/π)·peak·sin(hφ)/(h²φ)/√2 for odd ones, negative where the harmonic is in opposition.
 * @source Fourier series by integration by parts, any textbook
 */
export function trapezoidHarmonic(crest: number, h: number): number {
  if (h % 2 === 0) return 0
  const angle = h * rampOf(crest)
  const sinc = angle === 0 ? 1 : Math.sin(angle) / angle
  return ((4 / Math.PI) * crest * sinc) / (h * Math.SQRT2)
}

/** How far from a multiple of the ringing frequency an asked frequency may be and still be it. */
const SAME = 1e-9

/**
 * The part of 1 V rms of a wave that lies at ω rad/s, V rms; 0 at what is no harmonic of it: there the generator
 * is at rest, its EMF shorted.
 */
export function waveAt(wave: RingingWave, omega: number): number {
  const ratio = omega / (2 * Math.PI * wave.frequency)
  const h = Math.round(ratio)
  if (h < 1 || Math.abs(ratio - h) > SAME * h) return 0
  if (wave.crest === undefined) return h === 1 ? 1 : 0
  return trapezoidHarmonic(wave.crest, h)
}
