/** Everything that shows while a set is used on its line, in plain words. */
import type { BenchTest } from '../bench-test.ts'
import { onLine, type Sound } from './bench-set.ts'
import { diallingTests } from './dialling.ts'
import { eitherWayTests } from './either-way.ts'
import { loopTests } from './loop.ts'
import { othersTests } from './others.ts'
import { ringingTests } from './ringing.ts'
import { speechTests } from './speech.ts'

/** Ids of all symptoms that some set on some line may show; part of the interface. */
export const SYMPTOMS: readonly string[] = Object.freeze([
  'rings',
  'rings-alone',
  'stops-ringing',
  'goes-on-ringing',
  'engaged',
  'tone',
  'heard',
  'hears',
  'talk',
  'own-voice',
  'others',
  'others-ring',
  'others-tone',
  'either-way',
  'dial-breaks',
  'dial-mutes',
])

/** The symptoms of a set on its line; none where it stands on no line. */
export function symptomTests(sound: Sound): readonly BenchTest[] {
  const bench = onLine(sound)
  if (bench === undefined) return []
  const all = [
    ...ringingTests(bench),
    ...loopTests(bench),
    ...speechTests(bench),
    ...othersTests(bench),
    ...eitherWayTests(bench),
    ...diallingTests(bench),
  ]
  return all.sort((p, q) => SYMPTOMS.indexOf(p.id) - SYMPTOMS.indexOf(q.id))
}
