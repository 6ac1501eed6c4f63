/** The name that was meant: one that differs by little, or the only one that what was written is a part of. */
import { nearest } from '../quantities/nearest.ts'

/** Fewer letters than this are part of too much. */
const LEAST = 3

/** `depot-exchange` for `depot`; undefined where nothing is near, or several are as near. */
export function nearestName(written: string, names: readonly string[]): string | undefined {
  const near = nearest(written, names)
  if (near !== undefined || written.length < LEAST) return near
  const begins = names.filter((name) => name.startsWith(written))
  const holds = begins.length > 0 ? begins : names.filter((name) => name.includes(written))
  const [only, ...others] = [...new Set(holds)]
  return others.length === 0 ? only : undefined
}
