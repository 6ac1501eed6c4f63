/** `faults`: the fault book of a set as a table: what a person notices of each fault, and which reading tells it. */
import type { Book } from '../book/book.ts'
import { crewHere } from '../book/crew.ts'
import type { Pairs } from '../book/pairs.ts'
import { NO_STORE } from '../book/store.ts'
import { type Means, workBook, workPairs } from '../book/work-book.ts'
import { LIVE, OPEN_AND_LIVE, UNPLUG } from '../meter/cautions.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { askedSymptoms, showsAll } from './asked-symptoms.ts'
import { type BookOrder, type BookRequest, type LaidOut, layOut, stretchMaker } from './book-order.ts'
import { envelope } from './envelope.ts'
import { faultRow, movesNothing, noticesOf, pairsAnswer, scoresOf } from './fault-rows.ts'
import type { FaultRow, FaultsAnswer } from './faults-answer.ts'
import { standsOf } from './stands.ts'
import { QUIET } from './tell.ts'
import { whereAsked } from './where-asked.ts'

/** Whose faults, and which of them. */
export interface FaultsRequest extends BookRequest {
  /** Only faults that show all of these: `rings=silent`, or `rings` for any answer that is not as it should be. */
  readonly symptoms?: readonly string[]
  /** Two faults at once as well. */
  readonly pairs?: boolean
  /** The long form of the text; the answer is the same. */
  readonly whole?: boolean
}

/** By what means a book is worked out, where there is more than this thread and its memory. */
export interface BookMeans extends Partial<Means<BookOrder>> {
  /** What tells this build of the program from all others, for a store. */
  readonly build?: string
}

/** Works the book out and shows it. @throws ProblemError for a request that is wrong */
export async function faults(
  request: FaultsRequest,
  shelf: Shelf,
  means: BookMeans = {},
): Promise<FaultsAnswer> {
  const laidOut = layOut(request, shelf, means.build)
  // a symptom that is not known is refused before anything is worked out
  const asked = askedSymptoms(laidOut.inputs.tests, request.symptoms ?? [])
  const all = meansWith(means)
  const book = await workBook(laidOut, all)
  const pairs = request.pairs === true ? await workPairs(laidOut, all) : undefined
  return answerOf(request, laidOut, book, asked, pairs)
}

/** Means that lack nothing: this thread, no store, nobody told. */
export function meansWith({ crew, store, tell }: BookMeans): Means<BookOrder> {
  return { crew: crew ?? crewHere(1, stretchMaker), store: store ?? NO_STORE, tell: tell ?? QUIET }
}

function answerOf(
  request: FaultsRequest,
  { standing, place, kit }: LaidOut,
  book: Book,
  asked: ReturnType<typeof askedSymptoms>,
  pairs: Pairs | undefined,
): FaultsAnswer {
  const rows = book.faults.flatMap((fault, index) =>
    showsAll(book.tests, asked, scoresOf(book, 1 + index))
      ? [{ index, row: faultRow(book, index, fault) }]
      : [],
  )
  const [still, moving] = [true, false].map((nothing) =>
    rows.filter(({ index, row }) => movesNothing(book, index, row) === nothing).map(({ row }) => row),
  )
  const symptoms = book.tests.filter(({ words }) => words !== undefined).length
  return {
    ...envelope(
      'faults',
      {
        faults: standing.name,
        ...whereAsked(request),
        ...(asked.length === 0 ? {} : { symptoms: request.symptoms }),
        ...(request.pairs === true ? { pairs: true } : {}),
        ...(request.whole === true ? { whole: true } : {}),
        instrument: kit.instrument.name,
      },
      standing.warnings,
    ),
    outcome: 'answered',
    stands: standsOf(standing),
    place: place.place,
    instrument: kit.instrument.name,
    counts: {
      faults: book.faults.length,
      matching: rows.length,
      'moving nothing': still?.length ?? 0,
      symptoms,
      readings: book.tests.length - symptoms,
    },
    sound: noticesOf(book.tests, scoresOf(book, 0)),
    faults: moving ?? [],
    'moving nothing': still ?? [],
    ...(pairs === undefined ? {} : { pairs: pairsAnswer(book, pairs, asked) }),
    cautions: cautionsOf(rows.map(({ row }) => row)),
  }
}

/** Cautions for the readings that are shown, and for the set that is opened to look and to mend. */
function cautionsOf(rows: readonly FaultRow[]): readonly string[] {
  const all = rows.flatMap(({ tells }) => tells)
  return [
    ...(rows.length === 0 ? [] : [UNPLUG]),
    ...(all.some(({ live }) => live) ? [LIVE] : []),
    ...(all.some(({ live, site }) => live && site === 'inside') ? [OPEN_AND_LIVE] : []),
  ]
}
