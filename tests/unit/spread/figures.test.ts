import { contextsOf } from 'ringproof/answer/check-answer'
import { plansOf } from 'ringproof/answer/set-figures'
import { stand } from 'ringproof/answer/standing'
import { between } from 'ringproof/figures/between'
import type { FigurePlan } from 'ringproof/figures/figure'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { nodeOf } from 'ringproof/netlist/netlist'
import { drawnSupplier } from 'ringproof/spread/drawn-set'
import { drawer } from 'ringproof/spread/draws'
import { Spots } from 'ringproof/spread/sensitivity'
import { refitsBetween, worldOf } from 'ringproof/spread/world'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'
import { differencesOf } from './_circuit.ts'

/** Compares the slopes of plans with differences of whole solves. */
function compare(
  target: string,
  plansIn: (at: ReturnType<typeof contextsOf>) => readonly FigurePlan[],
): string[] {
  const standing = stand({ target }, DEMO)
  const { net, installation } = standing
  const plans = plansIn(contextsOf(standing))
  const world = worldOf({ net, installation, transmitterSpread: 3 })
  const spot = new Spots(world, () => plans).stated()
  return plans.flatMap((plan, k) => {
    const value = spot.figure(k)?.value
    const found = spot.slopesOf(k)
    if (value == null || found === undefined) return []
    const there = differencesOf(world, plan)
    const allowed = { relative: 1e-4, absolute: 1e-6 * Math.abs(value) + 1e-13 }
    found.slopes.forEach((slope, at) => {
      assertClose(
        slope,
        there[at] ?? Number.NaN,
        allowed,
        `${plan.id} ${plan.subject} ${world.loose[at]?.id}`,
      )
    })
    return [found.by]
  })
}

describe('slopes of figures agree with differences of whole solves', () => {
  test.each(['fescue', 'sedge', 'melick'])('of %s in the workshop', (target) => {
    const by = compare(target, ([context]) =>
      context === undefined ? [] : plansOf(context, true, 'checked'),
    )
    expect(by.length).toBeGreaterThan(10)
    expect([...new Set(by)]).toEqual(['adjoint'])
  })

  test('of resistances whose bent parts are as the line finds them', () => {
    const by = compare('fescue', ([context]) => {
      if (context === undefined) return []
      const { net } = context
      const condition = {
        line: 'idle',
        sets: { fescue: { hook: 'off-hook', dial: 'rest', key: 'up' } },
      } as const
      const node = (id: string): number => nodeOf(net, `fescue/${id}`)
      return [
        between(net, node('A5'), node('B4'), { condition, frequency: 1000 }),
        between(net, node('A5'), node('B4'), { condition }),
        between(net, node('A3'), node('A4'), { condition }),
      ]
    })
    expect(by).toEqual(['adjoint', 'adjoint', 'adjoint'])
  })
})

describe('a drawn set solved on the stated netlist', () => {
  test.each(['fescue', 'foxtail'])('has the figures of a netlist of its own: %s', (target) => {
    const standing = stand({ target }, DEMO)
    const [context] = contextsOf(standing)
    if (context === undefined) throw new Error('no place')
    const { net, installation } = standing
    const plans = plansOf(context, true, 'checked')
    const world = worldOf({ net, installation, transmitterSpread: 3 })
    const draw = drawer(world.loose, 'uniform', 9)
    const factors = new Float64Array(world.loose.length)
    for (let n = 0; n < 3; n += 1) {
      draw(factors)
      const own = world.at(factors)
      const fresh = freshSupplier(own)
      const drawn = drawnSupplier(net, refitsBetween(net, own))
      for (const plan of plans) {
        const [there, here] = [readFigure(own, plan, fresh), readFigure(net, plan, drawn)]
        expect(here.state).toBe(there.state)
        const size = Math.abs(there.value ?? 0)
        assertClose(
          here.value ?? 0,
          there.value ?? 0,
          { relative: 1e-9, absolute: 1e-15 + 1e-9 * size },
          plan.id,
        )
      }
    }
  })
})
