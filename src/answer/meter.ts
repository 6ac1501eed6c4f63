/** `meter`: what an instrument shows between two points, or the whole table of a set. */
import { SPEECH_FREQUENCY } from '../figures/speech.ts'
import { type Bench, benchOf } from '../meter/bench.ts'
import { LIVE, OPEN_AND_LIVE, topCaution, UNPLUG } from '../meter/cautions.ts'
import { type CordTable, cordTables, liftedFor } from '../meter/cords.ts'
import { type Instrument, rangesFor, SHOWN, type Shows, showsOf } from '../meter/instrument.ts'
import { isOuter, liveTableOf } from '../meter/live.ts'
import { markingsOf } from '../meter/markings.ts'
import { readBetween } from '../meter/read.ts'
import type { MeterReading, Wanted } from '../meter/reading.ts'
import { type Table, tableOf } from '../meter/table.ts'
import { type Held, untoldParts } from '../meter/untold.ts'
import { conditionOf } from '../netlist/condition.ts'
import { type NetPlace, placeOf } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { envelope } from './envelope.ts'
import { conditionOfRequest } from './find.ts'
import { kitOf } from './instruments-table.ts'
import type { MeterAnswer } from './meter-answer.ts'
import { namedPoint, pointJson } from './meter-points.ts'
import { type Standing, stand, type Where } from './standing.ts'
import { standsOf } from './stands.ts'
import { QUIET, type Tell } from './tell.ts'
import { toldOf } from './told-bench.ts'
import { whereAsked } from './where-asked.ts'

/** What is read. Without `on` the set is off its line, its plug open. */
export interface MeterRequest extends Where {
  /** Where the red lead is held, then the black one; the whole table when absent. */
  readonly between?: readonly [string, string]
  /** For one reading; on-hook when absent. */
  readonly condition?: string
  /** What is shown (`ohms`, `volts` …), or one range by its name; for one reading. Ohms when absent, volts on a live line, alternating while it rings. */
  readonly range?: string
  /** A delivered instrument, the first when absent; or one of several in `instrumentText`. */
  readonly instrument?: string
  readonly instrumentText?: SheetText
  /** The text of a table for one page of print; data are complete all the same. */
  readonly short?: boolean
}

/** Reads. */
export function meter(request: MeterRequest, shelf: Shelf, tell: Tell = QUIET): MeterAnswer {
  const grounded = request.on !== undefined || request.onText !== undefined
  const standing = stand(grounded ? request : { ...request, on: 'none' }, shelf)
  const kit = kitOf(request.instrument, request.instrumentText)
  const bench = toldOf(benchOf(standing.net, kit), tell)
  const live = standing.net.line !== undefined
  const head = (more: Readonly<Record<string, unknown>>) =>
    envelope(
      'meter',
      { meter: standing.name, ...whereAsked(request), ...more, instrument: kit.instrument.name },
      standing.warnings,
    )
  const { name, says, source } = kit.instrument
  const about = {
    outcome: 'answered' as const,
    instrument: {
      name,
      says,
      source,
      'red lead': kit.instrument['red lead'],
      'shows by': kit.instrument['shows by'],
    },
  }
  if (request.between !== undefined) {
    const one = oneReading(bench, standing, request, request.between)
    return {
      ...head(one.asked),
      ...about,
      stands: standsOf(standing),
      place: one.place.place,
      what: 'one',
      points: [],
      ...one.read,
      'not told': [],
      cautions: [
        live ? LIVE : UNPLUG,
        ...(live && one.inside ? [OPEN_AND_LIVE] : []),
        ...topCaution(one.read.readings),
      ],
      cords: [],
      markings: [],
    }
  }
  refuseIdle(request)
  const place = solePlace(standing)
  const table = live ? liveTable(bench, place) : tableOf(bench, place)
  const readings = table.pages.flatMap((page) => page.readings)
  const cords = live ? [] : cordTables(bench, place)
  return {
    ...head(request.short === true ? { short: true } : {}),
    ...about,
    stands: standsOf(standing),
    place: place.place,
    what: live ? 'live' : 'table',
    points: table.points.map((point) => pointJson(point, bench.net, place)),
    readings,
    cords,
    'not told': live ? [] : untoldParts(bench, place, heldAll(place, readings, cords)),
    cautions: [live ? LIVE : UNPLUG, ...topCaution(readings)],
    markings: live ? [] : markingsOf(bench.net, place),
  }
}

/** Every reading of a table with what is off its terminals while it is made. */
function heldAll(
  place: NetPlace,
  readings: readonly MeterReading[],
  cords: readonly CordTable[],
): readonly Held[] {
  return [
    ...readings.map((reading) => ({ reading })),
    ...cords.flatMap((cord) => cord.readings.map((reading) => ({ reading, lifted: liftedFor(place, cord) }))),
  ]
}

