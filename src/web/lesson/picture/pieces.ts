/** All wires of a house's picture with their currents, from the exchange down to the last bell. */
import { FLEET } from '../rig/fleet.ts'
import type { House, HouseSet } from '../rig/house.ts'
import type { Phasor } from '../rig/reading.ts'
import { below, currentOf, minus, NIL, plus } from './flow.ts'
import { A, B, EXCHANGE, type HouseReading, MASTER_HEAD, rowY, T, TAP } from './lay.ts'
import type { Piece, Point } from './piece.ts'

type Core = 'a' | 'b' | 'ringing'

/** Every piece; without a reading they carry nothing. */
export function housePieces(house: House, reading: HouseReading | undefined): readonly Piece[] {
  return [
    ...pair(house, reading),
    ...master(reading),
    ...down(A, 'a', house.sets, reading),
    ...down(T, 'ringing', house.sets, reading),
    ...down(B, 'b', house.sets, reading),
    ...house.sets.flatMap((one, k) => [...tapped(one, rowY(k), reading), ...belled(one, rowY(k), reading)]),
  ]
}

/** From the exchange to where the socket's parts hang on the pair. */
function pair({ turned }: House, reading: HouseReading | undefined): readonly Piece[] {
  const cross = MASTER_HEAD - 66
  const run = (x: number, to: Point, core: 'a' | 'b'): Piece => ({
    points: [[T, EXCHANGE], [x, EXCHANGE], [x, cross], [to[0], cross + 26], to],
    current: currentOf(reading, `box/cable.${core}`),
  })
  const onA: Point = [A, MASTER_HEAD + 6]
  const onB: Point = [B, MASTER_HEAD + 46]
  return turned === true ? [run(B, onA, 'b'), run(A, onB, 'a')] : [run(A, onA, 'a'), run(B, onB, 'b')]
}

function master(reading: HouseReading | undefined): readonly Piece[] {
  const y = MASTER_HEAD
  return [
    // beside the ringing it carries next to nothing
    {
      points: [
        [A, y + 6],
        [T, y + 6],
        [T, y + 46],
      ],
      current: NIL,
    },
    {
      points: [
        [B, y + 46],
        [T, y + 46],
      ],
      current: currentOf(reading, 'box/capacitor'),
      tip: [(T + B) / 2 - 26, y + 46],
    },
  ]
}

/** One wire between the sets; where something is tapped above a bell, the piece down to the bell is one of its own. */
function down(
  x: number,
  core: Core,
  sets: readonly HouseSet[],
  reading: HouseReading | undefined,
): readonly Piece[] {
  const reached = sets.filter(({ pairOnly }) => core !== 'ringing' || pairOnly !== true)
  let from = MASTER_HEAD + (core === 'a' ? 6 : 46)
  return reached.flatMap((one, k): Piece[] => {
    const y = rowY(sets.indexOf(one))
    const into = below(core, reached.slice(k), reading)
    const tap = tapOf(one)
    const start = from
    from = y
    if (tap === undefined || (core !== 'ringing' && core !== tap.to))
      return [
        {
          points: [
            [x, start],
            [x, y],
          ],
          current: into,
          tip: [x, k === 0 ? y - 34 : (start + y) / 2],
        },
      ]
    const at = y - TAP
    const rest = plus(bellInto(one, core, reading), below(core, reached.slice(k + 1), reading))
    return [
      {
        points: [
          [x, start],
          [x, at],
        ],
        current: into,
        tip: [x, (start + at) / 2],
      },
      {
        points: [
          [x, at],
          [x, y],
        ],
        current: rest,
        tip: [x, (at + y) / 2],
      },
    ]
  })
}

/** What lies between the third wire and a wire of the pair besides the bell, by the branch that has its current. */
function tapOf({ set, touches, place }: HouseSet): { to: 'a' | 'b'; branch: string } | undefined {
  if (FLEET[set].ownCapacitor === 'beside') return { to: 'b', branch: `${place}/own-capacitor` }
  if (touches === undefined) return undefined
  return { to: touches, branch: `${place}/${touches === 'a' ? 'C1-A1' : 'C1-B5'}` }
}

function tapped(one: HouseSet, y: number, reading: HouseReading | undefined): readonly Piece[] {
  const tap = tapOf(one)
  if (tap === undefined) return []
  const side = tap.to === 'a' ? A : B
  const at = y - TAP
  return [
    {
      points: [
        [T, at],
        [side, at],
      ],
      // both are counted from the third wire
      current: currentOf(reading, tap.branch),
      tip: [(T + side) / 2 + Math.sign(side - T) * 36, at],
    },
  ]
}

/** The bell's own current, counted from where it comes in a straight set to the wire of the pair that it returns to. */
export function bellCurrent(one: HouseSet, reading: HouseReading | undefined): Phasor {
  // a set on the pair alone: on-hook its b core feeds nothing but the bell
  return currentOf(
    reading,
    FLEET[one.set].ownCapacitor === 'pair' ? `${one.place}/line.b` : `${one.place}/bell`,
  )
}

/** What of the bell's current comes into the set on this wire. */
function bellInto(one: HouseSet, core: Core, reading: HouseReading | undefined): Phasor {
  const current = bellCurrent(one, reading)
  if (core === 'ringing') return current
  return core === (one.turned === true ? 'b' : 'a') ? minus(current) : NIL
}

function belled(one: HouseSet, y: number, reading: HouseReading | undefined): readonly Piece[] {
  const { turned, parked, pairOnly, set } = one
  const onPair = FLEET[set].ownCapacitor === 'pair'
  const side = turned === true ? B : A
  const out = Math.sign(side - T)
  const isLoose = (parked === true || pairOnly === true) && !onPair
  const current = bellCurrent(one, reading)
  return [
    {
      points: [
        [isLoose ? T + out * 16 : T, y],
        [side, y],
      ],
      current,
      tip: [T + out * 55, y],
    },
    ...(onPair
      ? [
          {
            points: [
              [A + B - side, y],
              [T, y],
            ] as const,
            current,
          },
        ]
      : []),
  ]
}
