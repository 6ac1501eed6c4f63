/** The door of this folder: every reader of quantities, and the shapes they return. */
export type { QuantityFault, QuantityFaultCode, Refused } from './fault.ts'
export { type At, type PairResult, type Phasor, readAt, readPhasor, readSpan, type Span } from './pairs.ts'
export { longestQuantity, type QuantityRange, type QuantityResult, readQuantity } from './read-quantity.ts'
export { DIMENSIONS, type Dimension, type Quantity, type UnitName } from './units.ts'
