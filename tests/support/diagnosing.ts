/** Books of the demo sets, and faults that answer a diagnosis by what the book says they show. */
import { fileURLToPath } from 'node:url'
import { type BookOrder, layOut, stretchMaker } from 'ringproof/answer/book-order'
import type { DiagnoseRequest, Diagnosis, DiagnosisState } from 'ringproof/answer/diagnose'
import { openDiagnosis } from 'ringproof/answer/diagnose'
import { at, type Book } from 'ringproof/book/book'
import { crewHere } from 'ringproof/book/crew'
import type { BookStore } from 'ringproof/book/store'
import { answerAt } from 'ringproof/book/tell-apart'
import { type Means, workBook } from 'ringproof/book/work-book'
import { folderShelf } from 'ringproof/host/shelf'

const NETLISTS = fileURLToPath(new URL('../../netlists', import.meta.url))
const kept = new Map<string, Uint8Array>()
const store: BookStore = {
  read: (key) => Promise.resolve(kept.get(key)),
  write: (key, bytes) => {
    kept.set(key, bytes)
    return Promise.resolve()
  },
  remove: (key) => {
    kept.delete(key)
  },
}

/** This thread, and a store in memory: a book is worked out once a test file. */
export const means: Means<BookOrder> = { crew: crewHere(1, stretchMaker), store, tell: () => {} }
export const shelf = folderShelf([], NETLISTS)

/** A diagnosis with the book behind it. */
export async function diagnosing(
  request: DiagnoseRequest,
): Promise<{ readonly book: Book; readonly diagnosis: Diagnosis }> {
  const book = await workBook(layOut(request, shelf), means)
  return { book, diagnosis: await openDiagnosis(request, shelf, means) }
}

/** What a person with this fault would write: the answer, the number or `open`; undefined where nobody can say. */
export function written(book: Book, fault: string, test: string): string | undefined {
  const row = 1 + book.faults.findIndex(({ id }) => id === fault)
  if (row === 0) throw new Error(`no fault ${fault}`)
  const t = book.tests.findIndex(({ id }) => id === test)
  const asked = book.tests[t]
  const score = book.scores[at(book, row, t)] ?? Number.NaN
  if (asked === undefined || Number.isNaN(score) || score === Number.NEGATIVE_INFINITY) return undefined
  const answer = answerAt(asked, score)
  if (answer !== undefined) return answer.id
  return Number.isFinite(score) ? `${score.toPrecision(4)} ${asked.unit}` : 'open'
}

/** Asks until nothing is left to ask, answered as the fault would have it. */
export function follow(
  { book, diagnosis }: Awaited<ReturnType<typeof diagnosing>>,
  fault: string,
): { readonly asked: readonly string[]; readonly state: DiagnosisState } {
  let state = diagnosis.begin
  const asked: string[] = []
  for (let question = diagnosis.next(state); question !== undefined; question = diagnosis.next(state)) {
    const line = written(book, fault, question.test)
    asked.push(`${question.test}: ${line ?? 'skip'}`)
    state =
      line === undefined ? diagnosis.skip(state, question.test) : diagnosis.answer(state, question.test, line)
    if (asked.length > 40) throw new Error('it never ends')
  }
  return { asked, state }
}
