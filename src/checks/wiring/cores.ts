/** Handset cores: separate from each other, and each in the circuit of its part. */

import { between } from '../../figures/between.ts'
import type { Figure } from '../../figures/figure.ts'
import { SPEECH_FREQUENCY } from '../../figures/speech.ts'
import { conducting, linksOf } from '../../netlist/conduct.ts'
import type { Branch, NetCore } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import { pathBetween } from '../../netlist/paths.ts'
import { type CheckContext, nodeShort, type Rule, roleBranches, when } from '../context.ts'
import { judge, shown, worst } from '../judge.ts'
import { limitOf } from '../limits.ts'
import type { Consequence, Verdict } from '../rule.ts'
import { bestLanding, type Landing, landed, landingMove, speechFigures } from './landing.ts'
import { noLine } from './loop.ts'

/** Are the handset cores separate? Judged by the function lost; a joining without effect is a remark. */
export const coresSeparate: Rule = {
  id: 'wiring.cores-separate',
  asks: 'Are the handset cores separate from each other?',
  run(context) {
    const cores = context.place.cores.filter((core) => core.endsIn === 'handset')
    const links = linksOf(conducting(context.net, when(context, 'off-hook/speech'), 'direct'))
    const verdicts: Verdict[] = []
    cores.forEach((first, k) => {
      for (const second of cores.slice(k + 1)) {
        const path = pathBetween(context.net, links, first.far, second.far)
        if (path !== undefined) verdicts.push(joined(context, [first, second], path.nodes))
      }
    })
    return verdicts.length > 0 ? verdicts : [separate(context, cores)]
  },
}

function joined(context: CheckContext, pair: readonly [NetCore, NetCore], nodes: readonly number[]): Verdict {
  const now = speechFigures(context)
  const best = bestLanding(context, pair)
  const path = nodes.map((node) => nodeName(context.net, node))
  const [first, second] = pair
  const together = `${first.name} and ${second.name} are joined`
  const meant = context.place.common.some(
    (group) => group.includes(first.name) && group.includes(second.name),
  )
  const limit = limitOf(context.limits, 'joined-cores')
  // sidetone is not a function: less of it is no loss
  const losses = [0, 1].map((k) => loss(now[k], best?.figures[k]))
  const [sendLeft = Number.POSITIVE_INFINITY, receiveLeft = Number.POSITIVE_INFINITY] = losses
  const worstLoss = sendLeft < receiveLeft ? 0 : 1
  const left = Math.min(sendLeft, receiveLeft)
  const figure = now[worstLoss] ?? null
  const reference = losses[worstLoss] === undefined ? null : (best?.figures[worstLoss]?.value ?? null)
  const head = {
    check: coresSeparate.id,
    subject: `${first.name}, ${second.name}`,
    condition: when(context, 'off-hook/speech'),
    figure,
    limit:
      reference === null ? null : { ...shown(limit), value: limit.value * reference, unit: 'A' as const },
    margin: reference === null || figure?.value == null ? null : figure.value / (limit.value * reference) - 1,
    path,
    consequences: consequencesOf(now, best),
  }
  if (left >= limit.value && losses.includes(undefined)) {
    return {
      ...head,
      state: 'unknown',
      reason: context.net.line ? 'undetermined' : 'no-line',
      says:
        now.length === 0
          ? `${together}; without a speech path nothing more can be said.`
          : `${together}; no other landing of these cores gives speech to compare with.`,
    }
  }
  if (left >= limit.value) {
    const lost = Math.round((1 - left) * 100)
    const what = worstLoss === 0 ? 'send' : 'receive'
    const follows = lost < 1 ? 'no speech current is lost' : `${lost} % of the ${what} current is lost`
    const remark = meant ? `${together}, as this set means them to be.` : `${together}; ${follows} by it.`
    return { ...head, state: 'holds', says: remark, remark }
  }
  return {
    ...head,
    state: 'fails',
    says: `${together}, and the ${worstLoss === 0 ? 'send' : 'receive'} current is ${left < 1e-3 ? 'gone' : 'mostly gone'}.`,
    mend: landingMove(context, best?.moves ?? []),
  }
}

/** A speech current below this for 1 V is none, A: it leaks through open contacts. */
const NO_SPEECH = 1e-6

