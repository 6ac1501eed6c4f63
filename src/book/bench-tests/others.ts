/** Whether other telephones on the line work while this set is plugged in and hung up. */
import type { BenchTest } from '../bench-test.ts'
import { amiss, ask, fine } from './ask.ts'
import { beside, type OnLine, othersOf, plugLinksOf } from './bench-set.ts'
import { loudnessOf } from './loudness.ts'
import { after, least, type Measure } from './measure.ts'
import { setRings, soundScore, wellFrom } from './ringing.ts'
import { speechCuts, toneAt } from './speech.ts'

/**
 * The bells of other sets, the one that fares worst, each over what rings it well beside this set when that is sound;
 * those that would not ring then say nothing of it.
 */
function othersRing(bench: OnLine): Measure | undefined {
  const all = othersOf(bench).flatMap((other) => {
    const rings = setRings(bench, other)
    const sound = rings === undefined ? 0 : soundScore(bench, rings)
    return rings === undefined || sound < 1 ? [] : [overDue(rings, wellFrom(bench, sound))]
  })
  return all.length === 0 ? undefined : least(...all)
}

/** A measure as a share of what is due of it. */
function overDue(one: Measure, due: number): Measure {
  return after(one, (value) => value / due)
}

/** Dial tone at the first other set that has it with this one unplugged. */
function toneElsewhere(bench: OnLine): Measure | undefined {
  const [, clear = 1] = speechCuts(bench)
  const lifted = plugLinksOf(bench.net, [bench.place])
  for (const place of othersOf(bench)) {
    const there = beside(bench, place)
    const tone = there && toneAt(there, loudnessOf(there))
    // by itself, whatever this set does to it
    if (tone !== undefined && soundScore(bench, without(tone, lifted)) >= clear) return tone
  }
  return undefined
}

/** A measure with some branches taken out of all its questions. */
function without(one: Measure, lifted: readonly number[]): Measure {
  const plans = one.plans.map((plan) => ({
    ...plan,
    taps: plan.taps.map((tap) => ({
      ...tap,
      question: { ...tap.question, lifted: [...(tap.question.lifted ?? []), ...lifted] },
    })),
  }))
  return { ...one, plans }
}

/** Symptoms at the other sets; none where no other set stands on the line. */
export function othersTests(bench: OnLine): readonly BenchTest[] {
  const bells = othersRing(bench)
  const tone = toneElsewhere(bench)
  return [...whole(bench, bells, tone), ...ringing(bench, bells), ...tones(bench, tone)]
}

/** Both at once: the lesser of what is rung and what is heard, each over what is well. */
function whole(bench: OnLine, bells: Measure | undefined, tone: Measure | undefined): readonly BenchTest[] {
  const [, clear = 1] = speechCuts(bench)
  const all = [...(bells === undefined ? [] : [bells]), ...(tone === undefined ? [] : [overDue(tone, clear)])]
  if (all.length === 0) return []
  return [
    ask(bench, {
      id: 'others',
      asks: 'Do the other telephones on this line work while this one is plugged in and hung up?',
      how: 'Leave this handset down. Have the line called and listen to the other bells; lift another handset and listen for the tone. What works with this set unplugged is to work beside it.',
      when: 'on-hook',
      measure: least(...all),
      answers: [
        amiss('affected', 'something fails that works without it', 'no'),
        fine('work', 'they work', 'yes'),
      ],
      cuts: [1],
    }),
  ]
}

function ringing(bench: OnLine, bells: Measure | undefined): readonly BenchTest[] {
  if (bells === undefined) return []
  return [
    ask(bench, {
      id: 'others-ring',
      asks: 'Do the other bells on this line ring while this set is plugged in?',
      how: 'Leave everything plugged in and every handset down, and have the line called. What rings well with this set unplugged is to ring well beside it.',
      when: 'on-hook/ringing',
      measure: bells,
      answers: [
        amiss('silent', 'one of them is silent', 'no'),
        amiss('weak', 'one of them rings weakly', 'no'),
        fine('ring', 'they ring well', 'yes'),
      ],
      cuts: [bench.limit('bell-silent') / bench.limit('bell-well'), 1],
    }),
  ]
}

function tones(bench: OnLine, tone: Measure | undefined): readonly BenchTest[] {
  if (tone === undefined) return []
  return [
    ask(bench, {
      id: 'others-tone',
      asks: 'Do the other telephones on this line have dial tone while this one is plugged in and hung up?',
      how: 'Leave this handset down and lift another one that has tone with this set unplugged.',
      when: 'on-hook',
      measure: tone,
      answers: [amiss('none', 'none', 'no'), amiss('faint', 'faint', 'yes'), fine('clear', 'clear', 'yes')],
      cuts: speechCuts(bench),
    }),
  ]
}
