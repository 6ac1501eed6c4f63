import type { FigurePlan } from 'ringproof/figures/figure'
import { type Netlist, nodeOf } from 'ringproof/netlist/netlist'
import { type Slopes, Spots } from 'ringproof/spread/sensitivity'
import { type World, worldOf } from 'ringproof/spread/world'
import { compiled } from '../../support/compiled.ts'

const CONDITION = { line: 'idle', sets: {} } as const

/** A free circuit of these parts, a transmitter within three times up and down. */
export function circuitWorld(...parts: readonly string[]): World {
  return worldOf({ net: compiled(...parts), transmitterSpread: 3 })
}

/** The voltage of a node against earth, direct or as a size at a frequency in Hz. */
export function voltageAt(net: Netlist, node: string, frequency?: number): FigurePlan {
  const question =
    frequency === undefined
      ? ({ analysis: 'direct', condition: CONDITION } as const)
      : ({ analysis: 'alternating', frequency, condition: CONDITION } as const)
  return {
    id: 'loop.voltage',
    subject: node,
    condition: CONDITION,
    unit: 'V',
    taps: [{ question, voltage: [nodeOf(net, `trial/${node}`), 0] }],
    value: ([re = 0, im = 0]) => (frequency === undefined ? re : Math.hypot(re, im)),
  }
}

/** The direct current of a branch. */
export function currentOf(net: Netlist, branch: string): FigurePlan {
  const index = net.branchIndex.get(`trial/${branch}`)
  if (index === undefined) throw new Error(`no branch ${branch}`)
  return {
    id: 'loop.current',
    subject: branch,
    condition: CONDITION,
    unit: 'A',
    taps: [{ question: { analysis: 'direct', condition: CONDITION }, current: index }],
    value: ([re = 0]) => re,
  }
}

/** The slopes of one plan by the logarithm of each loose value, by the values' names. */
export function slopesOf(
  world: World,
  plan: FigurePlan,
): { readonly by: Slopes['by'] | undefined; readonly slopes: Readonly<Record<string, number>> } {
  const found = new Spots(world, () => [plan]).stated().slopesOf(0)
  const slopes = world.loose.map(({ id }, k) => [id.replace('trial/', ''), found?.slopes[k] ?? Number.NaN])
  return { by: found?.by, slopes: Object.fromEntries(slopes) }
}

/** The same by central differences of whole solves with steps of a ten-thousandth: another way, another code. */
export function differencesOf(world: World, plan: FigurePlan, step: number = 1e-4): readonly number[] {
  return world.loose.map((_, k) => {
    const [down, up] = [-step, step].map((one) => {
      const factors = new Float64Array(world.loose.length).fill(1)
      factors[k] = 1 + one
      return new Spots(world, () => [plan]).at(factors).figure(0)?.value ?? Number.NaN
    })
    return ((up ?? Number.NaN) - (down ?? Number.NaN)) / (2 * step)
  })
}
