// A fault book: every single fault of a set in the workshop and thousands of pairs, all conditions and figures, beside
// a solve of its own of each by a general library.
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { library } from './built.mjs'
import { inTurns, median, processorTime } from './clock.mjs'
import { local } from './matrices.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { faster, within } from './table.mjs'

const processes = 3
const root = fileURLToPath(new URL('../..', import.meta.url))
const sets = ['fescue', 'sedge', 'melick', 'foxtail']
/** The set of the goals, and pairs of its faults that are timed and that the goals are about. */
const asked = 'fescue'
const timed = 2000
const wanted = 45_000
const nineDigits = 1e-9
const halfASecond = 500_000

async function modules(...names) {
  const all = await Promise.all(names.map(library))
  return Object.assign({}, ...all)
}

/** What goes wrong in a set: modes of its parts, links open or bad, bridges between neighbours. */
function changesOf(net, place) {
  const modes = net.parts.flatMap((part, index) => {
    if (part.place !== place) return []
    const branches = net.branches.slice(part.first, part.first + part.count)
    const own = (part.law.modes?.(part.spec) ?? []).flatMap(({ branch, change }) => {
      if ('instead' in change) return [{ instead: { part: index, spec: change.instead } }]
      const some = branches.filter((_, k) => branch === undefined || branch === k)
      return some.map(({ index: k, from, to }) => {
        if ('across' in change) return { bridge: { from, to, ohms: change.across } }
        return 'within' in change ? { within: { branch: k, ohms: change.within } } : { lifted: k }
      })
    })
    const links = [{ lifted: part.first }, { within: { branch: part.first, ohms: 20 } }]
    return part.role === 'link' ? [...own, ...links] : own
  })
  const { terminals } = net.places.find((one) => one.place === place)
  const bridges = terminals
    .slice(1)
    .flatMap((to, k) => [0.01, 1000, 10_000].map((ohms) => ({ bridge: { from: terminals[k], to, ohms } })))
  return [...modes, ...bridges]
}

/** Figures of direct current, of 25 Hz, of speech at six frequencies, and ohms between ends with the plug out. */
function plansOf(figures, context) {
  const { net, place } = context
  const { line } = net
  const at = (written) => figures.when(context, written)
  const role = (one) => figures.withRole(net, place, one)
  const [[sender], [receiver], bells] = [role('sender'), role('receiver'), role('sounder')]
  const ringing = at('on-hook/ringing')
  const direct = ['on-hook', 'off-hook', 'off-hook/make', 'off-hook/break', 'on-hook/ringing'].flatMap(
    (one) => [
      figures.loopCurrent(net, place, at(one)),
      figures.loopVoltage(place, at(one)),
      figures.loopResistance(net, place, at(one)),
      figures.earthLeakage(net, place, at(one)),
      figures.lineCurrent(net, line, 'leakage.on-hook', at(one)),
      figures.directCurrent('transmitter.current', sender, at(one)),
      figures.directCurrent('receiver.direct-current', receiver, at(one)),
    ],
  )
  const rings = bells.flatMap((bell) => [
    figures.ringingCurrent(bell, ringing, 25),
    figures.ringingVoltage(bell, ringing, 25),
    figures.ringingCurrent(bell, at('off-hook'), 25),
  ])
  const speech = [300, 500, 1000, 1500, 2000, 3000].flatMap((frequency) =>
    figures.speechPlans({ line, sender, receiver }, at('off-hook/speech'), {}, frequency),
  )
  const lifted = figures.plugLinks(context)
  const ends = [...new Set([...Object.values(place.plug), ...place.terminals])].slice(0, 11)
  const ohms = ends.flatMap((p, k) =>
    ends
      .slice(k + 1)
      .flatMap((q) =>
        ['on-hook', 'off-hook'].map((one) => figures.between(net, p, q, { condition: at(one), lifted })),
      ),
  )
  return [...direct, ...rings, ...speech, ...ohms].filter((plan) => plan !== undefined)
}

async function prepared() {
  const figures = await modules(
    'checks/context',
    'figures/between',
    'figures/line-current',
    'figures/loop',
    'figures/ringing',
    'figures/speech',
    'figures/table-variants',
    'figures/variants',
    'host/shelf',
    'answer/standing',
    'answer/check-answer',
  )
  const shelf = figures.folderShelf([], join(root, 'netlists'))
  return (target) => {
    const [context] = figures.contextsOf(figures.stand({ target: `set/${target}` }, shelf))
    const plans = plansOf(figures, context)
    const changes = changesOf(context.net, context.place.place)
    const tableOf = (sampling) => figures.tableVariants(context.net, plans, changes, sampling)
    return { figures, net: context.net, plans, changes, tableOf }
  }
}

