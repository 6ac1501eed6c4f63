/** How loud a speaker is in the own receiver. */
import { amountOf } from '../../figures/figure.ts'
import { speechPlans } from '../../figures/speech.ts'
import { type Rule, when } from '../context.ts'
import type { Verdict } from '../rule.ts'
import { feedOf, isGood, leastFeed } from './feed.ts'
import { below, decibels, NO_SPEECH, noLimit, notSaid, speaking, unasked } from './path.ts'

/**
 * Its own voice in the receiver, beside a far voice as strong as the speaker's. There is no trustworthy limit for a
 * ratio of currents: the published ratings of sidetone are of sound, and of sets much later than these.
 */
export const sidetone: Rule = {
  id: 'speech.sidetone',
  asks: 'Is its own voice in the receiver tolerable?',
  run(context): readonly Verdict[] {
    const early = unasked(context, sidetone.id)
    if (early !== undefined) return [early]
    const path = speaking(context)
    if (path === undefined)
      return [notSaid(context, sidetone.id, 'The handset lacks its transmitter or its receiver.')]
    const [send, receive, own] = speechPlans(path, when(context, 'off-hook/speech')).map((plan) =>
      context.figure(plan),
    )
    if (send === undefined || receive === undefined || own === undefined)
      throw new RangeError('a path of speech has three figures')
    const says = isGood(feedOf(context, path.sender), leastFeed(context))
      ? wordsOf(amountOf(own), amountOf(receive), amountOf(send))
      : 'No direct current to speak of feeds its transmitter, so that its own voice is not heard.'
    return [noLimit(context, sidetone.id, own, says, [receive])]
  },
}

/** The three currents of speech in words, A. */
function wordsOf(own: number, receive: number, send: number): string {
  const silent = own < NO_SPEECH
  if (silent && receive < NO_SPEECH) return 'Nothing at all is heard in the receiver.'
  if (silent && send < NO_SPEECH) return 'Its own voice is not heard, and is not sent either.'
  if (silent) return 'Its own voice is not heard in the receiver: the balance is perfect.'
  const apart = receive < NO_SPEECH ? undefined : below(own, receive)
  if (apart === undefined) return 'Only its own voice is heard in the receiver.'
  if (apart >= 0)
    return `Its own voice is ${decibels(apart)} below a far voice as strong as it; no trustworthy limit is known for that.`
  return `Its own voice is ${decibels(apart)} louder than a far voice as strong as it, as in a set without a balance network; no trustworthy limit is known for that.`
}
