/**
 * Conditions: what the handset, the dial and the key of each set are doing, and the state of the line.
 * A condition never changes a netlist; it opens and closes contacts.
 */
import type { Gate, GateState } from '../parts/kind.ts'

export type Hook = 'on-hook' | 'off-hook'
/** `make`: off-normal with the pulse contact closed; `break`: off-normal with it open. */
export type Dial = 'rest' | 'make' | 'break'
export type Key = 'up' | 'down'
export type LineState = 'idle' | 'ringing' | 'speech'

/** What one set is doing. */
export interface SetCondition {
  readonly hook: Hook
  readonly dial: Dial
  readonly key: Key
}

/** What every set and the line are doing; sets not named are on-hook with dial at rest and key up. */
export interface Condition {
  readonly line: LineState
  readonly sets: Readonly<Record<string, SetCondition>>
}

/** Handset down, dial at rest, key up. */
export const ON_HOOK: SetCondition = { hook: 'on-hook', dial: 'rest', key: 'up' }

/** How one set's condition and the line's state are written together, in JSON. */
export interface WrittenCondition extends SetCondition {
  readonly line: LineState
}

const WORDS: Readonly<Record<string, Partial<WrittenCondition>>> = Object.freeze({
  __proto__: null as never,
  'on-hook': { hook: 'on-hook' },
  'off-hook': { hook: 'off-hook' },
  rest: { dial: 'rest' },
  make: { dial: 'make' },
  break: { dial: 'break' },
  'key-up': { key: 'up' },
  key: { key: 'down' },
  idle: { line: 'idle' },
  ringing: { line: 'ringing' },
  speech: { line: 'speech' },
})

/** Every word a condition may be made of. */
export const CONDITION_WORDS: readonly string[] = Object.keys(WORDS)

/**
 * Reads `on-hook`, `on-hook/ringing`, `off-hook/make`, `off-hook/key` and so on.
 * @returns undefined when a word is unknown or two words contradict each other.
 */
export function readCondition(text: string): WrittenCondition | undefined {
  let all: Partial<WrittenCondition> = {}
  for (const word of text.trim().split('/')) {
    const says = WORDS[word.trim()]
    if (says === undefined) return undefined
    const [key] = Object.keys(says) as (keyof WrittenCondition)[]
    if (key === undefined || key in all) return undefined
    all = { ...all, ...says }
  }
  if (all.hook === undefined) return undefined
  return { hook: all.hook, dial: all.dial ?? 'rest', key: all.key ?? 'up', line: all.line ?? 'idle' }
}

/** Writes a condition the way it is read; what is at rest is left out. */
export function writeCondition(one: WrittenCondition): string {
  const words: string[] = [one.hook]
  if (one.dial !== 'rest') words.push(one.dial)
  if (one.key === 'down') words.push('key')
  if (one.line !== 'idle') words.push(one.line)
  return words.join('/')
}

/** The condition in which one place does this and all others rest as they do, on-hook where nothing is said. */
export function conditionOf(
  place: string,
  one: WrittenCondition,
  rest: Readonly<Record<string, SetCondition>> = {},
): Condition {
  return { line: one.line, sets: { ...rest, [place]: { hook: one.hook, dial: one.dial, key: one.key } } }
}

/** One place's share of a condition, with the line's state. */
export function shareOf(condition: Condition, place: string): WrittenCondition {
  const one = Object.hasOwn(condition.sets, place) ? condition.sets[place] : undefined
  return { ...(one ?? ON_HOOK), line: condition.line }
}

/** A condition as JSON shows it: one object for a single set, a map by place beside others. */
export function describeCondition(condition: Condition, place?: string): string {
  const places = Object.keys(condition.sets)
  const first = place ?? places[0]
  return writeCondition(
    first === undefined ? { ...ON_HOOK, line: condition.line } : shareOf(condition, first),
  )
}

const HOLDS: Readonly<Record<Gate['word'], (one: SetCondition) => boolean>> = {
  'off-hook': (one) => one.hook === 'off-hook',
  'off-normal': (one) => one.dial !== 'rest',
  make: (one) => one.dial === 'make',
  break: (one) => one.dial === 'break',
  key: (one) => one.key === 'down',
}

/** Whether a contact is closed in its set's condition. */
export function gateState(gate: Gate, one: SetCondition): GateState {
  return HOLDS[gate.word](one) === gate.closed ? 'closed' : 'open'
}