const never = { every: 1e9 }

export async function measure() {
  const open = await prepared()
  const found = {}
  for (const target of sets) {
    const { plans, changes, tableOf } = open(target)
    const out = new Float64Array(plans.length)
    const book = () => {
      const table = tableOf(never)
      for (let c = 0; c < changes.length; c++) table.read([c], out)
    }
    // the first rounds are those of the compiler
    found[target] = median(Array.from({ length: 7 }, () => took(book)).slice(2))
  }
  const { figures, net, plans, changes, tableOf } = open(asked)
  const out = new Float64Array(plans.length)
  const table = tableOf(never)
  const pair = (k) => [
    (7 * k) % changes.length,
    (11 * k + 5 + Math.floor(k / changes.length)) % changes.length,
  ]
  const pairs = Array.from({ length: timed }, (_, k) => pair(k))
  const sweep = () => {
    for (const one of pairs) table.read(one, out)
  }
  sweep()
  const networks = Math.round((table.counts.updated + table.counts.fresh) / timed)
  const fresh = figures.freshVariants(net, plans, changes)
  let at = 0
  const one = inTurns(
    {
      table: () => {
        at = (at + 1) % changes.length
        table.read([at], out)
      },
      fresh: () => {
        at = (at + 1) % changes.length
        fresh.read([at], out)
      },
    },
    3,
  )
  const checked = tableOf({ every: 9 })
  for (let c = 0; c < changes.length; c++) checked.read([c], out)
  for (const some of pairs.slice(0, 200)) checked.read(some, out)
  const linear = plans.filter(({ id }) => id === 'resistance.between')
  const ohms = figures.tableVariants(net, linear, changes, never)
  const sweepOhms = () => {
    for (const some of pairs) ohms.read(some, out)
  }
  sweepOhms()
  return {
    ...found,
    networks,
    singles: changes.length,
    plans: plans.length,
    ohms: linear.length,
    pair: median([0, 1, 2].map(() => took(sweep) / timed)),
    linear: median([0, 1, 2].map(() => took(sweepOhms) / timed)),
    table: one.table,
    fresh: one.fresh,
    worst: checked.worst,
    sampled: checked.sampled,
    general: await general(net.nodes.length + net.branches.length),
  }
}

/** One solve of a set's size by a general library, complex and dense, as all of them are but those for sparse matrices. */
async function general(unknowns) {
  const mathjs = await import('mathjs')
  const size = Math.min(unknowns, 60)
  const { rows, columns, re, im, b } = local(size, 20261125)
  const full = Array.from({ length: size }, () => Array.from({ length: size }, () => mathjs.complex(0, 0)))
  re.forEach((value, k) => {
    full[rows[k]][columns[k]] = mathjs.complex(value, im[k])
  })
  const right = full.map((_, k) => mathjs.complex(b[2 * k], b[2 * k + 1]))
  const matrix = mathjs.matrix(full)
  return inTurns({ dense: () => mathjs.lusolve(matrix, right) }, 3).dense
}

function took(run) {
  const from = processorTime()
  run()
  return processorTime() - from
}

/** All rows of this subject. */
export function rows() {
  const { ours } = bestOf(processes, { ours: () => inFreshNode('book') })
  const { networks, singles, plans, ohms } = ours
  const count = wanted.toLocaleString('en')
  return [
    within(
      `${singles} single faults of ${asked}, ${plans} figures in ${networks} networks, beside 0.5 s`,
      ours[asked],
      halfASecond,
      1,
    ),
    ...sets
      .filter((target) => target !== asked)
      .map((target) => within(`the same of ${target}`, ours[target], halfASecond)),
    faster(
      'one single fault / a solve of mathjs for each of its networks',
      ours.table,
      networks * ours.general,
      1000,
    ),
    faster('the same / solves of our own, afresh', ours.table, ours.fresh, 30),
    within(
      `${count} pairs of faults on two workers, points found anew, beside 15 s`,
      (wanted * ours.pair) / 2,
      15e6,
      1,
    ),
    within(
      `the same of ${ohms} resistances, whose points stay, beside 1 s`,
      (wanted * ours.linear) / 2,
      1e6,
      1,
    ),
    within(`worst of ${ours.sampled} variants / nine digits`, ours.worst, nineDigits, 1, (x) =>
      x.toExponential(1),
    ),
  ]
}
