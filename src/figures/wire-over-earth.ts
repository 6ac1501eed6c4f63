/** Electric constant, F/m. @source CODATA 2018, from memory */
const EPSILON = 8.8541878128e-12

/** How far a wire that runs along a wall is from what is earthed in it, m. Our own choice. */
export const USUAL_HEIGHT = 0.01

/**
 * Capacitance of a metre of round wire to an earthed plane, F/m: 2πε₀/arcosh(h/r). Insulation, damp and the other wires
 * of the cable are left out, so that it gives a size and no more.
 * @param gauge diameter of the wire, m @param height from its middle to the plane, m
 * @source wire above a plane: any textbook of electromagnetics
 */
export function wireOverEarth(gauge: number, height: number = USUAL_HEIGHT): number {
  return (2 * Math.PI * EPSILON) / Math.acosh(height / (gauge / 2))
}
