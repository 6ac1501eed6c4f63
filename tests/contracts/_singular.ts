import { entriesOf, type System } from './_systems.ts'

/** Systems without an answer, with the first column that depends on those before it. */
export const singular: readonly (readonly [string, number, System])[] = [
  [
    'an empty column',
    1,
    entriesOf(3, [
      [0, 0, 1, 0],
      [1, 2, 1, 0],
      [2, 2, 1, 0],
      [2, 0, 1, 0],
    ]),
  ],
  ['an empty system', 0, entriesOf(2, [])],
  [
    'values that cancel',
    1,
    entriesOf(2, [
      [0, 0, 1, 0],
      [1, 1, 3, 0],
      [1, 1, -3, 0],
    ]),
  ],
  [
    'two equal columns',
    2,
    entriesOf(3, [
      [0, 0, 2, 0],
      [1, 0, 1, 0],
      [1, 1, 1, 0],
      [2, 1, 3, 0],
      [0, 2, 2, 0],
      [1, 2, 1, 0],
    ]),
  ],
  [
    'a floating pair of nodes',
    1,
    entriesOf(3, [
      [0, 0, 0.1, 0],
      [0, 1, -0.1, 0],
      [1, 0, -0.1, 0],
      [1, 1, 0.1, 0],
      [2, 2, 1, 0],
    ]),
  ],
  [
    'a floating triangle, its sums rounded',
    3,
    entriesOf(4, [
      [0, 0, 1, 0],
      [1, 1, 0.3, 0],
      [1, 2, -0.1, 0],
      [1, 3, -0.2, 0],
      [2, 1, -0.1, 0],
      [2, 2, 0.4, 0],
      [2, 3, -0.3, 0],
      [3, 1, -0.2, 0],
      [3, 2, -0.3, 0],
      [3, 3, 0.5, 0],
    ]),
  ],
  [
    'two sources in parallel',
    3,
    entriesOf(4, [
      [0, 0, 1, 0],
      [0, 1, -1, 0],
      [1, 0, -1, 0],
      [1, 1, 2, 0],
      [0, 2, 1, 0],
      [2, 0, 1, 0],
      [0, 3, 1, 0],
      [3, 0, 1, 0],
    ]),
  ],
]
