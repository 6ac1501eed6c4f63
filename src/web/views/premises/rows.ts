/** What the view shows of premises, from the answer to `check`: sockets as a tree, bells, the line. Pure. */
import {
  type CheckAnswer,
  type Figure,
  figureName,
  figureText,
  limitAmount,
  placeAbout,
  type StandingPlace,
  type StandingSocket,
  type Stands,
  silentBells,
  type Verdict,
  type VerdictState,
} from '../../../index.ts'

/** A socket with the sockets that it feeds and the sets that are plugged into it. */
export interface SocketNode {
  readonly socket: StandingSocket
  readonly feeds: readonly SocketNode[]
  readonly sets: readonly StandingPlace[]
}

/** Sockets that nothing feeds first, each with what hangs on it; and sets that no socket holds. */
export function socketTree({ sockets, sets }: Stands): {
  readonly roots: readonly SocketNode[]
  readonly loose: readonly StandingPlace[]
} {
  const names = new Set(sockets.map(({ socket }) => socket))
  const nodeOf = (one: StandingSocket): SocketNode => ({
    socket: one,
    feeds: sockets.filter((other) => other['fed from'] === one.socket).map(nodeOf),
    sets: sets.filter(({ socket }) => socket === one.socket),
  })
  return {
    roots: sockets.filter((one) => !names.has(one['fed from'] ?? '')).map(nodeOf),
    loose: sets.filter(({ socket }) => socket === null || !names.has(socket)),
  }
}

/** How a bell of a set does, and against what. */
export interface BellRow {
  readonly place: string
  /** The bell, where a set has several. */
  readonly bell: string
  readonly gets: string
  readonly needs: string
  /** What it gets in units of what the best served bell gets or any bell needs, and the need on the same scale. */
  readonly length: number
  readonly mark?: number
  readonly state: VerdictState
  readonly says: string
  readonly alone: string
  readonly share: string
}

const RINGS: Readonly<Record<VerdictState, string>> = {
  holds: 'rings',
  marginal: 'just rings',
  fails: 'does not ring',
  unknown: 'not known',
}
const ALONE: Readonly<Record<VerdictState, string>> = {
  holds: 'yes',
  marginal: 'just',
  fails: 'no',
  unknown: 'not known',
}

interface Bell {
  readonly place: string
  readonly bell: string
  readonly gets: Figure | undefined
  readonly all: Verdict | undefined
  readonly alone: Verdict | undefined
}

const isOf = (place: string, subject: string): boolean => subject === place || subject.startsWith(`${place}/`)

/** A row for each bell of each set. */
export function bellRows(answer: CheckAnswer, { sets }: Stands): readonly BellRow[] {
  const places = sets.map(({ place }) => place)
  const bells = sets.flatMap(({ place }) => bellsOf(place, answer, places))
  const most = Math.max(0, ...bells.flatMap(({ gets, all }) => [gets?.value ?? 0, all?.limit?.value ?? 0]))
  const silent = silentBells(answer.figures)
  return bells.map(({ place, bell, gets, all, alone }) => {
    const limit = all?.limit ?? alone?.limit
    const share = answer.figures.find(({ id, subject }) => id === 'ringing.share' && subject === bell)
    const state = all?.state ?? 'unknown'
    return {
      place,
      bell,
      gets: gets === undefined ? 'no bell' : figureText(gets),
      needs: limit === undefined || limit === null ? '' : limitAmount(limit),
      length: most === 0 ? 0 : (gets?.value ?? 0) / most,
      ...(limit === undefined || limit === null || most === 0 ? {} : { mark: limit.value / most }),
      state,
      says: gets === undefined ? 'no bell' : RINGS[state],
      alone: alone === undefined ? '' : ALONE[alone.state],
      share: share === undefined ? '' : figureText(share, silent),
    }
  })
}

