/** Answers with a second opinion: what they asked of the solver is asked again, and compared. */
import type { CheckAnswer, FiguresAnswer, SolveAnswer } from '../answer/answer.ts'
import { check } from '../answer/check-answer.ts'
import { type FiguresRequest, figures } from '../answer/figures.ts'
import { type SolveRequest, solve } from '../answer/solve.ts'
import type { Where } from '../answer/standing.ts'
import { freshSupplier } from '../figures/read.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { askAgain } from './ask-again.ts'
import { compareFigures, compareVerdicts } from './compare-figures.ts'
import type { OpinionOptions } from './options.ts'
import { writtenDigits } from './written-digits.ts'

/**
 * `solve` with a second opinion; with digits, its voltages and currents stand beside ours.
 * @throws ProblemError `ours` where the two disagree, `request-wrong` where the network is too large for digits
 */
export async function solveTwice(
  request: SolveRequest,
  shelf: Shelf,
  options: OpinionOptions = {},
): Promise<SolveAnswer> {
  const { digits, supply = freshSupplier } = options
  const { answer, opinion, pairs } = await askAgain((by) => solve(request, shelf, by), supply, options)
  const [only] = pairs
  const written = digits === undefined || only === undefined ? {} : writtenDigits(only, digits, answer)
  return { ...answer, 'second opinion': { ...opinion, ...written } }
}

/** `figures` with a second opinion of every question behind them. @throws as `solveTwice` */
export async function figuresTwice(
  request: FiguresRequest,
  shelf: Shelf,
  options: OpinionOptions = {},
): Promise<FiguresAnswer> {
  const { supply = freshSupplier } = options
  const asked = await askAgain((by) => figures(request, shelf, by), supply, options)
  const second = figures(request, shelf, asked.again)
  const worst = compareFigures(asked.answer.figures, second.figures)
  return { ...asked.answer, 'second opinion': { ...asked.opinion, figures: worst } }
}

/** `check` with a second opinion of every question behind it, mends included. @throws as `solveTwice` */
export async function checkTwice(
  request: Where,
  shelf: Shelf,
  options: OpinionOptions = {},
): Promise<CheckAnswer> {
  const { supply = freshSupplier } = options
  const asked = await askAgain((by) => check(request, shelf, by), supply, options)
  const second = check(request, shelf, asked.again)
  const worst = compareVerdicts(asked.answer, second)
  return { ...asked.answer, 'second opinion': { ...asked.opinion, figures: worst } }
}
