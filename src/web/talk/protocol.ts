/**
 * What the page and its workers say to each other. Every ask is answered by itself: a worker keeps nothing that the
 * page would have to know of, and what it keeps for speed it can make again.
 */
import type {
  Board,
  CheckAnswer,
  CircuitShown,
  CompareAnswer,
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
  Problem,
  SheetKind,
  SheetText,
  SolveAnswer,
  Stands,
  Verdict,
} from '../../index.ts'
import type { PartForm } from './part-forms.ts'

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
  /** Absent where the text does not say what it is, which only the user's own may fail to. */
  readonly sheet?: SheetKind
  /** Its name; that of its file where it tells none. */
  readonly name: string
  readonly title?: string
  readonly file: string
  /** The user's own, not the demo's. */
  readonly own: boolean
  /** How many mistakes keep it from being used. */
  readonly problems: number
}

/** Sheets within reach: the demo's, and the user's own, which come first where names are the same. */
export interface ShelfAsk {
  readonly packaged: readonly SheetText[]
  readonly texts: readonly SheetText[]
}

/** A sheet opened for the bench: a rewire brings its set and moves, premises a set that stands there. */
export interface Opened {
  readonly set: string
  /** The premises and the place, where these were opened. */
  readonly on?: string
  readonly at?: string
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
  /** Which of the moves those are, counted from 0; the same length as `refused`. */
  readonly refusedMoves: readonly number[]
  /** Line, premises, sockets and what stands in them. */
  readonly stands: Stands
  /** Conditions that this set can be in, as they are written: `on-hook`, `off-hook/break`, `on-hook/ringing`. */
  readonly conditions: readonly string[]
  /** Faults by name are not counted yet: `check` tells them. */
  readonly verdicts: readonly Verdict[]
  readonly outcome: Outcome
  readonly counts: Counts
  readonly warnings: readonly Problem[]
}

/** What a diagnosis is about, and what is known before the first question. */
export interface DiagnosisAsk {
  readonly bench: OnBench
  /** The set as found, or with the moves; the latter when absent. */
  readonly side?: Side
  /** Complaints by id, as `complaints` of the first answer lists them. */
  readonly symptoms: readonly string[]
  /** Other outcomes known before: `test=outcome`. */
  readonly observed?: readonly string[]
  /** Readings made before. */
  readonly readings?: readonly string[]
  readonly inside: boolean
  readonly live: boolean
  readonly pairs: boolean
  readonly instrument?: string
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
  shelf: [ask: ShelfAsk, answer: readonly ShelfRow[]]
  /** Of premises where several sets stand, `at` says the place; without it the problem names them. */
  open: [
    ask: { readonly sheet: 'set' | 'rewire' | 'premises'; readonly name: string; readonly at?: string },
    answer: Opened,
  ]
  judge: [ask: { readonly bench: OnBench }, answer: JudgedQuick]
  /** Judges ahead, and keeps it: what is asked next may be this. */
  prepare: [ask: { readonly bench: OnBench }, answer: null]
  /** The whole judgement: faults by name with their mends tried, all figures. */
  check: [ask: { readonly bench: OnBench; readonly side: Side }, answer: CheckAnswer]
  /** The set as found beside the set with the moves, what changes, and which moves do it. Slow: a second or so. */
  compare: [ask: { readonly bench: OnBench }, answer: CompareAnswer]
  now: [
    ask: {
      readonly bench: OnBench
      readonly side: Side
      readonly condition: string
      /** Hz; absent: direct current, or the ringing while the line rings. */
      readonly frequency?: number
      /** The pair turned over where the set is plugged in, against how it stands there. */
      readonly reversed?: boolean
    },
    answer: Now,
  ]
  meter: [
    ask: {
      readonly bench: OnBench
      readonly side: Side
      /** Two points as a person writes them: `plug.a`, `A3`, `handset.t1`. Absent: the whole table. */
      readonly between?: readonly [red: string, black: string]
      /** For one reading; on-hook when absent. */
      readonly condition?: string
      readonly range?: string
      readonly instrument?: string
      /** On its line; off it, unplugged, when false. */
      readonly live: boolean
    },
    answer: MeterAnswer,
  ]
  speech: [ask: { readonly bench: OnBench; readonly side: Side }, answer: readonly Figure[]]
  /** All sets of premises judged; the set on the bench with its moves stands in its place where `bench` stands there. */
  premises: [ask: { readonly name: string; readonly bench?: OnBench }, answer: CheckAnswer]
  /** A sheet's problems at their lines. */
  read: [
    ask: { readonly text: SheetText },
    answer: { readonly sheet?: SheetKind; readonly name?: string; readonly problems: readonly Problem[] },
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
  text: [ask: { readonly sheet: SheetKind; readonly name: string }, answer: SheetText]
  list: [ask: { readonly what: string }, answer: ListAnswer]
  /** Kinds of part that can be fitted by a form, and what each asks for. */
  partForms: [ask: null, answer: readonly PartForm[]]
  /** A part that was typed in, read by the sheets' own reader; its problems are thrown. */
  partMove: [
    ask: {
      readonly set: string
      readonly name: string
      readonly part: string
      readonly values: Readonly<Record<string, string>>
    },
    answer: Move,
  ]
  checkAsked: [
    ask: { readonly request: { target: string; on?: string; at?: string } } & WithTexts,
    answer: CheckAnswer,
  ]
  /** Some checks alone, by their ids. */
  verdictsAsked: [
    ask: {
      readonly request: { target: string; on?: string; at?: string }
      readonly checks: readonly string[]
    } & WithTexts,
    answer: readonly Verdict[],
  ]
  figuresAsked: [
    ask: { readonly request: { target: string; on?: string; at?: string; only?: string } } & WithTexts,
    answer: FiguresAnswer,
  ]
  /** Currents and voltages of all branches, for the lesson's pictures. */
  solveAsked: [
    ask: { readonly request: { target: string; condition?: string; frequency?: number } } & WithTexts,
    answer: SolveAnswer,
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
  shelf: [ask: ShelfAsk, answer: readonly ShelfRow[]]
  diagnose: [
    ask: DiagnosisAsk & {
      /** Where the diagnosis has come to, as the last answer gave it; its beginning when absent. */
      readonly state?: DiagnosisState
      readonly act?: DiagnosisAct
    },
    /** A `written` that cannot be understood is refused with what would be; the state stays as it was. */
    answer: {
      readonly state: DiagnosisState
      readonly question?: NextQuestion
      readonly result: DiagnoseAnswer
    },
  ]
  /** The whole of what was read and seen so far; the sheets are laid out once. */
  identify: [ask: { readonly request: IdentifyRequest }, answer: IdentifyAnswer]
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
