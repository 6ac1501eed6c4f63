/**
 * What the page and its workers say to each other. Every ask is answered by itself: a worker keeps nothing that the
 * page would have to know of, and what it keeps for speed it can make again.
 */
import type {
  Board,
  CheckAnswer,
  Circuit,
  CircuitShown,
  Counts,
  DiagnoseAnswer,
  DiagnosisState,
  Figure,
  FiguresAnswer,
  FollowAnswer,
  IdentifyAnswer,
  IdentifyRequest,
  ListAnswer,
  MeterAnswer,
  Move,
  NextQuestion,
  Outcome,
  Placement,
  Problem,
  SheetKind,
  SheetText,
  Stands,
  Verdict,
} from '../../index.ts'

/** A set as found, where it stands, and the moves made since. */
export interface OnBench {
  readonly set: string
  readonly moves: readonly Move[]
  /** Premises or a line by name, or `none`; the workshop when absent. */
  readonly on?: string
  readonly at?: string
  readonly in?: string
}

/** The set as found, or with the moves. */
export type Side = 'found' | 'proposed'

/** A sheet within reach. */
export interface ShelfRow {
  readonly kind: SheetKind
  readonly name: string
  readonly title?: string
  readonly file: string
  /** The user's own, not the demo's. */
  readonly own: boolean
  /** How many mistakes keep it from being used. */
  readonly problems: number
}

/** A sheet opened for the bench: a rewire brings its set and moves, premises a set that stands there. */
export interface Opened {
  readonly set: string
  readonly title?: string
  readonly moves: readonly Move[]
  readonly notes: readonly string[]
  /** The rewire that it was opened from. */
  readonly rewire?: { readonly name: string; readonly title?: string; readonly file: string }
}

/** The quick half of a judgement, right after a move. */
export interface JudgedQuick {
  readonly board: Board
  /** The moves in words, and the problems of those that the wiring does not allow. */
  readonly moves: readonly string[]
  readonly refused: readonly Problem[]
  readonly verdicts: readonly Verdict[]
  readonly outcome: Outcome
  readonly counts: Counts
  readonly warnings: readonly Problem[]
}

/** What is going on in one condition: the circuit with its currents, and the same by thing for the terminal picture. */
export interface Now {
  readonly shown: CircuitShown
  readonly figures: readonly Figure[]
}

/** Further sheets for one ask, before those of the shelf. */
interface WithTexts {
  readonly texts?: readonly SheetText[]
}

/** The worker of the bench: ask → answer. */
export interface BenchTalk {
  shelf: [ask: { readonly texts: readonly SheetText[] }, answer: readonly ShelfRow[]]
  open: [ask: { readonly kind: 'set' | 'rewire'; readonly name: string }, answer: Opened]
  judge: [ask: { readonly bench: OnBench }, answer: JudgedQuick]
  /** The whole judgement: faults by name with their mends tried, all figures. */
  check: [ask: { readonly bench: OnBench; readonly side: Side }, answer: CheckAnswer]
  now: [
    ask: {
      readonly bench: OnBench
      readonly side: Side
      readonly condition: string
      /** Hz; absent: direct current, or the ringing while the line rings. */
      readonly frequency?: number
      /** The pair reversed where the set is plugged in. */
      readonly reversed?: boolean
    },
    answer: Now,
  ]
  meter: [
    ask: {
      readonly bench: OnBench
      readonly side: Side
      readonly between: readonly [red: string, black: string]
      readonly condition: string
      readonly range?: string
      readonly instrument?: string
      /** On its line; off it, unplugged, when false. */
      readonly live: boolean
    },
    answer: MeterAnswer,
  ]
  speech: [ask: { readonly bench: OnBench; readonly side: Side }, answer: readonly Figure[]]
  premises: [ask: { readonly name: string; readonly bench?: OnBench }, answer: CheckAnswer]
  /** A sheet's problems at their lines. */
  read: [
    ask: { readonly text: SheetText },
    answer: { readonly kind?: SheetKind; readonly name?: string; readonly problems: readonly Problem[] },
  ]
  /** The bench as the text of a rewire sheet; of an old one, comments and order are kept. */
  write: [
    ask: {
      readonly bench: OnBench
      readonly name: string
      readonly title?: string
      readonly notes?: readonly string[]
      readonly old?: SheetText
    },
    answer: { readonly text: string },
  ]
  /** Text of a sheet on the shelf. */
  text: [ask: { readonly kind: SheetKind; readonly name: string }, answer: SheetText]
  list: [ask: { readonly what: string; readonly where?: string }, answer: ListAnswer]
  checkAsked: [
    ask: { readonly request: { target: string; on?: string; at?: string } } & WithTexts,
    answer: CheckAnswer,
  ]
  figuresAsked: [
    ask: { readonly request: { target: string; on?: string; at?: string; only?: string } } & WithTexts,
    answer: FiguresAnswer,
  ]
  followAsked: [
    ask: {
      readonly request: {
        target: string
        on?: string
        at?: string
        condition?: string
        frequency?: number
        from?: string
        to?: string
      }
    } & WithTexts,
    answer: FollowAnswer,
  ]
}

/** What is done next in a diagnosis. */
export type DiagnosisAct =
  | { readonly do: 'answer'; readonly test: string; readonly written: string }
  | { readonly do: 'skip'; readonly test: string }
  | { readonly do: 'undo' }

/** The worker of the long questions. */
export interface StudyTalk {
  shelf: [ask: { readonly texts: readonly SheetText[] }, answer: readonly ShelfRow[]]
  diagnose: [
    ask: {
      readonly bench: OnBench
      readonly symptoms: readonly string[]
      readonly inside: boolean
      readonly live: boolean
      readonly pairs: boolean
      readonly state?: DiagnosisState
      readonly act?: DiagnosisAct
    },
    answer: {
      readonly state: DiagnosisState
      readonly question?: NextQuestion
      readonly result: DiagnoseAnswer
    },
  ]
  identify: [ask: { readonly request: IdentifyRequest }, answer: IdentifyAnswer]
}

/** The worker that places symbols. */
export interface LayoutTalk {
  place: [ask: { readonly circuit: Circuit }, answer: Placement]
}

/** A message to a worker, and what comes back. */
export interface Sent {
  readonly id: number
  readonly what: string
  readonly ask: unknown
}
export type Came =
  | { readonly id: number; readonly answer: unknown }
  /** The request or a sheet was wrong: what the reader shows. */
  | { readonly id: number; readonly problems: readonly Problem[] }
  /** A mistake of ours. */
  | { readonly id: number; readonly broke: string }
  /** How far long work is. */
  | { readonly id: number; readonly tells: string }

/** Re-exported for the views. */
export type { Stands }