function bellsOf(
  place: string,
  { verdicts, figures }: CheckAnswer,
  places: readonly string[],
): readonly Bell[] {
  const mine = verdicts.filter((one) => placeAbout(one, places) === place)
  const own = figures.filter(({ id, subject }) => id === 'ringing.current' && isOf(place, subject))
  const names = [...new Set(own.map(({ subject }) => subject))]
  const about = (check: string, bell: string): Verdict | undefined => {
    const all = mine.filter((one) => one.check === check)
    return all.find(({ subject }) => subject === bell) ?? (all.length === 1 ? all[0] : undefined)
  }
  if (names.length === 0) return [{ place, bell: place, gets: undefined, all: undefined, alone: undefined }]
  return names.map((bell) => {
    const all = about('bell.rings-with-all', bell)
    return {
      place,
      bell,
      gets: all?.figure ?? own.find(({ subject }) => subject === bell),
      all,
      alone: about('bell.rings-alone', bell),
    }
  })
}

/** The worst of one check of the line. */
export interface LineRow {
  readonly check: string
  readonly verdict: Verdict
  readonly worst: string
  readonly limit: string
  readonly of: string
  /** The figure and the limit as lengths of a bar; absent where there is no limit. */
  readonly length?: number
  readonly mark?: number
}

const GRAVITY: readonly VerdictState[] = ['fails', 'marginal', 'unknown', 'holds']

/** A row for each check of the line that has a figure. */
export function lineRows({ verdicts }: CheckAnswer, { sets }: Stands): readonly LineRow[] {
  const places = sets.map(({ place }) => place)
  const judged = verdicts.filter(
    (one) => one.figure !== null && (one.check.startsWith('line.') || placeAbout(one, places) === undefined),
  )
  return [...new Set(judged.map(({ check }) => check))].flatMap((check) => {
    const worst = worstOf(judged.filter((one) => one.check === check))
    if (worst?.figure == null) return []
    const { figure, limit } = worst
    const place = placeAbout(worst, places)
    const value = Math.abs(figure.value ?? 0)
    const most = limit === null ? 0 : Math.max(value, Math.abs(limit.value))
    return [
      {
        check,
        verdict: worst,
        worst: figureText(figure),
        limit: limit === null ? 'no limit' : limitAmount(limit),
        of: place === undefined ? figureName(figure) : `${figureName(figure)}, ${place}`,
        ...(limit === null || most === 0 ? {} : { length: value / most, mark: Math.abs(limit.value) / most }),
      },
    ]
  })
}

/** The gravest, and of those the one with the least margin. */
function worstOf(all: readonly Verdict[]): Verdict | undefined {
  const margin = (one: Verdict): number => one.margin ?? Number.POSITIVE_INFINITY
  return [...all].sort(
    (p, q) =>
      GRAVITY.indexOf(p.state) - GRAVITY.indexOf(q.state) ||
      (margin(p) === margin(q) ? 0 : margin(p) - margin(q)),
  )[0]
}

/** Verdicts by the set that they are about, and of the line; the gravest first. */
export function verdictGroups(
  { verdicts }: CheckAnswer,
  { sets }: Stands,
): readonly { readonly place: string | undefined; readonly verdicts: readonly Verdict[] }[] {
  const places = sets.map(({ place }) => place)
  const grave = (some: readonly Verdict[]): readonly Verdict[] =>
    [...some].sort((p, q) => GRAVITY.indexOf(p.state) - GRAVITY.indexOf(q.state))
  return [undefined, ...places].map((place) => ({
    place,
    verdicts: grave(verdicts.filter((one) => placeAbout(one, places) === place)),
  }))
}

/** `2 fail, 14 hold`. */
export function countsText(verdicts: readonly Verdict[]): string {
  const count = (state: VerdictState): number => verdicts.filter((one) => one.state === state).length
  const words = { fails: 'fail', marginal: 'marginal', unknown: 'unknown', holds: 'hold' } as const
  const parts = GRAVITY.filter((state) => count(state) > 0).map((state) => `${count(state)} ${words[state]}`)
  return parts.join(', ')
}
