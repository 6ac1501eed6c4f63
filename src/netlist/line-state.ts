/** States of the line that are one and the same to a netlist: in no part does one differ from the other. */
import type { LineState } from './condition.ts'
import type { Netlist } from './netlist.ts'

const STATES: readonly LineState[] = ['idle', 'ringing', 'speech']

/** For each state of the line the first one that is the same network. */
export function sameStates(net: Netlist): Readonly<Record<LineState, LineState>> {
  const seen = (state: LineState): string =>
    net.parts.map(({ during }) => (during === undefined || during.includes(state) ? 1 : 0)).join('')
  const first = (state: LineState): LineState => STATES.find((other) => seen(other) === seen(state)) ?? state
  return { idle: 'idle', ringing: first('ringing'), speech: first('speech') }
}
