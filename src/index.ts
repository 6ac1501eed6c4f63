/** The library: everything that is promised, by hand. */
export type {
  Amount,
  Because,
  BecauseSide,
  CheckAnswer,
  CompareAnswer,
  Counts,
  Envelope,
  FiguresAnswer,
  FollowAnswer,
  ListAnswer,
  Outcome,
  SolveAnswer,
} from './answer/answer.ts'
export { type Bench, openBench } from './answer/bench/bench.ts'
export type { NowAsked } from './answer/bench/now-of.ts'
export { type OpenedSheet, openSheet, readProblems, type SheetToOpen } from './answer/bench/open-sheet.ts'
export type { BenchSide, QuickJudgement } from './answer/bench/side.ts'
export { type BookOrder, type BookRequest, stretchMaker } from './answer/book-order.ts'
export { type CheckRequest, check, verdictsAsked } from './answer/check-answer.ts'
export { type CompareRequest, compare } from './answer/compare.ts'
export { USUAL_CONDITIONS } from './answer/condition-of-request.ts'
export {
  type DiagnoseRequest,
  type Diagnosis,
  type DiagnosisState,
  diagnose,
  openDiagnosis,
} from './answer/diagnose.ts'
export type {
  DiagnoseAnswer,
  NextQuestion,
  PossibleCause,
  PossibleGroup,
  WhatIf,
} from './answer/diagnose-answer.ts'
export { type DrawAnswer, type DrawRequest, draw, PICTURES, type PictureName } from './answer/draw.ts'
export { VERSION } from './answer/envelope.ts'
export type { EqualBells } from './answer/equal-bells.ts'
export { type BookMeans, type FaultsRequest, faults } from './answer/faults.ts'
export type { FaultsAnswer } from './answer/faults-answer.ts'
export { type FiguresRequest, figures } from './answer/figures.ts'
export { type FollowRequest, follow } from './answer/follow.ts'
export { type Identifier, type IdentifyRequest, identifier, identify } from './answer/identify.ts'
export type {
  IdentifiedGroup,
  IdentifiedSet,
  IdentifyAnswer,
  IdentifyFinding,
  IdentifyNext,
  IdentifyOutcome,
} from './answer/identify-answer.ts'
export { LISTS, list } from './answer/list.ts'
export { type MeterRequest, meter } from './answer/meter.ts'
export type { MeterAnswer } from './answer/meter-answer.ts'
export { circuitShown, now } from './answer/now.ts'
export type { SecondOpinion } from './answer/second-opinion.ts'
export { type SolveRequest, solve } from './answer/solve.ts'
export { type SolveOptions, solveCircuit } from './answer/solve-answer.ts'
export type { Spot, SpotAsked } from './answer/spot.ts'
export { type SpreadRequest, spread } from './answer/spread.ts'
export type { SpreadAnswer, SpreadValue } from './answer/spread-answer.ts'
export type { Where } from './answer/standing.ts'
export type { PlugContact, SheetNote, StandingPlace, StandingSocket, Stands } from './answer/stands.ts'
export type { Tell } from './answer/tell.ts'
export { type Crew, crewHere, type MadeStretch, type Stretch, type StretchMaker } from './book/crew.ts'
export type { BookStore } from './book/store.ts'
export { CAUTIONS, type Caution, cautionText } from './cautions.ts'
export type { Consequence, Reason, Verdict, VerdictLimit, VerdictState } from './checks/rule.ts'
export type { Figure, FigureId, FigureUnit, State } from './figures/figure.ts'
export type { MeterReading } from './meter/reading.ts'
export {
  type Condition,
  readCondition,
  type SetCondition,
  type WrittenCondition,
  writeCondition,
} from './netlist/condition.ts'
export type {
  Board,
  BoardCore,
  BoardEnd,
  BoardPart,
  BoardSlot,
  BoardStrap,
  BoardStrip,
  Change,
  CoreColour,
} from './picture/board/board.ts'
export { boardOf } from './picture/board/board-of.ts'
export { drawBoard } from './picture/board/draw-board.ts'
export type { DrawBoardOptions } from './picture/board/options.ts'
export type {
  Circuit,
  CircuitEnd,
  CircuitLink,
  CircuitNode,
  CircuitPiece,
  CircuitZone,
  Flow,
  NodeLook,
  PlacedBox,
  Placement,
  Turn,
} from './picture/circuit/circuit.ts'
export { type CircuitOptions, circuitOf } from './picture/circuit/circuit-of.ts'
export type { DrawCircuitOptions } from './picture/circuit/draw/options.ts'
export { drawCircuit } from './picture/circuit/draw-circuit.ts'
export { type Currents, flowsOf } from './picture/circuit/flows.ts'
export { type Frame, frameOf, nodeFrame } from './picture/circuit/frame.ts'
export type { CircuitShown } from './picture/circuit/shown.ts'
export { type DrawCurvesOptions, drawCurves } from './picture/curves/draw-curves.ts'
export { standalone } from './picture/look.ts'
export { type Mark, mark, markText } from './picture/mark.ts'
export { type Thing, type ThingSort, thingParts } from './picture/thing.ts'
export { type Place, PROBLEM_CODES, type Problem, type ProblemCode, ProblemError, refuse } from './problem.ts'
export { formatQuantity } from './quantities/format.ts'
export { nearest } from './quantities/nearest.ts'
export { type Quantity, type QuantityFault, readQuantity } from './quantities/quantity.ts'
export { placeAbout } from './report/about-place.ts'
export { figureName, figureText, limitAmount, limitText, silentBells } from './report/amounts.ts'
export {
  outcomeText as identifyOutcome,
  saidText as identifySaid,
  shareText as identifyShare,
  whereText as identifyWhere,
} from './report/identify-words.ts'
export { type Json, jsonText, problemsEnvelope, toJson } from './report/json.ts'
export { ANSWER_SCHEMAS, type AnswerName, answerJsonSchema } from './report/json-answers.ts'
export { type Paint, PLAIN } from './report/paint.ts'
export { shortId, subjectText } from './report/place-names.ts'
export { type Answer, answerText, type Page } from './report/text.ts'
export { speaksText as diagnosisSpeaks } from './report/text-diagnosis.ts'
export {
  numberedAnswers as identifyAnswers,
  questionText as identifyQuestion,
  reasonsText as identifyReasons,
  soFarText as identifySoFar,
} from './report/text-identify-question.ts'
export { identifyVerdict } from './report/text-identify-verdict.ts'
export { problemsText } from './report/text-problems.ts'
export {
  amountText as tellsText,
  EXAMPLES as DIAGNOSIS_EXAMPLES,
  outcomeText as diagnosisOutcome,
  pointText as diagnosisPoint,
  questionText as diagnosisQuestion,
  refusedText as diagnosisRefused,
  seenText as diagnosisSeen,
  shareText as diagnosisShare,
  soFarText as diagnosisSoFar,
  whyText as diagnosisReasons,
} from './report/text-question.ts'
export { conditionWords, VERDICT_WORDS } from './report/words.ts'
export { type JsonSchema, sheetJsonSchema } from './sheet/json-schema.ts'
export type { Move, Sheet, SheetKind } from './sheet/model.ts'
export { type Presented, presentedBy } from './sheet/presented.ts'
export { readSheet as readSheetText } from './sheet/read.ts'
export type { Reading } from './sheet/reading.ts'
export { SHEET_KINDS } from './sheet/schema.ts'
export type { SheetText, Shelf } from './sheet/shelf.ts'
export { textShelf } from './sheet/text-shelf.ts'
export { type RewireAsked, rewireText } from './sheet/write-rewire.ts'
export { DRAW_LAWS, type DrawLaw } from './spread/draws.ts'
export type { FigureSpread, PartShare, Percentiles, Pull } from './spread/study.ts'
export type { VerdictSpread } from './spread/verdicts.ts'
