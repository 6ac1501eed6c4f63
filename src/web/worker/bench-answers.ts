/** What the bench's worker answers. It keeps what it has read; all of that it can read again. */
import {
  type Bench,
  type BenchSide,
  check,
  compare,
  figures,
  follow,
  list,
  meter,
  openBench,
  openSheet,
  readProblems,
  rewireText,
  SHEET_KINDS,
  solve,
  verdictsAsked,
} from '../../index.ts'
import type { BenchTalk, JudgedQuick, OnBench, Side } from '../talk/protocol.ts'
import { partForms, partMove } from './part-asks.ts'
import type { Answers } from './serve-asks.ts'
import { benchText, groundOf, NO_SHEETS, sheetsOf, textOf } from './sheets.ts'

/** So many benches are kept open: the one at work, and those beside which it is looked at. */
const KEPT = 4

/** Answers that share what they have read. */
export function benchAnswers(): Answers<BenchTalk> {
  let sheets = sheetsOf(NO_SHEETS)
  const benches = new Map<string, Bench>()
  const benchOf = (one: OnBench): Bench => {
    const where = { target: `set/${one.set}`, ...groundOf(one) }
    const key = JSON.stringify(where)
    const bench = benches.get(key) ?? openBench(where, sheets.shelf)
    benches.delete(key)
    benches.set(key, bench)
    const [oldest] = benches.keys()
    if (benches.size > KEPT && oldest !== undefined) benches.delete(oldest)
    return bench
  }
  const sideOf = (one: OnBench, side: Side = 'proposed'): BenchSide =>
    benchOf(one).side(side === 'found' ? [] : one.moves)

  return {
    shelf: (asked) => {
      sheets = sheetsOf(asked)
      benches.clear()
      return sheets.rows()
    },
    open: ({ sheet, ...asked }) => openSheet({ kind: sheet, ...asked }, sheets.shelf),
    judge: ({ bench }) => judged(sideOf(bench)),
    prepare: ({ bench }) => {
      judged(sideOf(bench))
      return null
    },
    check: ({ bench, side }, tells) => sideOf(bench, side).check(tells),
    compare: ({ bench }, tells) => {
      const text = benchText(bench, sideOf(bench).made, sheets.shelf)
      const found = { found: text.file, foundText: text, ...groundOf(bench) }
      const same = { proposed: text.file, proposedText: text }
      // without moves both sides are the set itself
      return compare(sideOf(bench).made.length === 0 ? { ...found, ...same } : found, sheets.shelf, tells)
    },
    now: ({ bench, side, ...asked }) => sideOf(bench, side).now(asked),
    meter: ({ bench, side, live, ...asked }, tells) => {
      const one = sideOf(bench, side)
      const text = benchText(bench, one.made, sheets.shelf)
      // without ground a meter reads a set by itself; on its line it stands where the bench stands
      const { premises } = one.stands()
      const on = live ? { ...(premises === null ? {} : { on: premises }), ...groundOf(bench) } : {}
      return meter({ target: text.file, text, ...asked, ...on }, sheets.shelf, tells)
    },
    speech: ({ bench, side }) => sideOf(bench, side).speech(),
    premises: ({ name, bench }, tells) => {
      const side = bench && sideOf(bench)
      return side !== undefined && side.stands().premises === name
        ? side.premises(tells)
        : check({ target: `premises/${name}` }, sheets.shelf, undefined, tells)
    },
    partForms: () => partForms(),
    partMove: ({ set, name, part, values }) => partMove(set, name, part, values),
    read: ({ text }) => {
      const { kind: word, name, problems } = readProblems(text, sheets.with([text]))
      const which = SHEET_KINDS.find((one) => one === word)
      return {
        ...(which === undefined ? {} : { sheet: which }),
        ...(name === undefined ? {} : { name }),
        problems,
      }
    },
    write: ({ bench: { set, moves }, ...asked }) => ({ text: rewireText({ set, moves, ...asked }) }),
    text: ({ sheet: which, name }) => textOf(which, name, sheets.shelf),
    list: ({ what }) => list({ what }, sheets.shelf),
    checkAsked: ({ request, texts }, tells) => check(request, sheets.with(texts), undefined, tells),
    verdictsAsked: ({ request, checks, texts }) => verdictsAsked(request, checks, sheets.with(texts)),
    figuresAsked: ({ request, texts }, tells) => figures(request, sheets.with(texts), undefined, tells),
    solveAsked: ({ request, texts }) => solve(request, sheets.with(texts)),
    followAsked: ({ request, texts }) => follow(request, sheets.with(texts)),
  }
}

/** The quick half of a judgement. */
function judged(side: BenchSide): JudgedQuick {
  const { moves, refused, refusedMoves, warnings } = side
  return {
    board: side.board(),
    moves,
    refused,
    refusedMoves,
    stands: side.stands(),
    conditions: side.conditions(),
    ...side.verdicts(),
    warnings,
  }
}
