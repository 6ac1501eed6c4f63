/**
 * What kernels are told and tell, as one array of `watchSize` numbers: a number handed to a function or back can cost
 * an object on the heap, a place in an array costs none.
 */
export const watchSize = 4

/** In: share of its column in U below which a kept pivot is lost. */
export const floorAt = 0

/** In: how often an entry under a kept pivot may be as large as it. */
export const steepestAt = 1

/** Out: size of the largest entry of A, NaN where there is one. */
export const largestOfA = 2

/** Out: size of the largest entry of U. */
export const largestOfU = 3
