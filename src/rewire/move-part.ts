/** Parts fitted, lifted and bridged. */
import { kindOf, PARTS } from '../parts/index.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Place } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SetSheet } from '../sheet/model.ts'
import { oneOf, ticked, write } from '../sheet/wording.ts'
import { entryOf, forgotten, movedTo, withEntry, withoutEntry } from './entries.ts'
import { type Outcome, refused } from './outcome.ts'
import { hasTerminal, unknownTerminal } from './terminals.ts'

/** Where parts of a set live: on its base, or in its handset with cores for ends. */
type Home = 'parts' | 'handset'

/** Maps whose names are ids of branches or of what holds them: one space, so that an id means one thing. */
const ID_MAPS = ['contacts', 'parts', 'slots', 'cords', 'handset'] as const

/** Fits a new part under a free name; its ends are terminals, joints and earth, or cores of the handset cord. */
export function fitPart(set: SetSheet, name: string, spec: PartSpec, place: Place | undefined): Outcome {
  if (isTaken(set, name)) {
    const mend = 'choose another name, or lift what stands there first'
    return refused(`the name ${ticked(name)}, already taken in ${ticked(set.name)}`, 'a free name', mend)
  }
  const kind = PARTS.get(spec.kind)
  if (kind === undefined) {
    return refused(
      `the kind ${ticked(spec.kind)}`,
      oneOf(PARTS.keys(), ''),
      write(nearest(spec.kind, PARTS.keys())),
    )
  }
  const [problem] = kind.check?.(spec) ?? []
  if (problem !== undefined) return refused(problem.found, problem.expected, problem.mend)
  const ends = endsOf(spec)
  const stray = ends.find((end) => !isOnBase(set, end))
  if (stray === undefined) return fitted(set, 'parts', name, spec, place)
  const cores = handsetCores(set)
  return ends.every((end) => cores.includes(end))
    ? fitted(set, 'handset', name, spec, place)
    : unknownEnd(set, stray)
}

/** Takes a part out. Contacts, straps, cores and units have moves of their own or stay. */
export function liftPart(set: SetSheet, name: string): Outcome {
  const home = homeOf(set, name)
  if (home === undefined) return unknownPart(set, name)
  const places = forgotten(set.places, `${home}.${name}`)
  return { set: { ...set, [home]: withoutEntry(set[home], name), places } }
}

/** Joins the two ends of a part by a strap, named after the part. */
export function bridgePart(set: SetSheet, name: string, place: Place | undefined): Outcome {
  const home = homeOf(set, name)
  const spec = home === undefined ? undefined : entryOf(set[home], name)
  if (home === undefined || spec === undefined) return unknownPart(set, name)
  const [from, to, third] = endsOf(spec)
  if (from === undefined || to === undefined || third !== undefined) {
    const found = `${ticked(name)}, a part with the ends ${endsOf(spec).map(ticked).join(', ')}`
    return refused(found, 'a part with two ends', 'fit a strap between the two terminals that are meant')
  }
  const bridge = `${name}-bridge`
  if (isTaken(set, bridge)) {
    return refused(
      `the part ${ticked(name)}, already bridged by ${ticked(bridge)}`,
      'a part without a bridge',
    )
  }
  const link = { kind: 'strap', from, to }
  return fitted(set, home, bridge, link, place)
}

function fitted(set: SetSheet, home: Home, name: string, spec: PartSpec, place: Place | undefined): Outcome {
  const places = movedTo(set.places, `${home}.${name}`, place)
  return { set: { ...set, [home]: withEntry(set[home], name, spec), places } }
}

function isTaken(set: SetSheet, name: string): boolean {
  return ID_MAPS.some((map) => Object.hasOwn(set[map], name))
}

function homeOf(set: SetSheet, name: string): Home | undefined {
  return (['parts', 'handset'] as const).find((home) => Object.hasOwn(set[home], name))
}

/** Names of a part's ends, each once. */
function endsOf(spec: PartSpec): readonly string[] {
  const plans = kindOf(spec).branches(spec)
  return [...new Set(plans.flatMap(({ from, to }) => [from, to]))]
}

function isOnBase(set: SetSheet, end: string): boolean {
  return end === 'earth' || set.joints.includes(end) || hasTerminal(set, end)
}

function handsetCores(set: SetSheet): readonly string[] {
  return Object.values(set.cords)
    .filter((cord) => cord['ends in'] === 'handset')
    .flatMap(({ cores }) => Object.keys(cores))
}

function unknownEnd(set: SetSheet, end: string): Outcome {
  if (/^[A-Z]+[0-9]+$/.test(end) || hasTerminal(set, end.toUpperCase())) return unknownTerminal(set, end)
  const words = [...set.joints, 'earth']
  return refused(`the end ${ticked(end)}`, `a terminal, ${oneOf(words, '')}`, write(nearest(end, words)))
}

function unknownPart(set: SetSheet, name: string): Outcome {
  const names = [...Object.keys(set.parts), ...Object.keys(set.handset)]
  return refused(
    `the part ${ticked(name)}, which is not in ${ticked(set.name)}`,
    `a part: ${oneOf(names, 'the set has none')}`,
    write(nearest(name, names)),
  )
}
