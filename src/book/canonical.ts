/** Data as one text that is the same for equal data and differs for all others. */

/**
 * The text of plain data: keys sorted, maps and sets by their content, numbers to the last digit, NaN and infinities
 * by name. What is not there (`undefined`) and functions count for nothing.
 *
 * @param without keys that do not count, wherever they stand: where a sheet's line is written, say
 */
export function canonicalText(value: unknown, without: ReadonlySet<string> = NONE): string {
  if (value === null) return 'null'
  if (typeof value === 'string') return JSON.stringify(value)
  if (typeof value === 'number') return Object.is(value, -0) ? '0' : String(value)
  if (typeof value === 'boolean' || typeof value === 'bigint') return String(value)
  if (typeof value !== 'object') return ''
  if (value instanceof Map) {
    const entries = [...value].map(([key, one]) => pair(canonicalText(key, without), one, without))
    return `Map{${entries.sort().join()}}`
  }
  if (value instanceof Set) {
    return `Set{${[...value]
      .map((one) => canonicalText(one, without))
      .sort()
      .join()}}`
  }
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    return `[${Array.from(value as ArrayLike<unknown>, (one) => canonicalText(one, without)).join()}]`
  }
  const entries = Object.entries(value).filter(
    ([key, one]) => one !== undefined && typeof one !== 'function' && !without.has(key),
  )
  return `{${entries
    .map(([key, one]) => pair(JSON.stringify(key), one, without))
    .sort()
    .join()}}`
}

const NONE: ReadonlySet<string> = new Set()

function pair(key: string, value: unknown, without: ReadonlySet<string>): string {
  return `${key}:${canonicalText(value, without)}`
}
