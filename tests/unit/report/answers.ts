/** Answers made by hand: invented, only to be laid out. Sizes are no oracle. */
import type {
  CheckAnswer,
  CompareAnswer,
  FollowAnswer,
  ListAnswer,
  SolveAnswer,
} from 'ringproof/answer/answer'
import type { Verdict } from 'ringproof/checks/rule'
import type { NamedFault } from 'ringproof/faults/named-fault'
import type { Figure } from 'ringproof/figures/figure'
import type { Condition } from 'ringproof/netlist/condition'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'

export const at = (words: string, place = 'kiosk'): Condition => conditionOf(place, readCondition(words)!)

export function figure(over: Partial<Figure> = {}): Figure {
  return {
    id: 'speech.receive',
    subject: 'kiosk',
    condition: at('off-hook/speech'),
    frequency: 1000,
    value: 0.00123,
    unit: 'A',
    residual: 1e-16,
    ...over,
  }
}

const open = (over: Partial<Figure>): Figure => {
  const { value: _, ...rest } = figure(over)
  return { ...rest, value: null, state: 'open' }
}

const base = { condition: at('off-hook'), figure: null, limit: null, margin: null, path: [] }

export const JOINED: Verdict = {
  ...base,
  check: 'wiring.cores-separate',
  subject: 'kiosk/handset.r2',
  state: 'fails',
  says: 'The receiver core handset.r2 and the transmitter core handset.t2 are joined, and the receiver has lost its current.',
  figure: figure({ id: 'resistance.between', value: 0.02, unit: 'Ω', subject: 'kiosk/B3 kiosk/B4' }),
  limit: {
    value: 1e6,
    side: 'at-least',
    unit: 'Ω',
    source: 'an invented paper',
    clause: 'clause 4.2',
    grade: 'SEEN-P',
  },
  margin: -1,
  path: ['kiosk/handset.r2', 'kiosk/B3', 'kiosk/B4', 'kiosk/handset.t2'],
  consequences: [
    {
      figure: figure({ value: 1e-19 }),
      mended: figure({ value: 0.00123, approximate: 'transmitter as a chord resistance' }),
    },
    { figure: open({ id: 'speech.sidetone' }) },
  ],
  mend: 'Land core handset.r2 on B2.',
}

export const MARGINAL: Verdict = {
  ...base,
  check: 'line.current',
  subject: 'kiosk',
  state: 'marginal',
  says: 'The loop current is just enough.',
  figure: figure({ id: 'loop.current', value: 0.0255 }),
  limit: {
    value: 0.025,
    side: 'at-least',
    unit: 'A',
    source: 'an invented paper',
    clause: '-',
    grade: 'MEMORY',
  },
  margin: 0.02,
  mend: 'Use a shorter line.',
}
const unknown = (check: string, reason: 'not-modelled' | 'no-line'): Verdict => {
  return { ...base, check, subject: 'kiosk', state: 'unknown', reason, says: 'Not answered.' }
}
const holds = (check: string, remark?: string): Verdict => {
  return {
    ...base,
    check,
    subject: 'kiosk',
    state: 'holds',
    says: 'As it should be.',
    ...(remark ? { remark } : {}),
  }
}

const DIALS = ['dial.rate', 'dial.ratio', 'dial.make', 'dial.break', 'dial.muting', 'dial.understood']
export const VERDICTS: readonly Verdict[] = [
  holds('wiring.spares-free'),
  ...DIALS.map((check) => unknown(check, 'not-modelled')),
  unknown('line.leakage', 'no-line'),
  unknown('line.leakage', 'no-line'),
  MARGINAL,
  JOINED,
  holds('wiring.earth-free', 'The key is never pressed here.'),
]

const head = (name: string, request: Record<string, unknown>) => ({
  ringproof: `${name}/1`,
  'made by': '0.1.0',
  request,
  problems: [],
})

export const CHECK: CheckAnswer = {
  ...head('check', { target: 'kiosk', on: 'hut' }),
  outcome: 'fails',
  counts: { holds: 2, marginal: 1, fails: 1, unknown: 8, faults: 0 },
  verdicts: VERDICTS,
  faults: [],
  figures: [
    figure({ id: 'loop.current', value: 0.0384, approximate: 'transmitter as a chord resistance' }),
    figure({ id: 'resistance.between', value: 12, unit: 'Ω' }),
  ],
}

export const COMPARE: CompareAnswer = {
  ...head('compare', { found: 'kiosk-converted' }),
  outcome: 'fails',
  counts: { holds: 1, marginal: 0, fails: 1, unknown: 0, faults: 0 },
  moves: [
    'land core handset.r2 onto B3',
    'fit strap A1-A2, and then look twice whether its screw holds it without force',
  ],
  found: {
    name: 'kiosk',
    verdicts: [holds('wiring.cores-separate'), holds('wiring.earth-free')],
    faults: [],
    figures: [figure()],
  },
  proposed: {
    name: 'kiosk-converted',
    verdicts: [JOINED, holds('wiring.earth-free')],
    faults: [],
    figures: [figure({ value: 1e-19 }), figure({ id: 'speech.send', value: 0.5, unit: '1' })],
  },
  changed: {
    checks: ['wiring.cores-separate'],
    figures: ['speech.receive', 'speech.send'],
    because: [
      {
        check: 'wiring.cores-separate',
        moves: [1],
        says: 'Move 1 does it: without it the check would hold.',
        found: { state: 'holds', says: 'As it should be.' },
        proposed: { state: 'fails', says: JOINED.says },
      },
    ],
  },
}

