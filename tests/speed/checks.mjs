// What a check takes: a set after one move, a house, a hall of twelve, and the command from a cold start.
import { spawnSync } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { library } from './built.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { within } from './table.mjs'

const processes = 3
const root = fileURLToPath(new URL('../..', import.meta.url))
const command = join(root, 'dist/cli/ringproof.js')
const sizes = [1, 2, 4, 8, 12]

const median = (times) => [...times].sort((p, q) => p - q)[times.length >> 1]

/** The rewire whose moves are made one after the other, premises, and the hall that is filled set by set. */
const moved = 'sedge-converted'
const house = 'station-house'
const hall = 'museum-hall'

async function prepared() {
  const [{ folderShelf }, { stand }, { judgeStanding }, { compile }, { findSheet }, { applyMoves }] =
    await Promise.all(
      [
        'host/shelf',
        'answer/standing',
        'answer/check-answer',
        'netlist/compile',
        'answer/find',
        'rewire/moves',
      ].map(library),
    )
  const shelf = folderShelf([], join(root, 'netlists'))
  const standing = (target) => stand({ target }, shelf)
  /** Compiles and judges an installation, as after every move. */
  const judge = (installation, places) => {
    const net = compile(installation)
    return judgeStanding({ name: net.name, net, installation, places, moves: [], warnings: [] })
  }
  return { shelf, standing, judge, findSheet, applyMoves }
}

/** Milliseconds of one call. */
function timed(run) {
  const from = performance.now()
  run()
  return performance.now() - from
}

export async function measure() {
  const { shelf, standing, judge, findSheet, applyMoves } = await prepared()
  const { sheet: rewire } = findSheet('rewire', moved, shelf)
  const { sheet: found } = findSheet('set', rewire.set, shelf)
  const { installation, places } = standing(`set/${found.name}`)
  const [place] = places
  const one = []
  for (let round = 0; round < 12; round++) {
    let set = found
    for (const move of rewire.moves) {
      const took = timed(() => {
        set = applyMoves(set, [move], () => undefined).set
        const sets = { ...installation.sets, [place]: { ...installation.sets[place], set } }
        judge({ ...installation, sets }, places)
      })
      // the first rounds are those of the compiler
      if (round >= 4) one.push(took)
    }
  }
  const all = standing(house)
  const inHouse = Array.from({ length: 12 }, () => timed(() => judge(all.installation, all.places))).slice(4)
  const full = standing(hall)
  const growth = {}
  for (const size of sizes) {
    const some = full.places.slice(0, size)
    const sets = Object.fromEntries(some.map((name) => [name, full.installation.sets[name]]))
    const times = Array.from({ length: 8 }, () => timed(() => judge({ ...full.installation, sets }, some)))
    growth[`hall${size}`] = 1000 * median(times.slice(3))
  }
  return { move: 1000 * median(one), house: 1000 * median(inHouse), ...growth }
}

/** Microseconds and kilobytes of one start; the child says what it needed as it ends. */
function start(args) {
  const says = join(dirname(fileURLToPath(import.meta.url)), 'says-memory.mjs')
  const from = performance.now()
  const { stderr, status } = spawnSync(process.execPath, ['--import', says, ...args], { encoding: 'utf8' })
  const took = 1000 * (performance.now() - from)
  const memory = Number(/memory (\d+)/.exec(stderr)?.[1])
  if (!(status === 0 || status === 1) || !(memory > 0)) throw new Error(`${args.join(' ')}: ${stderr}`)
  return { took, memory }
}

const starts = 12
const megabytes = (kilobytes) => `${(kilobytes / 1000).toFixed(0)} MB`
const milliseconds = (us) => `${(us / 1000).toFixed(1)} ms`

/** All rows of this subject. */
export function rows() {
  const { ours } = bestOf(processes, { ours: () => inFreshNode('checks') })
  const bare = Array.from({ length: starts }, () => start(['-e', '0']))
  const cold = Array.from({ length: starts }, () => start([command, 'check', 'fescue']))
  const took = (all) => median(all.map((one) => one.took))
  const steepness = Math.log(ours.hall12 / ours.hall1) / Math.log(12)
  return [
    within('check of a set after one move, warm; median, beside 5 ms', ours.move, 5000, 1, milliseconds),
    within(
      'check of a house with five sets, warm; median, beside 40 ms',
      ours.house,
      40_000,
      1,
      milliseconds,
    ),
    ...sizes.map((size) =>
      within(
        `check of a hall with ${size} sets, each beside one alone`,
        ours[`hall${size}`] / size,
        ours.hall1,
        undefined,
        milliseconds,
      ),
    ),
    within('growth with the number of sets, as a power of it', steepness, 1, 1.2, (power) =>
      power.toFixed(2),
    ),
    within('check from the shell, cold, beside `node -e 0`', took(cold), took(bare), 2.5, milliseconds),
    within(
      'memory of that, beside 150 MB',
      Math.max(...cold.map(({ memory }) => memory)),
      150_000,
      1,
      megabytes,
    ),
  ]
}
