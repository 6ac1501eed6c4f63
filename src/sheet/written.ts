/** What was read, as plain data that a sheet writes: quantities as people wrote them, truth as `yes` and `no`. */
import { readPhasor } from '../quantities/quantity.ts'
import type { Move } from './model.ts'

/** Data that YAML holds as it is. */
export type Plain = string | number | readonly Plain[] | { readonly [key: string]: Plain }

/** A move as a rewire writes it: the word that says what is done, then what belongs to it. */
export function writtenMove(move: Move): { readonly [key: string]: Plain } {
  const { do: action, what, ...rest } = move
  const { place: _, ...own } = rest as Record<string, unknown>
  return { [action]: what, ...writtenMap(own) }
}

function writtenMap(map: Readonly<Record<string, unknown>>): { readonly [key: string]: Plain } {
  const said = Object.entries(map).filter(([, value]) => value !== undefined)
  return Object.fromEntries(said.map(([key, value]) => [key, written(value)]))
}

function written(value: unknown): Plain {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (Array.isArray(value)) return value.map(written)
  if (typeof value !== 'object' || value === null) return typeof value === 'number' ? value : String(value)
  const text = quantityIn(value)
  return text === undefined ? writtenMap(value as Record<string, unknown>) : bare(text)
}

/** A quantity or two of them as one text; undefined for anything else. */
function quantityIn(value: object): string | undefined {
  const { text, at, least, most, magnitude, angle, value: held } = value as Record<string, unknown>
  if (typeof text === 'string') return text
  const [first, second] = [held ?? least ?? magnitude, at ?? most].map(textOf)
  if (first === undefined) return undefined
  if (typeof angle === 'number') return angle === 0 ? first : `${first} at ${degreesOf(angle)}°`
  if (second === undefined) return undefined
  return at === undefined ? `${first} to ${second}` : `${first} at ${second}`
}

function textOf(value: unknown): string | undefined {
  const text = (value as { text?: unknown } | null | undefined)?.text
  return typeof text === 'string' ? text : undefined
}

/** The shortest number of degrees that is read as this angle, radians. */
function degreesOf(angle: number): string {
  const degrees = (angle * 180) / Math.PI
  for (let digits = 1; digits < 17; digits += 1) {
    const text = String(Number(degrees.toPrecision(digits)))
    const read = readPhasor(`1 V at ${text}°`)
    if (read.ok && read.value.angle === angle) return text
  }
  return String(degrees)
}

/** A ratio may stand without a unit; it is then a number, which needs no quotation marks. */
function bare(text: string): Plain {
  return String(Number(text)) === text ? Number(text) : text
}
