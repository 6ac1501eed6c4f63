/** How far a diagnosis has come: plain data, that can be kept as JSON and taken up again. */

/** What was found out by one test: an answer by its id, one of several, a number in the test's unit, or `open`. */
export type Outcome =
  | { readonly answer: string }
  | { readonly answers: readonly string[] }
  | { readonly x: number }
  | { readonly open: true }

/** One step: what a test showed, or that it was passed over. */
export interface Step {
  /** Id of the test. */
  readonly test: string
  /** Absent where it was passed over. */
  readonly outcome?: Outcome
  /** Said before the first question. */
  readonly given?: true
}

/** What may be asked for. */
export interface Allowed {
  /** Whether the case may be opened. */
  readonly inside: boolean
  /** Whether a test on a live line may be asked for, where nothing safer tells enough. */
  readonly live: boolean
}

/** The whole state. */
export interface State {
  readonly allowed: Allowed
  readonly steps: readonly Step[]
}

/** The beginning: what is known already, and what may be asked. */
export function begin(allowed: Partial<Allowed> = {}, evidence: readonly Step[] = []): State {
  return {
    allowed: { inside: true, live: true, ...allowed },
    steps: evidence.map((one) => ({ ...one, given: true })),
  }
}

/** After a test has shown something. */
export function answer(state: State, test: string, outcome: Outcome): State {
  return { ...state, steps: [...state.steps, { test, outcome }] }
}

/** After a test has been passed over, because it cannot or will not be done: it is not asked for again. */
export function skip(state: State, test: string): State {
  return { ...state, steps: [...state.steps, { test }] }
}

/** Without the last step; what was said before the first question stays. */
export function undo(state: State): State {
  return state.steps.at(-1)?.given ? state : { ...state, steps: state.steps.slice(0, -1) }
}
