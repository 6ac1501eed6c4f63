/** What a command has to say, before it is printed. */
import {
  type Answer,
  answerText,
  type CheckAnswer,
  type CompareAnswer,
  type Json,
  type Page,
  type Problem,
  toJson,
} from '../index.ts'
import { codeOfCounts, EXIT } from './exit-code.ts'

/** A reply in both forms, with its exit code. */
export interface Reply {
  text(page: Page): string
  json(): Json
  readonly code: number
  /** Warnings that go beside the text. */
  readonly problems: readonly Problem[]
}

/** An answer that judges nothing. */
export function replyOf(answer: Answer): Reply {
  return {
    text: (page) => answerText(answer, page),
    json: () => toJson(answer),
    code: EXIT.answered,
    problems: answer.problems,
  }
}

/** An answer that judges. */
export function judgedReply(answer: CheckAnswer | CompareAnswer, strict: boolean | undefined): Reply {
  return { ...replyOf(answer), code: codeOfCounts(answer.counts, strict ?? false) }
}
