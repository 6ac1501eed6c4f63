import { type Move, openBench } from 'ringproof'
import { bestLanding, landed, speechFigures, speechOfLandings } from 'ringproof/checks/wiring/landing'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../../support/close.ts'

const DEMO = folderShelf([], packagedFolder())

const land = (what: string, onto: string): Move => ({ do: 'land core', what, onto })

const WIRINGS: readonly (readonly [set: string, moves: readonly Move[]])[] = [
  ['fescue', []],
  ['fescue', [land('handset.r2', 'C1')]],
  ['fescue', [land('handset.t1', 'C4'), land('line.a', 'A4')]],
  ['sedge', [land('handset.t2', 'A6')]],
  ['sedge', [{ do: 'park core', what: 'handset.r1' }]],
]

describe('where else a core could land', () => {
  test.each(WIRINGS)(
    'trials of %s as small changes give what each gives when it is solved by itself',
    (set, moves) => {
      const context = openBench({ target: `set/${set}` }, DEMO)
        .side(moves)
        .context()
      const all = context.place.cores
        .filter(({ endsIn }) => endsIn === 'handset')
        .flatMap((core) => context.place.terminals.map((terminal) => ({ core, terminal })))
        .filter(({ core, terminal }) => terminal !== core.lands)
      const tried = speechOfLandings(context, all)
      expect(tried).toHaveLength(all.length)
      const most = Math.max(...tried.flat())
      expect(most).toBeGreaterThan(1e-4)
      all.forEach(({ core, terminal }, k) => {
        const afresh = speechFigures(context, landed(core, terminal))
        for (const which of [0, 1])
          assertClose(
            tried[k]?.[which] ?? Number.NaN,
            afresh[which]?.value ?? 0,
            { relative: 1e-8, absolute: 1e-12 * most },
            `${core.name} on ${terminal}`,
          )
      })
    },
  )

  test('the figures that go with the best one are solved by themselves', () => {
    const context = openBench({ target: 'set/fescue' }, DEMO)
      .side([land('handset.r2', 'C1')])
      .context()
    const cores = context.place.cores.filter(({ name }) => name.startsWith('handset.r'))
    const best = bestLanding(context, cores)
    const [move] = best?.moves ?? []
    expect(best?.moves).toHaveLength(1)
    expect(move?.core.name).toBe('handset.r2')
    expect(best?.figures).toEqual(move && speechFigures(context, landed(move.core, move.terminal)))
  })
})
