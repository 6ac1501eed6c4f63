/** Those who make a book: in lanes beside each other, each lane one stretch of rows or pairs after the other. */

/** A stretch of a book's rows or of its pairs, from one on and before another. */
export interface Stretch {
  readonly what: 'rows' | 'pairs'
  readonly from: number
  readonly to: number
}

/** A stretch that is made: the scores and, of rows, the spreads and steps, as bytes of their numbers. */
export interface MadeStretch extends Stretch {
  readonly bytes: Uint8Array
}

/** Makes the stretches of one order. Every lane has its own; the same stretch comes out the same in each. */
export type StretchMaker = (stretch: Stretch) => Uint8Array

/**
 * A crew. Whoever has threads brings one of its own; what comes out does not depend on the number of lanes.
 * An order says by itself what the book is about, so that a lane in another thread works everything else out anew.
 */
export interface Crew<Order> {
  readonly lanes: number
  /**
   * Makes all stretches, in whatever order they get done. It stops where nobody asks for the next one.
   *
   * @param effort how much they are in all: variants that are solved times branches of the network; unknown when absent
   */
  run(order: Order, stretches: readonly Stretch[], effort?: number): AsyncIterable<MadeStretch>
}

/**
 * A crew in this very thread: lanes that take turns, each with a maker of its own.
 *
 * @param breathe is waited for before each stretch, so that others have their turn
 */
export function crewHere<Order>(
  lanes: number,
  makerOf: (order: Order) => StretchMaker,
  breathe: () => Promise<void> = () => Promise.resolve(),
): Crew<Order> {
  return {
    lanes,
    async *run(order, stretches) {
      const makers: StretchMaker[] = []
      for (const [k, stretch] of stretches.entries()) {
        const lane = k % lanes
        const maker = makers[lane] ?? makerOf(order)
        makers[lane] = maker
        await breathe()
        yield { ...stretch, bytes: maker(stretch) }
      }
    },
  }
}

/** Cuts what is to be made into stretches of at most so many. */
export function stretchesOf(what: Stretch['what'], count: number, most: number): readonly Stretch[] {
  return Array.from({ length: Math.ceil(count / most) }, (_, k) => ({
    what,
    from: k * most,
    to: Math.min(count, (k + 1) * most),
  }))
}
