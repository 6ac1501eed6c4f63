/** Resistance of copper wire. */

/** Resistivity of standard annealed copper at 20 °C, Ω·mm²/m. @source IEC 60028 (1925): 1/58, secondary copy. */
export const COPPER_RESISTIVITY: number = 1 / 58
/** Temperature coefficient of its resistance at 20 °C, constant mass, per kelvin. @source IEC 60028, from memory. */
export const COPPER_COEFFICIENT = 0.00393

/**
 * Resistance of one wire.
 * @param diameter in metres @param length in metres @param celsius temperature, 20 °C when absent
 * @returns ohms: ρ·l/(π d²/4)·(1 + α(T − 20))
 */
export function copperResistance(diameter: number, length: number, celsius = 20): number {
  const square = (Math.PI * (diameter * 1000) ** 2) / 4
  return ((COPPER_RESISTIVITY * length) / square) * (1 + COPPER_COEFFICIENT * (celsius - 20))
}
