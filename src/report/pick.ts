/** Objects of answers with their keys in a fixed order. */

export type Fields = Readonly<Record<string, unknown>>

/** Named keys of an object in this order, absent ones left out; a key beyond them is the programmer's error. */
export function pick(from: object, keys: readonly string[], replaced: Fields = {}): Fields {
  const strange = Object.keys(from).find((key) => !keys.includes(key))
  if (strange !== undefined) throw new TypeError(`the JSON of answers knows no key ${strange}`)
  const all: Fields = { ...from, ...replaced }
  return Object.fromEntries(keys.filter((key) => all[key] !== undefined).map((key) => [key, all[key]]))
}
