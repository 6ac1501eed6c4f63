/** The exchange: feed, ringing supply and speech termination between `exchange/a`, `exchange/b` and earth. */
import { type LegSpec, leg, type TerminationSpec, termination } from '../parts/exchange.ts'
import { harmonicsOf, type RingingWave } from '../parts/ringing-wave.ts'
import type { LineSheet } from '../sheet/model.ts'
import type { NetlistBuilder } from './builder.ts'
import type { LineState } from './condition.ts'
import { EARTH, type NetLine } from './netlist.ts'

const QUIET: readonly LineState[] = ['idle', 'speech']
const RINGING: readonly LineState[] = ['ringing']
/** The far end speaks with 1 V behind the terminating impedance, half in each wire. */
const SPEECH_VOLTAGE = 1

/** Adds the exchange of a line. */
export function compileLine(builder: NetlistBuilder, line: LineSheet): NetLine {
  const a = builder.node('exchange/a')
  const b = builder.node('exchange/b')
  const exchange = [...feedLegs(builder, line), ...ringingLegs(builder, line)]
  const ends = terminations(builder, line)
  return {
    name: line.name,
    sheet: line,
    feedVoltage: line.feed.voltage.value,
    ringingFrequency: line.ringing?.frequency.value,
    ringingVoltage: line.ringing?.voltage.value,
    ringingHarmonics: line.ringing === undefined ? [] : harmonicsOf(waveOf(line.ringing)),
    a,
    b,
    exchange: [...exchange, ...ends],
    termination: ends,
  }
}

function addLeg(
  builder: NetlistBuilder,
  line: LineSheet,
  name: string,
  spec: Omit<LegSpec, 'kind' | 'to'> & { to?: string },
  during: readonly LineState[],
): number {
  const to = line.feed.earth === 'none' ? 'exchange/battery' : EARTH
  return builder.add(leg as never, { kind: 'leg', to, ...spec } as LegSpec, {
    place: '',
    owner: 'exchange',
    name,
    sort: 'exchange',
    during,
    node: (end) => end,
    origin: line.places.get(during === RINGING ? 'ringing' : 'feed'),
  })
}

/** Shares of the feed resistance in the a wire and the b wire. */
const SHARES = {
  'half in each wire': [0.5, 0.5],
  'all in a wire': [1, 0],
  'all in b wire': [0, 1],
} as const

function feedLegs(builder: NetlistBuilder, line: LineSheet): number[] {
  const { voltage, resistance, negative, earth, shared } = line.feed
  const limit = line.feed['current limit']?.value
  const ohms = resistance?.value ?? 0
  // Without an earthed pole the legs still meet at the battery: the positive pole is then its node.
  const low = earth === 'negative pole' ? 0 : -voltage.value
  const high = earth === 'negative pole' ? voltage.value : 0
  const [shareA, shareB] = SHARES[shared]
  const direct = negative === 'a wire' ? { a: low, b: high } : { a: high, b: low }
  // The limiter sits where the battery is, so that the other leg ties the pair to its pole even when it limits.
  const live = direct.a !== 0 ? 'a' : 'b'
  const one = (wire: 'a' | 'b', share: number): number =>
    addLeg(
      builder,
      line,
      `feed.${wire}`,
      {
        from: `exchange/${wire}`,
        resistance: ohms * share,
        direct: direct[wire],
        alternating: 0,
        passes: 'direct',
        ...(limit === undefined || wire !== live ? {} : { limit }),
      },
      QUIET,
    )
  return [one('a', shareA), one('b', shareB)]
}

function ringingLegs(builder: NetlistBuilder, line: LineSheet): number[] {
  const { ringing, feed } = line
  if (ringing === undefined) return []
  const battery = ringing['over battery']?.value ?? 0
  const onB = ringing['sent to'] === 'b wire'
  const live = onB ? 'exchange/b' : 'exchange/a'
  const back = onB ? 'exchange/a' : 'exchange/b'
  const negative = feed.negative === ringing['sent to']
  return [
    addLeg(
      builder,
      line,
      'ringing',
      {
        from: live,
        resistance: ringing.source.value,
        direct: negative ? -battery : battery,
        alternating: ringing.voltage.value,
        wave: waveOf(ringing),
        passes: 'both',
      },
      RINGING,
    ),
    addLeg(
      builder,
      line,
      'ringing-return',
      { from: back, resistance: 0, direct: 0, alternating: 0, passes: 'both' },
      RINGING,
    ),
  ]
}

function waveOf({ frequency, wave }: NonNullable<LineSheet['ringing']>): RingingWave {
  return { frequency: frequency.value, ...(wave === 'sine' ? {} : { crest: wave.trapezoid }) }
}

function terminations(builder: NetlistBuilder, line: LineSheet): number[] {
  const half = (name: string, from: string, to: string): number => {
    const spec: TerminationSpec = {
      kind: 'termination',
      from,
      to,
      impedance: line.speech.impedance,
      share: 0.5,
      speech: SPEECH_VOLTAGE / 2,
    }
    return builder.add(termination as never, spec, {
      place: '',
      owner: 'exchange',
      name,
      sort: 'exchange',
      during: QUIET,
      node: (end) => end,
      origin: line.places.get('speech'),
    })
  }
  return [half('speech.a', 'exchange/a', EARTH), half('speech.b', EARTH, 'exchange/b')]
}
