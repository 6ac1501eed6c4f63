/** `diagnose` at the command line: one answer, or question by question. */
import {
  type DiagnoseAnswer,
  type DiagnoseRequest,
  type Diagnosis,
  type DiagnosisState,
  diagnosisQuestion,
  diagnosisReasons,
  diagnosisRefused,
  diagnosisSoFar,
  type NextQuestion,
  openDiagnosis,
  type Page,
} from '../index.ts'
import { ProblemError } from '../problem.ts'
import { withBookMeans } from './book-means.ts'
import { colours } from './colours.ts'
import type { Asked } from './command.ts'
import { instrumentOf } from './instrument-of.ts'
import { requestWrong, widthOf } from './options.ts'
import { prose } from './prose.ts'
import { type Reply, replyOf } from './reply.ts'
import { fileOf, given } from './target.ts'

/** What is said to the program rather than in answer; an answer that begins so goes first. */
const STOPS = new Set(['end', 'quit', 'exit', 'stop', 'q'])
const BACKS = new Set(['back', 'undo', 'b'])
const SKIPS = new Set(['skip', ''])
const WHYS = new Set(['?', 'help', 'why'])

/** Diagnoses a set. */
export async function diagnoseReply(asked: Asked): Promise<Reply> {
  const request = requestOf(asked)
  const diagnosis = await withBookMeans(asked, (means) => openDiagnosis(request, asked.shelf, means))
  const first = diagnosis.result(diagnosis.begin)
  const { options, io } = asked
  const isAsked = options.ask ?? (io.person === true && options.json !== true && first.decided === 'asking')
  return replyOf(isAsked ? await inTurn(asked, diagnosis, first) : first)
}

function requestOf({ words, options, io }: Asked): DiagnoseRequest {
  const [target = ''] = words
  const { at, in: socket, on, observed, outside, live, pairs, reading, symptom } = options
  return {
    target,
    ...given('text', fileOf(target, io)),
    ...given('on', on),
    ...given('onText', fileOf(on, io)),
    ...given('at', at),
    ...given('in', socket),
    ...given('symptoms', symptom),
    ...given('observed', observed),
    ...given('readings', reading),
    ...given('pairs', pairs),
    ...(outside === true ? { inside: false } : {}),
    ...(live === false ? { live } : {}),
    ...instrumentOf(options.instrument, io),
  }
}

const GREETING =
  'Answer each question by its number or word, by yes or no where that says it, or with what the meter shows. `?` says ' +
  'how and why, `back` takes the last answer back, `skip` or an empty line passes over what cannot or will not be done. ' +
  '`end` or ctrl-D ends with what is known by then; so does `stop`, but where an answer begins with it.'

/** Asks until a group is sure, nothing tells more, the person ends it or the input ends. */
async function inTurn(
  { io, options }: Asked,
  diagnosis: Diagnosis,
  first: DiagnoseAnswer,
): Promise<DiagnoseAnswer> {
  const { ask } = io
  if (ask === undefined)
    requestWrong('`--ask` where nobody can be asked', 'a terminal, or answers line by line on standard input')
  const width = widthOf(options.width, io.columns)
  const page = (wanted: boolean): Page => ({ width, paint: colours(wanted && options.colour !== false) })
  // with --json the questions must not stand in the answer
  const isJson = options.json === true
  const say = (text: string): void => (isJson ? io.err : io.out)(text)
  const painted = page(isJson ? io.colour.err : io.colour.out)
  const { place } = first
  let state = diagnosis.begin
  say(prose(GREETING, width))
  const told = new Set(first.cautions)
  for (const caution of told) say(prose(`Caution: ${caution}`, width))
  for (let question = diagnosis.next(state); question !== undefined; question = diagnosis.next(state)) {
    const count = 1 + state.steps.filter(({ given: isGiven }) => isGiven !== true).length
    say(`\n${diagnosisQuestion(withoutTold(question, told), place, painted, count)}`)
    for (const caution of question.cautions) told.add(caution)
    const line = (await ask('> '))?.trim()
    if (line === undefined || isSaid(STOPS, line, question)) break
    if (isSaid(WHYS, line, question)) say(diagnosisReasons(question, place, painted))
    else state = stateAfter(diagnosis, state, question, line, say, painted)
  }
  say('\n')
  const result = diagnosis.result(state)
  // what stands above on the same page is not said twice
  return isJson ? result : { ...result, cautions: result.cautions.filter((one) => !told.has(one)) }
}

/** Whether a line is one of these words, and no answer to the question begins with it. */
function isSaid(words: ReadonlySet<string>, line: string, { outcomes }: NextQuestion): boolean {
  const said = line.toLowerCase()
  return words.has(said) && (said === '' || !outcomes.some(({ answer }) => answer?.startsWith(said)))
}

/** What was said before is not said again, but on a live line all is. */
function withoutTold(question: NextQuestion, told: ReadonlySet<string>): NextQuestion {
  return question.live
    ? question
    : { ...question, cautions: question.cautions.filter((one) => !told.has(one)) }
}

/** The state after a line, told how far it is; the same one, told why, where the line cannot be understood. */
function stateAfter(
  diagnosis: Diagnosis,
  state: DiagnosisState,
  question: NextQuestion,
  line: string,
  say: (text: string) => void,
  page: Page,
): DiagnosisState {
  const { test } = question
  if (isSaid(SKIPS, line, question)) return diagnosis.skip(state, test)
  if (isSaid(BACKS, line, question)) {
    const before = diagnosis.undo(state)
    if (before === state) say('There is no answer to take back.\n')
    return before
  }
  try {
    const after = diagnosis.answer(state, test, line)
    say(diagnosisSoFar(diagnosis.result(after), page, { test, written: line }))
    return after
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    say(diagnosisRefused(error.problems, page))
    return state
  }
}
