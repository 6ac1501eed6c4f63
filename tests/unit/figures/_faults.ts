import { plugLinks, when } from 'ringproof/checks/context'
import { between } from 'ringproof/figures/between'
import { leakageOpen, resistanceMade } from 'ringproof/figures/dial'
import type { FigurePlan } from 'ringproof/figures/figure'
import { lineCurrent, ringingLineCurrent } from 'ringproof/figures/line-current'
import { directCurrent, earthLeakage, loopCurrent, loopResistance, loopVoltage } from 'ringproof/figures/loop'
import { ringingCurrent, ringingVoltage, withRole } from 'ringproof/figures/ringing'
import { ringingLoad } from 'ringproof/figures/ringing-load'
import { portOf, setImpedance } from 'ringproof/figures/set-impedance'
import { speechPlans } from 'ringproof/figures/speech'
import { type Netlist, placeOf } from 'ringproof/netlist/netlist'
import type { Change } from 'ringproof/solver/variants/change'
import { standing } from './_stand.ts'

/** What a workshop's faults do to a set: the modes of its parts, links open or bad, bridges between neighbours. */
export function faultChanges(net: Netlist, place: string): readonly Change[] {
  const modes = net.parts.flatMap((part, index) => (part.place === place ? ofPart(net, index) : []))
  const { terminals } = placeOf(net, place)
  const bridges = terminals.slice(1).flatMap((to, k): Change[] => {
    const from = terminals[k] ?? 0
    return [0.01, 10_000].map((ohms) => ({ bridge: { from, to, ohms } }))
  })
  return [...modes, ...bridges]
}

function ofPart(net: Netlist, index: number): readonly Change[] {
  const part = net.parts[index]
  if (part === undefined) return []
  const branches = net.branches.slice(part.first, part.first + part.count)
  const modes = (part.law.modes?.(part.spec) ?? []).flatMap(({ branch, change }): Change[] => {
    if ('instead' in change) return [{ instead: { part: index, spec: change.instead } }]
    const own = branches.filter((_, k) => branch === undefined || branch === k)
    return own.map(({ index: k, from, to }): Change => {
      if ('across' in change) return { bridge: { from, to, ohms: change.across } }
      return 'within' in change ? { within: { branch: k, ohms: change.within } } : { lifted: k }
    })
  })
  if (part.role !== 'link') return modes
  return [...modes, { lifted: part.first }, { within: { branch: part.first, ohms: 20 } }]
}

/** Figures of all conditions: direct, 25 Hz, 1 kHz, own sources, probes, voltages in series. */
export function somePlans(target: string, on?: string) {
  const { context, net, place, line } = standing({ target, ...(on === undefined ? {} : { on }) })
  const at = (written: string) => when(context, written)
  const [sender] = withRole(net, place, 'sender')
  const [receiver] = withRole(net, place, 'receiver')
  const bells = withRole(net, place, 'sounder')
  const [ringing, speech] = [at('on-hook/ringing'), at('off-hook/speech')]
  const harmonics = line.ringingHarmonics.length > 0 ? line.ringingHarmonics : [1]
  const frequency = line.ringingFrequency ?? 25
  const lifted = plugLinks(context)
  const ends = [...new Set([...Object.values(place.plug), ...place.terminals.slice(0, 2)])]
  const port = portOf(net, place)
  const plans: readonly (FigurePlan | undefined)[] = [
    loopCurrent(net, place, at('off-hook')),
    loopVoltage(place, at('off-hook')),
    loopResistance(net, place, at('off-hook')),
    sender && directCurrent('transmitter.current', sender, at('off-hook')),
    receiver && directCurrent('receiver.direct-current', receiver, at('off-hook')),
    earthLeakage(net, place, at('on-hook')),
    resistanceMade(net, place, at('off-hook/make')),
    leakageOpen(net, place, line, at('off-hook/break')),
    lineCurrent(net, line, 'leakage.ringing', ringing),
    ringingLineCurrent(net, line, ringing),
    ringingLoad(net, place, 'four-kilohm-unit', ringing),
    ...bells.flatMap((bell) => [
      ringingCurrent(bell, ringing, frequency, harmonics),
      ringingVoltage(bell, ringing, frequency, harmonics),
    ]),
    ...(sender && receiver ? speechPlans({ line, sender, receiver }, speech) : []),
    port && setImpedance(port, line, speech, 1000),
    ...ends.flatMap((p, k) =>
      ends
        .slice(k + 1)
        .flatMap((q) => [
          between(net, p, q, { condition: at('on-hook'), lifted }),
          between(net, p, q, { condition: at('off-hook'), lifted, frequency: 1000 }),
        ]),
    ),
  ]
  return { net, place: place.place, plans: plans.filter((plan) => plan !== undefined) }
}
