import { deliveredLimits } from 'ringproof/answer/limits-table'
import { stand } from 'ringproof/answer/standing'
import { CHECKS } from 'ringproof/checks/catalogue'
import type { CheckContext } from 'ringproof/checks/context'
import type { Limits } from 'ringproof/checks/limits'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { placeOf } from 'ringproof/netlist/netlist'
import { DEMO, rewireText, setText } from './bench.ts'

/** Ids of the limits that any check looks up while it judges a few sets that meet all of them, sorted. */
export function limitsInUse(): readonly string[] {
  const used = new Set<string>()
  const watched: Limits = new Proxy(deliveredLimits(), {
    get(target, key) {
      if (key === 'get') {
        return (id: string) => {
          used.add(id)
          return target.get(id)
        }
      }
      return Reflect.get(target, key, target)
    },
  })
  const texts = [
    rewireText('fescue', 'land core: handset.r2, onto: B4'),
    setText('fescue', 'touchable metal: {cradle: A1}'),
  ]
  for (const text of texts) {
    const { net, places } = stand({ target: '', text }, DEMO)
    const supplier = freshSupplier(net)
    for (const place of places) {
      const context: CheckContext = {
        net,
        place: placeOf(net, place),
        limits: watched,
        figure: (plan) => readFigure(net, plan, supplier),
      }
      for (const rule of CHECKS) rule.run(context)
    }
  }
  return [...used].sort()
}