export const SOLVE: SolveAnswer = {
  ...head('solve', { target: 'two-loops', frequency: 25 }),
  outcome: 'answered',
  analysis: 'alternating',
  frequency: 25,
  condition: { hook: 'on-hook', dial: 'rest', key: 'up', line: 'ringing' },
  voltages: { earth: 0, 'two-loops/n1': { re: 3, im: 4 }, 'two-loops/n2': null },
  currents: { 'two-loops/r1': { re: 0, im: -0.001234567 }, 'two-loops/s1': { re: 1e-30, im: 0 } },
  units: { voltages: 'V', currents: 'A' },
  states: { 'two-loops/n2': 'undetermined' },
  islands: [['earth', 'two-loops/n1'], ['two-loops/n2']],
  shared: ['two-loops/s1'],
  residual: 1.5e-16,
  approximate: 'bell as resistance and inductance',
  source: 'an invented book, example 7',
  grade: 'HIGH',
}

export const FOLLOW: FollowAnswer = {
  ...head('follow', { target: 'kiosk', condition: 'off-hook' }),
  outcome: 'answered',
  condition: at('off-hook'),
  analysis: 'direct',
  frequency: null,
  steps: [
    {
      node: 'exchange/a',
      branch: 'exchange/feed.a',
      current: 0.0384,
      sort: 'exchange',
      origin: 'netlists/lines/hill.yaml:12',
    },
    {
      node: 'kiosk/plug.a',
      branch: 'kiosk/line.a',
      current: 0.0384,
      sort: 'core',
      origin: 'netlists/sets/kiosk.yaml:40',
    },
    { node: 'kiosk/A1' },
  ],
}

export const LIST: ListAnswer = {
  ...head('list', { what: 'sets' }),
  outcome: 'answered',
  what: 'sets',
  rows: [
    {
      name: 'kiosk',
      title: 'Wall set with a bell of its own and a title that is longer than most pages are wide',
      strips: 3,
    },
    { name: 'hut', title: null, strips: 12 },
  ],
}

const gets = (place: string, value: number, limit = 0.003): Verdict => {
  const shared = {
    ...base,
    check: 'bell.rings-with-all',
    subject: `${place}/bell`,
    condition: at('on-hook/ringing', place),
    figure: rings(place, value),
    limit: { value: limit, side: 'at-least', unit: 'A', source: 'this set', clause: '-', grade: 'SHEET' },
    margin: (value - limit) / limit,
  } as const
  return value < limit
    ? { ...shared, state: 'fails', says: `The bell gets ${value * 1e3} mA only.`, mend: 'unplug a set' }
    : { ...shared, state: 'holds', says: 'The bell rings.' }
}
const rings = (place: string, value: number): Figure =>
  figure({ id: 'ringing.current', subject: `${place}/bell`, value, condition: at('on-hook/ringing', place) })

const ROOMS = ['parlour', 'pantry', 'attic'] as const

export const CORE_LOOSE: NamedFault = {
  fault: 'core-on-dead-terminal',
  title: 'core on a dead terminal',
  subject: 'attic/line.ringing',
  condition: at('on-hook/ringing', 'attic'),
  says: 'The core attic/line.ringing lies where nothing leads on.',
  path: ['attic/plug.ringing', 'attic/C4'],
  consequences: [{ figure: rings('attic', 0), mended: rings('attic', 0.0041) }],
  mend: 'land core attic/line.ringing on C1',
  explains: ['wiring.ringing-lead-to-bell'],
}

/** Three sets: two bells get too little, one lead is loose, and the line drives no more than two loads. */
export const PREMISES: CheckAnswer = {
  ...head('check', { check: 'lodge-house' }),
  outcome: 'fails',
  counts: { holds: 1, marginal: 0, fails: 4, unknown: 0, faults: 1 },
  stands: {
    line: 'hill',
    premises: 'lodge-house',
    sockets: [
      { socket: 'front', is: 'master', 'ringing lead': true, earth: false, mirrored: false },
      {
        socket: 'back',
        is: 'secondary',
        'fed from': 'front',
        'ringing lead': true,
        earth: false,
        mirrored: true,
      },
    ],
    sets: ROOMS.map((place, k) => ({
      place,
      set: 'kiosk',
      ...(k === 1 ? { rewire: 'kiosk-converted' } : {}),
      socket: k === 0 ? 'front' : 'back',
      reversed: k === 2,
      rests: k === 1 ? 'off-hook' : 'on-hook',
      plug: [
        { node: `${place}/plug.b`, wiring: 2, contact: 5 },
        { node: `${place}/plug.ringing`, wiring: 3, contact: 4 },
        { node: `${place}/plug.a`, wiring: 5, contact: 2 },
      ],
    })),
  },
  verdicts: [
    gets('parlour', 0.0021),
    gets('pantry', 0.0024),
    gets('attic', 0.0041),
    {
      ...base,
      check: 'wiring.ringing-lead-to-bell',
      subject: 'attic/bell',
      condition: at('on-hook/ringing', 'attic'),
      state: 'fails',
      says: 'The ringing lead does not reach the bell.',
      mend: 'land core attic/line.ringing on C1',
    },
    {
      ...base,
      check: 'line.ringing-load',
      subject: 'lodge-house',
      state: 'fails',
      says: 'The loads together are too many.',
      figure: figure({ id: 'ringing.load.four-kilohm-unit', subject: 'lodge-house', value: 2.8, unit: '1' }),
      limit: { value: 2, side: 'at-most', unit: '1', source: 'this line', clause: '-', grade: 'SHEET' },
      margin: -0.4,
      mend: 'move any one of them to another line',
    },
  ],
  faults: [CORE_LOOSE],
  figures: [rings('parlour', 0.0021), rings('pantry', 0.0024), rings('attic', 0.0041)],
}

export const ANSWERS = {
  check: CHECK,
  premises: PREMISES,
  compare: COMPARE,
  solve: SOLVE,
  follow: FOLLOW,
  list: LIST,
}
