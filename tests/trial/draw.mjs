// Draws of the trial: a fault with values of its own, in a set whose parts lie within their tolerances.
import { seededRandom } from '../../dist/lib/algebra/random.js'
import { freshSupplier, readFigure } from '../../dist/lib/figures/read.js'
import { amountIn } from '../../dist/lib/figures/variants.js'
import { looseValues, withSpecs } from '../../dist/lib/meter/vary.js'
import { ProblemError } from '../../dist/lib/problem.js'
import { changed } from '../../dist/lib/solver/variants/change.js'

/** A generator with the draws that the laws speak of. */
export function dice(seed) {
  const random = seededRandom(seed)
  const between = (least, most) => least + (most - least) * random()
  // Box and Muller, A note on the generation of random normal deviates (1958)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const below = (n) => Math.floor(n * random())
  const logBetween = (least, most) => Math.exp(between(Math.log(least), Math.log(most)))
  return { random, between, normal, below, logBetween }
}

/** Specs of all parts, each loose value drawn by its law. */
function looseSpecs(net, spread, laws, roll) {
  const specs = new Map()
  for (const { part, path, least, most } of looseValues(net, spread)) {
    const shaken = net.parts[part].role === 'sender'
    const factor = shaken
      ? Math.exp((Math.log(most) / laws.transmitter.sigmas) * roll.normal())
      : 1 + ((most - least) / 2 / laws.tolerance.sigmas) * roll.normal()
    specs.set(part, scaled(specs.get(part) ?? net.parts[part].spec, path, Math.max(factor, 0.01)))
  }
  return specs
}

function scaled(value, [key, ...rest], factor) {
  if (key === undefined) return { ...value, value: value.value * factor }
  return { ...value, [key]: scaled(value[key], rest, factor) }
}

const isQuantity = (value) => typeof value?.value === 'number' && typeof value.unit === 'string'

/**
 * The spec that a fault gives to a part, applied to the part as it was drawn: each quantity moves by the ratio of the
 * book's spec to the sheet's, to the power of the severity.
 */
function spoilt(drawn, sheet, book, severity) {
  if (isQuantity(book)) {
    if (!isQuantity(drawn) || !isQuantity(sheet)) return book
    if (book.unit === 'dB') return { ...drawn, value: drawn.value + severity * (book.value - sheet.value) }
    if (!(sheet.value > 0 && book.value > 0)) return book
    return { ...drawn, value: drawn.value * (book.value / sheet.value) ** severity }
  }
  if (typeof book === 'object' && book !== null && typeof sheet === 'object' && sheet !== null)
    return Object.fromEntries(
      Object.entries(book).map(([key, inner]) => [key, spoilt(drawn?.[key], sheet[key], inner, severity)]),
    )
  return book
}

/** A world in which these faults are true. `read(test)` is the score of a test there, solved afresh. */
export function worldOf({ net, kit, laws, roll, faults, odd }) {
  const specs = looseSpecs(net, kit.habits['transmitter-spread'].value, laws, roll)
  const changes = []
  for (const fault of faults) {
    const severity = odd ? roll.between(...laws.odd.severity) : 1
    const ohms = odd ? roll.logBetween(...laws.odd.ohms) : 1
    for (const change of fault.changes) {
      if ('instead' in change) {
        const { part, spec } = change.instead
        const sheet = net.parts[part].spec
        specs.set(part, spoilt(specs.get(part) ?? sheet, sheet, spec, severity))
      } else if ('bridge' in change && change.bridge.ohms > 0.05)
        changes.push({ bridge: { ...change.bridge, ohms: change.bridge.ohms * ohms } })
      else if ('within' in change)
        changes.push({ within: { ...change.within, ohms: change.within.ohms * ohms } })
      else changes.push(change)
    }
  }
  const drawn = withSpecs(net, specs)
  const supplier = freshSupplier(drawn)
  const specAt = (part) => drawn.parts[part].spec
  return {
    read(test) {
      const amounts = test.plans.map((plan) => {
        const taps = plan.taps.map((tap) => ({ ...tap, question: changed(tap.question, changes) }))
        try {
          return amountIn(readFigure(drawn, { ...plan, taps }, supplier))
        } catch (error) {
          if (error instanceof ProblemError) return Number.NEGATIVE_INFINITY
          throw error
        }
      })
      return test.score(amounts, specAt)
    },
  }
}

/** What a meter of the laws shows of a score. */
export function metered(score, test, laws, roll) {
  if (!Number.isFinite(score)) return score
  const off = laws.meter.share * Math.abs(score) + laws.meter.digits * test.scale
  return test.unit === 'V' ? score + off * roll.normal() : Math.max(0, score + off * roll.normal())
}
