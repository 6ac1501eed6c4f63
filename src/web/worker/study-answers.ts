/** What the worker of the long questions answers. What it has laid out is kept for the next answer. */
import {
  type Diagnosis,
  type DiagnosisState,
  type Identifier,
  identifier,
  openBench,
  openDiagnosis,
} from '../../index.ts'
import type { DiagnosisAct, DiagnosisAsk, StudyTalk } from '../talk/protocol.ts'
import { bookMemory } from './book-memory.ts'
import type { Answers } from './serve-asks.ts'
import { benchText, groundOf, NO_SHEETS, sheetsOf } from './sheets.ts'

/** So many diagnoses are kept open; a book of pairs is tens of megabytes. */
const KEPT = 2

/** Answers that share what they have laid out. */
export function studyAnswers(): Answers<StudyTalk> {
  let sheets = sheetsOf(NO_SHEETS)
  const diagnoses = new Map<string, Promise<Diagnosis>>()
  const identifiers = new Map<string, Identifier>()
  /** Who is told now: an identifier that was laid out for one ask works on for the next. */
  let listener: (text: string) => void = () => {}
  const books = bookMemory()

  const diagnosisOf = (asked: DiagnosisAsk, tells: (text: string) => void): Promise<Diagnosis> => {
    const { bench, side = 'proposed', symptoms, observed, readings, inside, live, pairs, instrument } = asked
    const key = JSON.stringify([bench, side, symptoms, observed, readings, inside, live, pairs, instrument])
    const known = diagnoses.get(key)
    diagnoses.delete(key)
    const made =
      known ??
      opened(async () => {
        const { shelf } = sheets
        const where = { target: `set/${bench.set}`, ...groundOf(bench) }
        const { made: moves } = openBench(where, shelf).side(side === 'found' ? [] : bench.moves)
        const text = benchText(bench, moves, shelf)
        tells('working the fault book out')
        const request = {
          ...groundOf(bench),
          target: text.file,
          text,
          symptoms,
          inside,
          live,
          pairs,
          ...(observed === undefined ? {} : { observed }),
          ...(readings === undefined ? {} : { readings }),
          ...(instrument === undefined ? {} : { instrument }),
        }
        return await openDiagnosis(request, shelf, { tell: tells, store: books })
      })
    diagnoses.set(key, made)
    // what failed is tried again when it is asked again
    made.catch(() => diagnoses.delete(key))
    const [oldest] = diagnoses.keys()
    if (diagnoses.size > KEPT && oldest !== undefined) diagnoses.delete(oldest)
    return made
  }

  return {
    shelf: (asked) => {
      sheets = sheetsOf(asked)
      diagnoses.clear()
      identifiers.clear()
      return sheets.rows()
    },
    diagnose: async ({ state: before, act, ...asked }, tells) => {
      const diagnosis = await diagnosisOf(asked, tells)
      const state = stateAfter(diagnosis, before ?? diagnosis.begin, act)
      const question = diagnosis.next(state)
      return { state, ...(question === undefined ? {} : { question }), result: diagnosis.result(state) }
    },
    identify: ({ request: { readings, seen, skipped, ...known } }, tells) => {
      listener = tells
      const key = JSON.stringify(known)
      const by = identifiers.get(key) ?? identifier(known, sheets.shelf, (text) => listener(text))
      identifiers.set(key, by)
      return by({
        ...(readings === undefined ? {} : { readings }),
        ...(seen === undefined ? {} : { seen }),
        ...(skipped === undefined ? {} : { skipped }),
      })
    },
  }
}

/** Starts at once; what is thrown on the way is a promise that failed. */
async function opened<T>(make: () => Promise<T>): Promise<T> {
  return await make()
}

function stateAfter(
  diagnosis: Diagnosis,
  state: DiagnosisState,
  act: DiagnosisAct | undefined,
): DiagnosisState {
  if (act === undefined) return state
  if (act.do === 'undo') return diagnosis.undo(state)
  return act.do === 'skip' ? diagnosis.skip(state, act.test) : diagnosis.answer(state, act.test, act.written)
}
