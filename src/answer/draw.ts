/** `draw`: what a picture of a set shows, as data; a face draws it. */
import type { Figure } from '../figures/figure.ts'
import type { Board } from '../picture/board/board.ts'
import { boardOf } from '../picture/board/board-of.ts'
import type { CircuitShown } from '../picture/circuit/shown.ts'
import { refuse } from '../problem.ts'
import type { SetSheet } from '../sheet/model.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { Envelope } from './answer.ts'
import { contextsOf } from './check-answer.ts'
import { envelope } from './envelope.ts'
import { nearestName } from './nearest-name.ts'
import { circuitShown, now } from './now.ts'
import { circuitOf } from './solve.ts'
import { speechCurves } from './speech-curves.ts'
import { type Standing, stand, subjectOf, type Where } from './standing.ts'
import { type Stands, standsOf } from './stands.ts'
import { whereAsked } from './where-asked.ts'

/** The pictures that can be drawn. */
export const PICTURES = ['terminals', 'circuit', 'curves'] as const
export type PictureName = (typeof PICTURES)[number]

/** What is drawn, of which set. Of premises, `at` says which of their sets. */
export interface DrawRequest extends Where {
  readonly picture: PictureName
  /** In which condition currents are shown; the circuit is drawn on-hook when absent, terminals without currents. */
  readonly condition?: string
  /** Hz; direct current, or the ringing while the line rings, when absent. */
  readonly frequency?: number
  /** The set before the moves of its rewire. */
  readonly found?: boolean
}

/** A picture as data: its board, its circuit or its figures, by what was asked. */
export interface DrawAnswer extends Envelope {
  readonly outcome: 'answered'
  readonly picture: PictureName
  readonly place: string
  readonly board?: Board
  /** The circuit with what flows; for the terminals, only where a condition was asked for. */
  readonly shown?: CircuitShown
  readonly figures?: readonly Figure[]
  /** The figures of the set as found, where it was rewired. */
  readonly found?: readonly Figure[]
}

/**
 * The data of a picture.
 * @throws ProblemError for an unknown target, place, condition or picture
 */
export function draw(request: DrawRequest, shelf: Shelf): DrawAnswer {
  checkPicture(request.picture)
  const asked = {
    ...whereAsked(request),
    picture: request.picture,
    ...(request.condition === undefined ? {} : { condition: request.condition }),
    ...(request.frequency === undefined ? {} : { frequency: request.frequency }),
    ...(request.found ? { found: true } : {}),
  }
  const sheet = request.picture === 'circuit' ? circuitOf(request, shelf) : undefined
  if (sheet !== undefined) {
    return {
      ...envelope('draw', { draw: sheet.name, ...asked }),
      outcome: 'answered',
      picture: request.picture,
      place: sheet.name,
      shown: now(request, shelf),
    }
  }
  const after = standAsked(request, shelf)
  const before = foundSide(request, after.standing, shelf)
  const { standing, place } = request.found ? standingAt(before ?? after.standing, after.place) : after
  return {
    ...envelope('draw', { draw: standing.name, ...asked }, standing.warnings),
    outcome: 'answered',
    stands: standsAsked(standing),
    picture: request.picture,
    place,
    ...shownOf(request, standing, place, request.found ? undefined : before),
  }
}

function standsAsked(standing: Standing): Stands {
  return standsOf(standing)
}

interface At {
  readonly standing: Standing
  readonly place: string
}

/** A set by its own name, or the one of premises that `at` names. */
function standAsked(request: DrawRequest, shelf: Shelf): At {
  const isOfPremises = subjectOf(request, shelf).sheet.sheet === 'premises'
  if (!isOfPremises) return standingAt(stand(request, shelf), undefined)
  const { at, ...rest } = request
  return standingAt(stand(rest, shelf), at)
}

function standingAt(standing: Standing, at: string | undefined): At {
  const { places, name } = standing
  const [first] = places
  const place =
    at !== undefined && places.includes(at) ? at : at === undefined && places.length === 1 ? first : undefined
  if (place !== undefined) return { standing, place }
  if (places.length === 1 && first !== undefined) return { standing, place: first }
  const near = at === undefined ? undefined : nearestName(at, places)
  refuse({
    code: 'request-wrong',
    found: at === undefined ? `${name}, where ${places.length} sets stand` : `the place \`${at}\``,
    expected: `one place of ${name}: ${places.join(', ') || 'there is none'}`,
    mend: `write \`--at ${near ?? first ?? 'place'}\``,
  })
}

/** The set before the moves, standing where the rewired one stands. */
function foundSide(request: DrawRequest, { rewiring }: Standing, shelf: Shelf): Standing | undefined {
  if (rewiring === undefined) return undefined
  const { from } = rewiring
  const { text: _, ...rest } = request
  const text = shelf.find('set', from.name, from.file)
  return stand({ ...rest, target: `set/${from.name}`, ...(text === undefined ? {} : { text }) }, shelf)
}

function shownOf(
  request: DrawRequest,
  standing: Standing,
  place: string,
  before: Standing | undefined,
): Pick<DrawAnswer, 'board' | 'shown' | 'figures' | 'found'> {
  const { condition, frequency, picture } = request
  if (picture === 'curves') {
    return {
      figures: curvesOf(standing, place),
      ...(before === undefined ? {} : { found: curvesOf(before, before.places[0] ?? place) }),
    }
  }
  const flows =
    picture === 'circuit' || condition !== undefined || frequency !== undefined
      ? { shown: circuitShown(standing.net, place, condition, frequency) }
      : {}
  if (picture === 'circuit') return flows
  return { board: boardOf(setAt(standing, place), standing.rewiring?.from), ...flows }
}

function setAt({ installation, name }: Standing, place: string): SetSheet {
  const standing = installation.sets[place]
  if (standing !== undefined) return standing.set
  throw new TypeError(`no set stands at ${place} of ${name}`)
}

function curvesOf(standing: Standing, place: string): readonly Figure[] {
  return contextsOf(standing)
    .filter((context) => context.place.place === place)
    .flatMap((context) => speechCurves(context).map((plan) => context.figure(plan)))
}

function checkPicture(picture: string): void {
  if (PICTURES.some((one) => one === picture)) return
  const near = nearestName(picture, PICTURES)
  refuse({
    code: 'request-wrong',
    found: `the picture \`${picture}\``,
    expected: PICTURES.join(', '),
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}
