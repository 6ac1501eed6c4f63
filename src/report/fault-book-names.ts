/** Faults in a running text: those that go wrong in the same way are told together. */

/** `the strap B4-B5` and what is wrong with it, of one thing that stands first. */
const SENTENCE = /^the (?<thing>.+?) (?<wrong>(?:is|has|never|no longer|leaks|lies|strikes|clips)\b.*)$/

/** Between two points, the damp ones. */
const DAMP = /^it is damp between (?<between>.+)$/

interface Alike {
  readonly things: string[]
  told(things: readonly string[]): string
}

/**
 * `one of strap B4-B5 or core line.b is broken or loose; the transmitter is open`, in the order of the first of
 * each.
 */
export function namesText(says: readonly string[]): string {
  const all = new Map<string, Alike>()
  for (const one of says) {
    const { key, thing, told } = parted(one)
    const alike = all.get(key) ?? { things: [], told }
    alike.things.push(thing)
    all.set(key, alike)
  }
  return [...all.values()].map(({ things, told }) => told(things)).join('; ')
}

/** `a, b or c`. */
function listed(all: readonly string[]): string {
  const last = all.at(-1) ?? ''
  return all.length < 2 ? last : `${all.slice(0, -1).join(', ')} or ${last}`
}

function parted(one: string): {
  readonly key: string
  readonly thing: string
  readonly told: Alike['told']
} {
  const between = DAMP.exec(one)?.groups?.between
  if (between !== undefined)
    return { key: 'damp', thing: between, told: (all) => `it is damp between ${listed(all)}` }
  const { thing, wrong } = SENTENCE.exec(one)?.groups ?? {}
  if (thing === undefined || wrong === undefined) return { key: one, thing: one, told: () => one }
  return {
    key: wrong,
    thing,
    told: (all) => `${all.length === 1 ? `the ${thing}` : `one of ${listed(all)}`} ${wrong}`,
  }
}
