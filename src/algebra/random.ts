/** Numbers that look random and are the same for the same seed. */

/**
 * A generator of numbers from 0 up to, not including, 1: 32 bits of state, stepped by an odd constant and mixed.
 * Good enough to choose samples by; not for secrets.
 * @source Steele, Lea and Flood, Fast splittable pseudorandom number generators (2014), scheme; from memory
 */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let mixed = state
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b)
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32
  }
}
