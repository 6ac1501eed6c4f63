import {
  ANSWER_SCHEMAS,
  type AnswerName,
  answerJsonSchema,
  type Json,
  jsonText,
  nearest,
  SHEET_KINDS,
  sheetJsonSchema,
} from '../index.ts'
import { EXIT } from './exit-code.ts'
import { requestWrong } from './options.ts'
import type { Reply } from './reply.ts'

/** The JSON Schema of a kind of sheet or of an answer. @throws ProblemError when it is neither */
export function schemaReply(what: string): Reply {
  const kind = SHEET_KINDS.find((one) => one === what)
  const answers = Object.keys(ANSWER_SCHEMAS) as AnswerName[]
  const answer = answers.find((one) => one === what)
  if (kind === undefined && answer === undefined) {
    const near = nearest(what, [...SHEET_KINDS, ...answers])
    requestWrong(
      `\`${what}\``,
      `a kind of sheet (${SHEET_KINDS.join(', ')}) or an answer (${answers.join(', ')})`,
      near === undefined ? undefined : `write \`ringproof schema ${near}\``,
    )
  }
  const json = (): Json => {
    return (kind !== undefined ? sheetJsonSchema(kind) : answerJsonSchema(answer ?? 'problems')) as Json
  }
  return { text: () => jsonText(json()), json, code: EXIT.answered, problems: [] }
}
