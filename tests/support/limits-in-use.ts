import { kitOf } from 'ringproof/answer/instruments-table'
import { deliveredLimits } from 'ringproof/answer/limits-table'
import { deliveredOdds } from 'ringproof/answer/odds-table'
import { stand, type Where } from 'ringproof/answer/standing'
import { benchTestsOf } from 'ringproof/book/bench-tests/index'
import { CHECKS } from 'ringproof/checks/catalogue'
import type { CheckContext } from 'ringproof/checks/context'
import type { Limits } from 'ringproof/checks/limits'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { compile, type Installation } from 'ringproof/netlist/compile'
import { type Netlist, placeOf } from 'ringproof/netlist/netlist'
import type { SheetText } from 'ringproof/sheet/shelf'
import { DEMO, rewireText, setText } from './bench.ts'

/** Contexts of an installation that look their limits up in the given table, and so do their trials. */
function contexts(installation: Installation, net: Netlist, limits: Limits): (place: string) => CheckContext {
  const supplier = freshSupplier(net)
  return (place) => ({
    net,
    place: placeOf(net, place),
    limits,
    figure: (plan) => readFigure(net, plan, supplier),
    installation,
    trial: (other, elsewhere = place) => contexts(other, compile(other), limits)(elsewhere),
  })
}

/** A line that says by which measure its ringing load is, and no limit. */
function silentLine(measure: string): SheetText {
  const text = [
    'ringproof: 1',
    'sheet: line',
    'name: silent',
    'feed: {voltage: 50 V, resistance: 400 Ω}',
    'ringing: {voltage: 75 V, frequency: 25 Hz, wave: sine, source: 400 Ω, sent to: b wire}',
    'speech: {impedance: [600 Ω]}',
    `limits: {load by: ${measure}}`,
    '',
  ]
  return { file: 'silent.yaml', text: text.join('\n') }
}

/** Ids of the limits that any check or symptom looks up for a few sets that meet all of them, sorted. */
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
  const askAll = (where: Where): void => {
    const { net, installation, places } = stand(where, DEMO)
    const inPlace = contexts(installation, net, watched)
    for (const place of places) for (const rule of CHECKS) rule.run(inPlace(place))
  }
  for (const text of texts) askAll({ target: '', text })
  // what can be found out at the bench
  const { net } = stand({ target: 'sedge' }, DEMO)
  const kit = kitOf('digital', undefined)
  benchTestsOf({ net, place: placeOf(net, 'sedge'), odds: deliveredOdds(), kit, limits: watched })
  // on lines whose sheets set no limits of their own
  for (const measure of ['four-kilohm-unit', 'unit-ringer', 'type-a', 'type-b']) {
    askAll({ target: 'fescue', onText: silentLine(measure) })
  }
  return [...used].sort()
}