/** Share of a figure that is left beside the same figure with the mend; undefined where the mend gives none either. */
function loss(now: Figure | undefined, mended: Figure | undefined): number | undefined {
  if (now?.value == null || mended?.value == null || mended.value < NO_SPEECH) return undefined
  return now.value / mended.value
}

function consequencesOf(now: readonly Figure[], best: Landing | undefined): readonly Consequence[] {
  return now.map((figure, k) => {
    const mended = best?.figures[k]
    return mended === undefined ? { figure } : { figure, mended }
  })
}

function separate(context: CheckContext, cores: readonly NetCore[]): Verdict {
  const condition = when(context, 'off-hook/speech')
  const base = {
    check: coresSeparate.id,
    subject: context.place.place,
    condition,
    state: 'holds' as const,
    limit: null,
    margin: null,
    path: [],
  }
  const handset = [...roleBranches(context, 'sender'), ...roleBranches(context, 'receiver')].map(
    (one) => one.index,
  )
  const figures = cores.flatMap((first, k) =>
    cores
      .slice(k + 1)
      .map((second) =>
        context.figure(between(context.net, first.far, second.far, { condition, lifted: handset })),
      ),
  )
  const figure = figures.length === 0 ? null : worst(figures, 'at-least')
  return { ...base, figure, says: 'No two handset cores are joined by straps or contacts.' }
}

/** Does each handset core reach its part? A part that sees no closed way between its cores is out of the circuit. */
export const coresReachParts: Rule = {
  id: 'wiring.cores-reach-parts',
  asks: 'Does each handset core put its part into the circuit?',
  run(context) {
    const parts = [...roleBranches(context, 'sender'), ...roleBranches(context, 'receiver')]
    // the line closes circuits that are open in a set alone
    if (parts.length > 0 && context.place.socket === undefined) return [noLine(context, coresReachParts.id)]
    if (parts.length > 0) return parts.map((part) => reach(context, part))
    return [
      {
        ...noLine(context, coresReachParts.id),
        reason: 'undetermined',
        says: 'The set has no handset part.',
      },
    ]
  },
}

function reach(context: CheckContext, part: Branch): Verdict {
  const condition = when(context, 'off-hook/speech')
  const seen = (changes: object): Figure =>
    context.figure(
      between(context.net, part.from, part.to, { condition, frequency: SPEECH_FREQUENCY, ...changes }),
    )
  const figure = seen({ lifted: [part.index] })
  const cores = context.place.cores.filter((core) => core.far === part.from || core.far === part.to)
  const reachLimit = limitOf(context.limits, 'core-reach')
  const shortLimit = limitOf(context.limits, 'core-short')
  const shorted = figure.value !== null && figure.value < shortLimit.value
  const limit = shorted ? shortLimit : reachLimit
  const where = cores
    .map(
      (core) =>
        `${core.name} ${core.lands === undefined ? 'is parked' : `on ${nodeShort(context, core.lands)}`}`,
    )
    .join(', ')
  return judge({
    check: coresReachParts.id,
    subject: part.id,
    figure,
    limit,
    path: cores.flatMap((core) =>
      core.lands === undefined
        ? [nodeName(context.net, core.far)]
        : [core.far, core.lands].map((node) => nodeName(context.net, node)),
    ),
    says: {
      good: `The ${part.part.name} is in the circuit (${where}).`,
      bad: shorted
        ? `The ${part.part.name} is shorted: ${where}, and a link joins the two.`
        : `The ${part.part.name} is out of the circuit: ${where}, and no closed way leads from one core to the other.`,
    },
    mend: mendOf(context, part, cores, (core, terminal) => {
      const changes = landed(core, terminal)
      const value = seen({ ...changes, lifted: [part.index, ...(changes.lifted ?? [])] }).value
      return value !== null && value <= reachLimit.value && value >= shortLimit.value
    }),
  })
}

/** The first landing, by the set's own sheets, that puts the part back into the circuit. */
function mendOf(
  context: CheckContext,
  part: Branch,
  cores: readonly NetCore[],
  works: (core: NetCore, terminal: number) => boolean,
): string {
  for (const core of cores) {
    for (const terminal of core.meant) {
      if (terminal !== core.lands && works(core, terminal)) return landingMove(context, [{ core, terminal }])
    }
  }
  return `land the cores of the ${part.part.name} as the sheet of this set shows`
}
