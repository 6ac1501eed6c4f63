/** The fault book that a request means: its network, faults and tests, and the order for those who work it out. */
import { benchTestsOf } from '../book/bench-tests/index.ts'
import { bookKey } from '../book/book-key.ts'
import type { StretchMaker } from '../book/crew.ts'
import { faultsOf, holdsOf } from '../book/faults/index.ts'
import { type BookInputs, type BookMaker, bookMaker } from '../book/make-book.ts'
import { bytesOf } from '../book/pack.ts'
import { type PairMaker, pairMaker } from '../book/pairs.ts'
import type { Task } from '../book/work-book.ts'
import type { Kit } from '../meter/instrument.ts'
import { type NetPlace, placeOf } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { VERSION } from './envelope.ts'
import { kitOf } from './instruments-table.ts'
import { deliveredLimits } from './limits-table.ts'
import { deliveredOdds } from './odds-table.ts'
import { recordedShelf, replayedShelf, type ShelfRecord } from './recorded-shelf.ts'
import { type Standing, stand, type Where } from './standing.ts'

/** Whose book: a set in its place, read by an instrument. */
export interface BookRequest extends Where {
  /** A delivered instrument, the first when absent; or one of several in `instrumentText`. */
  readonly instrument?: string
  readonly instrumentText?: SheetText
}

/** A request with every sheet that it reads: plain data, from which any thread makes the same book. */
export interface BookOrder {
  readonly request: BookRequest
  readonly sheets: ShelfRecord
  /** What tells the build that it comes from; empty where that is not known. */
  readonly build: string
  /** The text of everything that decides the book, by which whoever takes the order knows that it means the same. */
  readonly key: string
}

/** Everything that a book is made of, before it is made. */
export interface LaidOut extends Task<BookOrder> {
  readonly standing: Standing
  readonly place: NetPlace
  readonly kit: Kit
}

/**
 * Lays a book out.
 *
 * @param build what tells this very build of the program from all others, where the host knows it
 * @throws ProblemError for a request that is wrong, and for premises with several sets, of which none is named
 */
export function layOut(request: BookRequest, shelf: Shelf, build = ''): LaidOut {
  const recorded = recordedShelf(shelf)
  const standing = stand(request, recorded.shelf)
  const place = solePlace(standing)
  const kit = kitOf(request.instrument, request.instrumentText)
  const [odds, limits] = [deliveredOdds(), deliveredLimits()]
  const { net } = standing
  const inputs: BookInputs = {
    net,
    place: place.place,
    faults: faultsOf(net, place, odds, holdsIn(standing, place)),
    tests: benchTestsOf({ net, place, odds, kit, limits }),
    transmitterSpread: kit.habits['transmitter-spread'].value,
    severity: odds.severity,
  }
  const key = bookKey(inputs, { program: `${VERSION} ${build}`, tables: { odds, limits, kit } })
  const order: BookOrder = { request, sheets: recorded.record(), build, key }
  laid.set(order, inputs)
  return {
    standing,
    place,
    kit,
    inputs,
    order,
    key,
  }
}

/** How the straps of the set in this place are held. */
function holdsIn({ installation }: Standing, { place }: NetPlace): ReturnType<typeof holdsOf> {
  const standing = installation.sets[place]
  return standing === undefined ? {} : holdsOf(standing.set)
}

/** What orders of this very thread were laid out as; an order that came from another one is laid out anew. */
const laid = new WeakMap<BookOrder, BookInputs>()

/**
 * Works an order's stretches out, one after the other, from the order alone.
 * @throws ProblemError `ours` for an order that another build of the program gave, which would mean another book
 */
export function stretchMaker(order: BookOrder): StretchMaker {
  const inputs = laid.get(order) ?? laidOutAnew(order)
  let book: BookMaker | undefined
  let pairs: PairMaker | undefined
  return ({ what, from, to }) => {
    if (what === 'rows') {
      book ??= bookMaker(inputs)
      const { scores, spreads, steps } = book.rows(from, to)
      return bytesOf(scores, spreads, steps)
    }
    pairs ??= pairMaker(inputs)
    return bytesOf(pairs.rows(from, to).scores)
  }
}

function laidOutAnew({ request, sheets, build, key }: BookOrder): BookInputs {
  const again = layOut(request, replayedShelf(sheets), build)
  if (again.key === key) return again.inputs
  refuse({
    code: 'ours',
    found: 'a thread of another build of the program, which works on another book',
    expected: 'all files of the program from one build',
    mend: 'install or build the package again',
  })
}

/** The one set that a book is about. */
function solePlace({ net, installation, places, name }: Standing): NetPlace {
  const [place] = places
  if (place !== undefined && places.length === 1) return placeOf(net, place)
  refuse({
    code: 'request-wrong',
    found: `${name}, where ${places.length === 0 ? 'no set stands' : `${places.length} sets stand`}`,
    expected: 'one set, whose faults are worked out',
    ...(place === undefined
      ? {}
      : {
          mend: `name the set and its place: \`${installation.sets[place]?.set.name ?? place} --on ${name} --at ${place}\``,
        }),
  })
}
