/** Parts: none left out, the unit where it is needed, the quench across the impulse contact. */

import { between } from '../../figures/between.ts'
import { loopCurrent } from '../../figures/loop.ts'
import { SPEECH_FREQUENCY } from '../../figures/speech.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { bridgesOf } from '../../netlist/paths.ts'
import { plugLinks, type Rule, short, when } from '../context.ts'
import { judge } from '../judge.ts'
import { limitOf } from '../limits.ts'
import { noLine } from './loop.ts'

/** Does every part of the set lie on a closed way, with all contacts thought closed? */
export const noPartLeftOut: Rule = {
  id: 'wiring.no-part-left-out',
  asks: 'Is every part of the set in some circuit?',
  run(context) {
    const { net, place } = context
    // the line closes circuits that are open in a set alone
    if (place.socket === undefined) return [noLine(context, noPartLeftOut.id)]
    const condition = when(context, 'off-hook/speech')
    const bridges = bridgesOf(net, () => true)
    const own = net.branches.filter(
      (branch) =>
        branch.part.place === place.place && (branch.part.sort === 'part' || branch.part.sort === 'unit'),
    )
    const out = own.filter((branch) => bridges.has(branch.index))
    const limit = limitOf(context.limits, 'core-reach')
    return out.length === 0
      ? [
          {
            check: noPartLeftOut.id,
            subject: place.place,
            condition,
            state: 'holds',
            says: `All ${own.length} branches of its parts lie on closed ways.`,
            figure: null,
            limit: null,
            margin: null,
            path: [],
          },
        ]
      : out.map((branch) =>
          judge({
            check: noPartLeftOut.id,
            subject: branch.id,
            figure: context.figure(
              between(net, branch.from, branch.to, {
                condition,
                lifted: [branch.index],
                frequency: SPEECH_FREQUENCY,
              }),
            ),
            limit,
            path: [branch.from, branch.to].map((node) => nodeName(net, node)),
            says: {
              good: `${short(context, branch.id)} is in a circuit.`,
              bad: `${short(context, branch.id)} is in no circuit: one of its ends leads nowhere.`,
            },
            mend: 'fit the strap or land the core that its free end waits for',
          }),
        )
  },
}

/** Is a plug-in unit present where the set needs one? */
export const unitAsNeeded: Rule = {
  id: 'wiring.unit-as-needed',
  asks: 'Is the plug-in unit present where the set needs one?',
  run(context) {
    const { net, place } = context
    const condition = when(context, 'off-hook')
    const figure =
      net.line === undefined || place.socket === undefined
        ? null
        : context.figure(loopCurrent(net, place, condition))
    const base = { check: unitAsNeeded.id, condition, figure, limit: null, margin: null }
    const slots = place.slots.filter((slot) => slot.needsUnit)
    if (slots.length === 0) {
      return [
        { ...base, subject: place.place, state: 'holds', says: 'The set needs no plug-in unit.', path: [] },
      ]
    }
    return slots.map((slot) => {
      const path = slot.sockets.map((node) => nodeName(net, node))
      if (slot.fitted !== undefined) {
        return { ...base, subject: slot.name, state: 'holds', says: `${slot.fitted} is plugged in.`, path }
      }
      return {
        ...base,
        subject: slot.name,
        state: 'fails',
        says: `The slot ${slot.name} needs a unit and is empty.`,
        path,
        mend: `plug the unit that belongs there into ${slot.name}`,
      }
    })
  },
}

/** Is the impulse contact still quenched? */
export const quenchPresent: Rule = {
  id: 'wiring.quench-present',
  asks: 'Is a spark quench across the impulse contact?',
  run(context) {
    const { net, place } = context
    const contacts = net.branches.filter(
      (branch) =>
        branch.part.place === place.place &&
        (branch.part.gate?.word === 'break' || branch.part.gate?.word === 'make'),
    )
    if (contacts.length === 0) {
      return [
        {
          ...noLine(context, quenchPresent.id),
          reason: 'undetermined',
          says: 'The set has no impulse contact.',
        },
      ]
    }
    const condition = when(context, 'off-hook/break')
    const lifted = (branch: Branch): readonly number[] => [branch.index, ...plugLinks(context)]
    return contacts.map((branch) => {
      const open = context.figure(between(net, branch.from, branch.to, { condition, lifted: lifted(branch) }))
      const openLimit = limitOf(context.limits, 'break-open')
      const bridged = open.value !== null && open.value < openLimit.value
      if (bridged) {
        return judge({
          check: quenchPresent.id,
          subject: branch.id,
          figure: open,
          limit: openLimit,
          path: [branch.from, branch.to].map((node) => nodeName(net, node)),
          says: {
            good: 'The impulse contact opens the loop.',
            bad: 'Something bridges the impulse contact, so that the dial cannot break the loop.',
          },
          mend: 'take off the strap or part that lies across the impulse contact',
        })
      }
      return judge({
        check: quenchPresent.id,
        subject: branch.id,
        figure: context.figure(
          between(net, branch.from, branch.to, {
            condition,
            lifted: lifted(branch),
            frequency: SPEECH_FREQUENCY,
          }),
        ),
        limit: limitOf(context.limits, 'quench-present'),
        path: [branch.from, branch.to].map((node) => nodeName(net, node)),
        says: {
          good: 'The impulse contact is quenched.',
          bad: 'Nothing quenches the sparks of the impulse contact.',
        },
        mend: 'put the quench back across the impulse contact; it may have shared the capacitor that was taken out',
      })
    })
  },
}
