/**
 * What kernels are told and tell, as one array of `watchSize` numbers: a number handed to a function or back can cost
 * an object on the heap, a place in an array costs none.
 */
export const watchSize = 3

/** In: how often an entry under a kept pivot may be as large as it. */
export const steepestAt = 0

/** Out: size of the largest entry of A, NaN where there is one. */
export const largestOfA = 1

/** Out: size of the largest entry of U. */
export const largestOfU = 2
