// A dropped lead: the quick judgement of the bench after one move, beside a check of the written rewire and beside one
// solve of the same size by a general library.
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { library } from './built.mjs'
import { inTurns } from './clock.mjs'
import { local } from './matrices.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { faster, within } from './table.mjs'

const processes = 3
const root = fileURLToPath(new URL('../..', import.meta.url))
const moved = 'sedge-converted'

export async function measure() {
  const names = ['host/shelf', 'answer/bench/bench', 'answer/check-answer', 'sheet/write-rewire']
  const [{ folderShelf }, { openBench }, { check }, { rewireText }] = await Promise.all(names.map(library))
  const shelf = folderShelf([], join(root, 'netlists'))
  const bench = openBench({ target: `rewire/${moved}` }, shelf)
  const { set, moves } = bench
  const steps = moves.map((_, k) => moves.slice(0, k + 1))
  const texts = steps.map((some) => ({
    file: 'bench.yaml',
    text: rewireText({ name: set, set, moves: some }),
  }))
  let turn = 0
  const judge = () => {
    turn += 1
    // a move that is refused changes nothing, but is new: no side is taken from those that are kept
    const side = bench.side([...steps[turn % steps.length], { do: 'park core', what: `nowhere.${turn}` }])
    side.board()
    return side.verdicts()
  }
  const whole = () => {
    turn += 1
    return check({ target: '', text: texts[turn % texts.length] }, shelf)
  }
  const { net } = bench.side(moves).standing
  const mathjs = await import('mathjs')
  const size = Math.min(net.nodes.length, 60)
  const { rows: row, columns, re, im, b } = local(size, 20261128)
  const full = Array.from({ length: size }, () => Array.from({ length: size }, () => mathjs.complex(0, 0)))
  re.forEach((value, k) => {
    full[row[k]][columns[k]] = mathjs.complex(value, im[k])
  })
  const right = full.map((_, k) => mathjs.complex(b[2 * k], b[2 * k + 1]))
  const matrix = mathjs.matrix(full)
  return { size, ...inTurns({ judge, whole, dense: () => mathjs.lusolve(matrix, right) }, 5) }
}

const milliseconds = (us) => `${(us / 1000).toFixed(1)} ms`

/** All rows of this subject. */
export function rows() {
  const { ours } = bestOf(processes, { ours: () => inFreshNode('bench') })
  return [
    within('verdicts and board after one move, beside 8 ms', ours.judge, 8000, 1, milliseconds),
    faster('verdicts and board after one move, beside a check of the sheet', ours.judge, ours.whole, 2),
    within(
      `all of that beside one dense solve of ${ours.size} unknowns by mathjs`,
      ours.judge,
      ours.dense,
      undefined,
      milliseconds,
    ),
  ]
}
