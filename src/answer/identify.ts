/** `identify`: which known set lies on the bench, by what was read and seen of it. */
import { observedOf } from '../identify/columns.ts'
import { coveredBy } from '../identify/covered.ts'
import { differencesOf } from '../identify/differences.ts'
import { doubted } from '../identify/doubted.ts'
import { standingFindings, takenBack } from '../identify/evidence.ts'
import { readerOf, readsOhms } from '../identify/expected.ts'
import { judge } from '../identify/judge.ts'
import { knownSets } from '../identify/known.ts'
import { insideSightings } from '../identify/seen/inside.ts'
import { outsideSightings } from '../identify/seen/outside.ts'
import { type Laid, LEADS, rankStage, stageOf, stillAlive } from '../identify/stage.ts'
import { impliedStraps } from '../identify/straps.ts'
import { strayTerminals } from '../identify/stray.ts'
import { unreadShare } from '../identify/unread.ts'
import { UNPLUG } from '../meter/cautions.ts'
import type { Problem } from '../problem.ts'
import { refuse } from '../problem.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import { envelope } from './envelope.ts'
import type { IdentifyAnswer } from './identify-answer.ts'
import {
  findingJson,
  groupJson,
  likeMost,
  nextJson,
  rankGroups,
  sureWords,
  takenBackJson,
} from './identify-parts.ts'
import { readingFrom } from './identify-reading.ts'
import { sheetsInReach, unitsInReach } from './identify-sheets.ts'
import { sightingFrom } from './identify-words.ts'
import { kitOf } from './instruments-table.ts'
import { deliveredSightings } from './sightings-table.ts'
import { QUIET, type Tell } from './tell.ts'

/** What was found, and what it is compared with. */
export interface IdentifyRequest {
  /** `A3 A4 on-hook 0.2 Ω`: red lead, black lead, condition, what the meter shows; the cords are off. */
  readonly readings?: readonly string[]
  /** `slot=yes`, `strap=B2-B3`, `board=loom`. */
  readonly seen?: readonly string[]
  /** Whether what the rewires in reach make of their sets is compared too. */
  readonly rewires?: boolean
  /** Ids of readings and sightings that are not to be asked for. */
  readonly skipped?: readonly string[]
  /** A delivered instrument, the first when absent; or one of several in `instrumentText`. */
  readonly instrument?: string
  readonly instrumentText?: SheetText
}

/** The known sets laid out for any number of questions about one set on the bench; what was read once is kept. */
export type Identifier = (found: Pick<IdentifyRequest, 'readings' | 'seen' | 'skipped'>) => IdentifyAnswer

/** Which known set it is. */
export function identify(request: IdentifyRequest, shelf: Shelf, tell: Tell = QUIET): IdentifyAnswer {
  return identifier(request, shelf, tell)(request)
}

/** Lays the known sets out. */
export function identifier(
  request: Pick<IdentifyRequest, 'rewires' | 'instrument' | 'instrumentText'>,
  shelf: Shelf,
  tell: Tell = QUIET,
): Identifier {
  const kit = kitOf(request.instrument, request.instrumentText)
  if (!readsOhms(kit)) {
    refuse({
      code: 'request-wrong',
      found: `the instrument \`${kit.instrument.name}\`, which has no range of ohms`,
      expected: 'an instrument that reads ohms',
    })
  }
  const { sheets, problems } = sheetsInReach(shelf, request.rewires === true)
  const known = knownSets(sheets, unitsInReach(shelf))
  if (known.length === 0) {
    refuse({
      code: 'file-missing',
      found: 'no set sheet in reach',
      expected: 'at least one set to compare with',
      mend: 'name the folder of your sheets by `--sheets`',
    })
  }
  const odds = deliveredSightings()
  const bench: Bench = {
    known,
    odds,
    reader: readerOf(kit, odds),
    sightings: [...outsideSightings(known), ...insideSightings(known)],
    instrument: kit.instrument.name,
    problems,
    rewires: request.rewires === true,
    tell,
  }
  return (found) => answerOf(bench, found)
}

interface Bench extends Laid {
  readonly instrument: string
  readonly problems: readonly Problem[]
  readonly rewires: boolean
  readonly tell: Tell
}

/** An observation that tells less than so many bits informs no more. */
const TELLS = 0.01

function answerOf(
  bench: Bench,
  request: Pick<IdentifyRequest, 'readings' | 'seen' | 'skipped'>,
): IdentifyAnswer {
  const { known, odds, reader } = bench
  const given = [
    ...(request.readings ?? []).map((one) => readingFrom(one, odds.reading.open.value)),
    ...(request.seen ?? []).flatMap((one) => sightingFrom(one, bench.sightings, known) ?? []),
  ]
  const findings = standingFindings(given)
  const judged = judge(known, observedOf(findings, reader, odds), odds, (one) => unreadShare(one, findings))
  const alive = stillAlive(judged)
  const skipped = new Set(request.skipped ?? [])
  const stage = stageOf(bench, alive, findings, skipped, (done, of) => {
    if (done % 50 === 0) bench.tell(`reading the known sets: question ${done} of ${of}`)
  })
  const groups = rankGroups(stage.groups, judged)
  const [lead] = groups
  const leadProbability = lead?.probability ?? 0
  const finds = findsOf(leadProbability, judged.unknown)
  const first = known[lead?.members[0] ?? 0]
  const next = known[groups[1]?.members[0] ?? -1]
  const most = Math.max(leadProbability, judged.unknown)
  const again = first === undefined ? undefined : doubted(findings, first, reader, skipped)
  const best = most >= LEADS ? undefined : (again ?? rankStage(bench, stage, judged, findings)[0])
  return {
    ...envelope('identify', requestOf(bench, request), bench.problems),
    outcome: 'answered',
    instrument: bench.instrument,
    finds,
    sure: sureWords(finds === 'unknown' ? judged.unknown : leadProbability),
    compared: known.length,
    groups: groups.map((group) => groupJson(group, known)),
    unknown: {
      probability: judged.unknown,
      changed: judged.changed.reduce((sum, one) => sum + one, 0),
      foreign: judged.foreign,
      ...likeMost(judged, known),
    },
    findings: findings.map((one) => findingJson(one, first, next, reader)),
    'taken back': takenBack(given).map(takenBackJson),
    stray: strayTerminals(findings, known),
    differences: first === undefined || next === undefined ? [] : differencesOf(first, next),
    ...(best === undefined || best.bits < TELLS
      ? {}
      : { next: { ...nextJson(best, bench, alive), again: best === again } }),
    unread: coveredBy(findings, first).unread,
    straps: impliedStraps(findings, odds.reading.joined.value),
    cautions: [UNPLUG],
  }
}

function requestOf(
  { instrument, rewires }: Bench,
  { readings, seen, skipped }: Pick<IdentifyRequest, 'readings' | 'seen' | 'skipped'>,
): Readonly<Record<string, unknown>> {
  return {
    readings: readings ?? [],
    seen: seen ?? [],
    ...(skipped === undefined || skipped.length === 0 ? {} : { skipped }),
    ...(rewires ? { rewires } : {}),
    instrument,
  }
}

function findsOf(lead: number, unknown: number): IdentifyAnswer['finds'] {
  if (unknown > 0.5) return 'unknown'
  if (lead >= LEADS) return 'one'
  return lead >= LEADS * (1 - unknown) ? 'like-one' : 'several'
}
