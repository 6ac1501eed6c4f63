import picocolors from 'picocolors'
import { type Paint, PLAIN } from '../index.ts'

/** Colours for a terminal, or none. */
export function colours(wanted: boolean): Paint {
  if (!wanted) return PLAIN
  const { bold, dim, green, red, yellow } = picocolors.createColors(true)
  return { bold, dim, good: green, bad: red, warn: yellow }
}
