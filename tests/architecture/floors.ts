/**
 * Who stands on what. A place is a folder of `src` or a file beside them; it may import from the places
 * in its line and from itself, without cycles. All may import `problem.ts`, except `algebra`, which
 * imports nothing at all.
 */
export interface Floor {
  readonly place: string
  readonly floor: number
  /** Places whose values and types may be imported. */
  readonly values: readonly string[]
  /** Places of which only types may be imported. */
  readonly types: readonly string[]
}

const line = (floor: number, place: string, values: string[], types: string[] = []): Floor => {
  return { floor, place, values, types }
}

export const FLOORS: readonly Floor[] = [
  line(0, 'problem.ts', []),
  line(0, 'cautions.ts', []),
  line(0.5, 'quantities', ['problem.ts']),
  line(0.5, 'algebra', []),
  // Hypotheses in numbers alone: it knows no electricity.
  line(0.7, 'inference', ['algebra']),
  line(1, 'parts', ['quantities', 'algebra', 'problem.ts']),
  line(2, 'sheet', ['parts', 'quantities', 'problem.ts']),
  line(3, 'netlist', ['sheet', 'parts', 'quantities', 'problem.ts']),
  line(4, 'solver', ['netlist', 'parts', 'algebra', 'problem.ts']),
  line(5, 'figures', ['solver', 'netlist', 'parts', 'quantities', 'problem.ts'], ['sheet']),
  // An instrument at two points: its readings, bands and what they cannot show; its data are read like a sheet.
  line(5.5, 'meter', [
    'figures',
    'solver',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'cautions.ts',
    'problem.ts',
  ]),
  // Never solver: a verdict's number is always a figure.
  line(6, 'checks', ['figures', 'netlist', 'sheet', 'quantities', 'problem.ts']),
  line(7, 'rewire', ['checks', 'figures', 'netlist', 'sheet', 'parts', 'quantities', 'problem.ts']),
  // A named fault tries its mend as moves at the bench.
  line(7.5, 'faults', [
    'rewire',
    'checks',
    'figures',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'problem.ts',
  ]),
  // Every figure under tolerance and age.
  line(7.2, 'spread', [
    'checks',
    'meter',
    'figures',
    'solver',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'algebra',
    'problem.ts',
  ]),
  // Every single fault of a set solved in every condition: its signature.
  line(7.6, 'book', [
    'checks',
    'meter',
    'figures',
    'solver',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'algebra',
    'problem.ts',
  ]),
  line(7.8, 'diagnosis', [
    'book',
    'inference',
    'meter',
    'figures',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'algebra',
    'cautions.ts',
    'problem.ts',
  ]),
  // Which of the known sets lies on the bench: the same mathematics.
  line(7.8, 'identify', [
    'inference',
    'meter',
    'figures',
    'netlist',
    'sheet',
    'parts',
    'quantities',
    'algebra',
    'problem.ts',
  ]),
  // Pictures: what is to be drawn, as data, and pure functions that draw it.
  line(
    7.9,
    'picture',
    ['netlist', 'parts', 'quantities', 'cautions.ts', 'problem.ts'],
    ['sheet', 'solver', 'figures', 'checks'],
  ),
  // It formats and never computes: types of all floors below, values of few.
  line(
    8.5,
    'report',
    ['quantities', 'parts', 'netlist', 'cautions.ts', 'problem.ts'],
    [
      'algebra',
      'sheet',
      'solver',
      'figures',
      'meter',
      'checks',
      'faults',
      'rewire',
      'inference',
      'spread',
      'book',
      'diagnosis',
      'identify',
      'picture',
      'answer',
    ],
  ),
  // Questions answered from end to end.
  line(8, 'answer', [
    'quantities',
    'algebra',
    'parts',
    'sheet',
    'netlist',
    'solver',
    'figures',
    'meter',
    'checks',
    'faults',
    'rewire',
    'inference',
    'spread',
    'book',
    'diagnosis',
    'identify',
    'picture',
    'problem.ts',
  ]),
  line(9, 'index.ts', [
    'quantities',
    'algebra',
    'parts',
    'sheet',
    'netlist',
    'solver',
    'figures',
    'meter',
    'checks',
    'faults',
    'rewire',
    'inference',
    'spread',
    'book',
    'diagnosis',
    'identify',
    'picture',
    'report',
    'answer',
    'cautions.ts',
    'problem.ts',
  ]),
  // The same questions as a different system: what it shares with the solver is the netlist and the parts' values.
  line(9, 'opinion', ['netlist', 'figures', 'answer', 'problem.ts'], ['parts', 'sheet', 'solver', 'checks']),
  line(10, 'host', ['index.ts', 'problem.ts'], ['answer', 'report', 'sheet']),
  // Where the symbols of a circuit picture go: a library's work, loaded when a picture is first asked for.
  line(10, 'layout', ['index.ts']),
  // The page's local server.
  line(10.5, 'serve', ['index.ts', 'host', 'problem.ts']),
  line(11, 'cli', ['index.ts', 'opinion', 'host', 'layout', 'serve', 'problem.ts']),
  line(11, 'web', ['index.ts', 'layout', 'problem.ts']),
]
