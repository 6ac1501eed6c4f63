/** What `draw` answers, as JSON shows it: symbols and places of the circuit are the picture’s, not the answer’s. */
import type { DrawAnswer } from '../answer/draw.ts'
import type { Figure } from '../figures/figure.ts'
import type { Flow } from '../picture/circuit/circuit.ts'
import type { CircuitShown } from '../picture/circuit/shown.ts'
import { conditionOfAnswer } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

/** The keys in their order. */
export const DRAW_KEYS: readonly string[] = [
  'outcome',
  'picture',
  'place',
  'board',
  'shown',
  'figures',
  'found',
]

export function drawFields(
  answer: DrawAnswer,
  figureJson: (figure: Figure, single: boolean) => Fields,
): Fields {
  const figures = (all: readonly Figure[]): readonly Fields[] => all.map((one) => figureJson(one, false))
  return {
    ...(answer.shown === undefined ? {} : { shown: shownJson(answer.shown) }),
    ...(answer.figures === undefined ? {} : { figures: figures(answer.figures) }),
    ...(answer.found === undefined ? {} : { found: figures(answer.found) }),
  }
}

function shownJson(shown: CircuitShown): Fields {
  const { name, nodes, pieces, links } = shown.circuit
  return pick(shown, ['circuit', 'condition', 'analysis', 'frequency', 'carries', 'approximate'], {
    condition: conditionOfAnswer(shown.condition),
    carries: Object.fromEntries(
      Object.entries(shown.carries).map(([thing, flow]) => [thing, flowJson(flow)]),
    ),
    circuit: {
      name,
      nodes: nodes.map(({ id, label, zone, thing }) => ({ id, label, zone, thing })),
      pieces: pieces.map(({ id, label, values, zone, ends, gate, thing, flow }) => ({
        id,
        label,
        values,
        zone,
        ends: ends.map(({ pin, node }) => ({ pin, node })),
        gate,
        thing,
        flow: flow && flowJson(flow),
      })),
      links: links.map(({ id, from, to, sort, thing, flow }) => ({
        id,
        from,
        to,
        sort,
        thing,
        flow: flow && flowJson(flow),
      })),
    },
  })
}

const flowJson = ({ size, sense, weight }: Flow): Fields => ({ size, sense, weight })