function oneReading(
  bench: Bench,
  standing: Standing,
  request: MeterRequest,
  between: readonly [string, string],
) {
  const { net, kit } = bench
  const places = standing.places
  const nodes = between.map((id) => namedPoint(net, places, id))
  const [red = 0, black = 0] = nodes
  if (red === black) {
    refuse({
      code: 'request-wrong',
      found: `\`${between[0]}\` twice`,
      expected: 'two different points to hold the leads to',
    })
  }
  const name = places.find((one) => nodes.some((node) => net.nodes[node]?.startsWith(`${one}/`))) ?? places[0]
  const place = placeOf(net, name ?? '')
  const written = conditionOfRequest(request.condition, 'on-hook')
  const condition = conditionOf(place.place, written, net.rest)
  const live = net.line !== undefined
  const usual = live ? (written.line === 'ringing' ? 'alternating-volts' : 'volts') : 'ohms'
  const wanted = wantedOf(kit.instrument, request.range ?? usual, live)
  const frequency = wanted.shows === 'alternating-volts' ? frequencyIn(bench, written.line) : undefined
  if (live && wanted.shows === 'alternating-volts' && frequency === undefined) refuseSilent(written.line)
  const reading = readBetween(
    bench,
    { red, black, condition },
    { ...wanted, ...(frequency === undefined ? {} : { frequency }) },
  )
  return {
    place,
    inside: nodes.some((node) => !isOuter(bench, node)),
    read: { readings: [reading] },
    asked: {
      red: reading.red,
      black: reading.black,
      condition: written,
      range: request.range ?? wanted.shows,
    },
  }
}

/** Hz of the alternating voltage on a line: ringing, or the tone that stands for speech; none on an idle line. */
function frequencyIn({ net }: Bench, line: string): number | undefined {
  return line === 'ringing' ? net.line?.ringingFrequency : line === 'speech' ? SPEECH_FREQUENCY : undefined
}

function refuseSilent(line: string): never {
  refuse({
    code: 'request-wrong',
    found: line === 'ringing' ? 'ringing on a line that cannot ring' : 'alternating volts on an idle line',
    expected: 'a line that rings or carries speech',
    mend: line === 'ringing' ? 'take another line' : 'add `--condition on-hook/ringing`',
  })
}

function wantedOf(instrument: Instrument, asked: string, live: boolean): Wanted {
  const names = Object.keys(instrument.ranges)
  const shown = SHOWN.filter((one) => rangesFor(instrument, one).length > 0)
  const range = Object.hasOwn(instrument.ranges, asked) ? instrument.ranges[asked] : undefined
  const shows = shown.find((one) => one === asked) ?? (range === undefined ? undefined : showsOf(range))
  if (shows === undefined) {
    const near = nearest(asked, [...shown, ...names])
    refuse({
      code: 'request-wrong',
      found: `the range \`${asked}\``,
      expected: `${shown.join(', ')}, or one range of the instrument \`${instrument.name}\` by its name: ${names.join(', ')}`,
      ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
    })
  }
  if (live && !isVolts(shows)) {
    refuse({
      code: 'request-wrong',
      found: `the range \`${asked}\` on a live line`,
      expected: 'volts, the only ranges that a live line bears',
      mend: 'unplug first: leave `--on` out, and the set is read by itself',
    })
  }
  return { shows, ...(range === undefined ? {} : { range: asked }) }
}

function isVolts(shows: Shows): boolean {
  return shows === 'volts' || shows === 'alternating-volts'
}

/** Options of one reading say nothing of a table. */
function refuseIdle({ condition, range }: MeterRequest): void {
  const idle = condition !== undefined ? 'condition' : range !== undefined ? 'range' : undefined
  if (idle === undefined) return
  refuse({
    code: 'request-wrong',
    found: `a ${idle} without two points`,
    expected: 'two points, for one reading; the table has conditions and ranges of its own',
    mend: 'add `--between plug.a plug.b`',
  })
}

function solePlace({ net, places, name }: Standing): NetPlace {
  const [place] = places
  if (place !== undefined && places.length === 1) return placeOf(net, place)
  refuse({
    code: 'request-wrong',
    found: `${name}, where ${places.length === 0 ? 'no set stands' : `${places.length} sets stand`}`,
    expected: 'one set, for a table',
    mend: `name the set, or two points: ${pairExample(net.places)}`,
  })
}

/** The first two cores of a plug among several sets, as a person would write them. */
function pairExample(places: readonly NetPlace[]): string {
  for (const { place, cores } of places) {
    const [one, other] = cores.filter(({ endsIn }) => endsIn === 'plug')
    if (one !== undefined && other !== undefined)
      return `\`--between ${place}/plug.${one.core} ${place}/plug.${other.core}\``
  }
  return '`--between` and their names'
}

/** A set that no socket takes has no line to be alive on. */
function liveTable(bench: Bench, place: NetPlace): Table {
  if (place.socket !== undefined) return liveTableOf(bench, place)
  refuse({
    code: 'request-wrong',
    found: `${place.set} in no socket`,
    expected: 'a set that is plugged in, for readings on a live line',
    mend: 'leave `--on` out',
  })
}
