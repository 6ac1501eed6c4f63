import { compile } from 'ringproof/netlist/compile'
import { applyMoves } from 'ringproof/rewire/moves'
import { describe, expect, test } from 'vitest'
import { moved, movesOf, trialSet, unitOf } from './_set.ts'

const R = 'kind: resistor, resistance: 1 kΩ'

describe('a move that the wiring allows', () => {
  test('fits a strap, held by a screw unless it says otherwise', () => {
    const { set, problems } = moved('fit strap: A2-A3', 'fit strap: B3-B4, hold: solder')
    expect(problems).toEqual([])
    expect(set.straps['A2-A3']).toEqual({ hold: 'screw' })
    expect(set.straps['B3-B4']).toEqual({ hold: 'solder' })
  })

  test.each(['lift strap: A1-A2', 'lift strap: A2-A1', 'cut: B1-B2', 'cut: B2-B1', 'cut: B2-B3'])(
    '%s takes the strap away, whichever end is named first',
    (line) => {
      const { set, problems } = moved(line)
      expect(problems).toEqual([])
      expect(Object.keys(set.straps)).toHaveLength(2)
      expect([...set.places.keys()].filter((path) => path.startsWith('straps.')).sort()).toEqual(
        Object.entries(set.straps)
          .flatMap(([name]) => [`straps.${name}`, `straps.${name}.hold`])
          .sort(),
      )
    },
  )

  test('lands a core, parks a core, and changes nothing else of it', () => {
    const { set, problems } = moved('land core: handset.r2, onto: B4', 'park core: line.b')
    expect(problems).toEqual([])
    expect(set.cords['handset']?.cores).toEqual({ r1: { lands: 'B3' }, r2: { lands: 'B4' } })
    expect(set.cords['line']?.cores['b']).toEqual({ lands: 'parked', colour: 'grey' })
  })

  test('leaves what the sheet means: where cores are meant to land', () => {
    expect(moved('park core: line.b').set.landings).toEqual(trialSet().landings)
  })

  test('fits a part between terminals, joints and earth', () => {
    const { set, problems } = moved(
      `fit part: load, with: {${R}, from: joint-1, to: A3}`,
      `fit part: leak, with: {${R}, from: B1, to: earth}`,
    )
    expect(problems).toEqual([])
    expect(set.parts['load']).toMatchObject({ from: 'joint-1', to: 'A3', resistance: { value: 1000 } })
    expect(set.parts['leak']).toMatchObject({ to: 'earth' })
  })

  test('fits a part between cores into the handset', () => {
    const { set, problems } = moved('lift part: receiver', `fit part: dummy, with: {${R}, from: r1, to: r2}`)
    expect(problems).toEqual([])
    expect(Object.keys(set.handset)).toEqual(['dummy'])
    expect(set.parts).toEqual(trialSet().parts)
  })

  test('lifts a part and fits another under its name', () => {
    const { set, problems } = moved('lift part: shunt', `fit part: shunt, with: {${R}, from: A1, to: B4}`)
    expect(problems).toEqual([])
    expect(set.parts['shunt']).toMatchObject({ from: 'A1', to: 'B4' })
  })

  test('bridges a part by a strap between its ends, in the set or in the handset', () => {
    const { set, problems } = moved('bridge: shunt', 'bridge: receiver')
    expect(problems).toEqual([])
    expect(set.parts['shunt-bridge']).toEqual({ kind: 'strap', from: 'A2', to: 'joint-1' })
    expect(set.handset['receiver-bridge']).toEqual({ kind: 'strap', from: 'r1', to: 'r2' })
    expect(set.parts['shunt']).toBeDefined()
  })

  test('pulls a unit and plugs it elsewhere', () => {
    const pulled = moved('pull unit: bay')
    expect(pulled.problems).toEqual([])
    expect(pulled.set.slots['bay']?.fitted).toBe('none')
    expect(Object.keys(pulled.set.units)).toEqual([])
    const { set, problems } = moved('pull unit: bay', 'plug unit: link, in: gap')
    expect(problems).toEqual([])
    expect(set.slots['gap']?.fitted).toBe('link')
    expect(set.units['link']?.pins).toEqual(['p1', 'p2'])
  })

  test('keeps a unit that another slot holds', () => {
    const { set } = moved('plug unit: link, in: gap', 'pull unit: bay')
    expect(set.units['link']?.pins).toEqual(['p1', 'p2'])
  })

  test('makes a set that compiles', () => {
    const { set } = moved(
      'bridge: shunt',
      'bridge: receiver',
      'cut: B2-B3',
      'land core: handset.r2, onto: B4',
    )
    const { branches } = compile({ name: 'trial', sets: { trial: { set } } })
    const ids = branches.map(({ id }) => id)
    expect(ids).toEqual(
      expect.arrayContaining(['trial/shunt-bridge', 'trial/receiver-bridge', 'trial/handset.r2']),
    )
    expect(ids).not.toContain('trial/B2-B3')
  })
})

const REFUSED: readonly (readonly [move: string, found: string, expected: string, mend?: string])[] = [
  ['fit strap: A1-B9', 'the terminal `B9`', '`B1`, `B2`, `B3` or `B4`', 'write `B4`'],
  ['fit strap: A1-B22', 'the terminal `B22`', '`B1`, `B2`, `B3` or `B4`', 'write `B2`'],
  ['fit strap: D1-A1', 'the terminal `D1`', '`A1`, `A2`, `A3`', 'write `A1`'],
  ['fit strap: A1-A1', 'the strap `A1-A1`', 'two different terminals'],
  ['fit strap: A2-A1', 'the strap `A1-A2`, already fitted', 'without a strap', 'leave this move out'],
  ['lift strap: A1-A3', 'the strap `A1-A3`, which is not there', '`A1-A2`', 'write `lift strap: A1-A2`'],
  ['lift strap: A1-B4', 'the strap `A1-B4`, which is not there', '`A1-A2`', 'leave this move out'],
  ['lift strap: A1-A9', 'the terminal `A9`', '`A1`, `A2` or `A3`', 'write `A3`'],
  ['lift strap: B2-B1', 'the strap `B1-B2`, held by solder', 'held by screws', 'write `cut: B1-B2`'],
  ['lift strap: B2-B3', 'the strap `B2-B3`, part of the board', 'held by screws', 'write `cut: B2-B3`'],
  ['cut: A1-A2', 'the strap `A1-A2`, held by screws', 'only a cut', 'write `lift strap: A1-A2`'],
  ['cut: B3-B4', 'the strap `B3-B4`, which is not there', '`B1-B2`', 'write `cut: B1-B2`'],
  ['land core: handset.r3, onto: B4', 'the core `handset.r3`', '`handset.r2`', 'write `handset.r1`'],
  ['land core: cable.a, onto: B4', 'the core `cable.a`', '`line.a`'],
  ['land core: handset.r2, onto: B5', 'the terminal `B5`', '`B4`', 'write `B4`'],
  ['park core: line.c', 'the core `line.c`', '`line.b`', 'write `line.a`'],
  [
    `fit part: block, with: {${R}, from: A1, to: A2}`,
    'the name `block`, already taken',
    'a free name',
    'lift',
  ],
  [`fit part: hook, with: {${R}, from: A1, to: A2}`, 'the name `hook`, already taken', 'a free name', 'lift'],
  [`fit part: load, with: {${R}, from: A1, to: C2}`, 'the terminal `C2`', '`A1`', 'write `A2`'],
  [
    `fit part: load, with: {${R}, from: A1, to: joint-2}`,
    'the end `joint-2`',
    '`joint-1`',
    'write `joint-1`',
  ],
  [`fit part: load, with: {${R}, from: A1, to: r2}`, 'the end `r2`', '`joint-1` or `earth`'],
  ['lift part: hunt', 'the part `hunt`', '`shunt`', 'write `shunt`'],
  ['lift part: hook', 'the part `hook`', '`shunt`'],
  ['bridge: shunts', 'the part `shunts`', '`shunt`', 'write `shunt`'],
  ['bridge: coil', '`coil`, a part with the ends `A1`, `A2`, `B1`, `B2`', 'two ends', 'fit a strap'],
  ['plug unit: link, in: hole', 'the slot `hole`', '`bay` or `gap`'],
  ['plug unit: link, in: bay', 'the slot `bay`, which holds the unit `link`', 'empty', '`pull unit: bay`'],
  ['plug unit: none-such, in: gap', 'the unit `none-such`', 'a unit sheet in reach'],
  ['plug unit: pad, in: gap', 'the unit `pad` with the pins `p1`, `p2`, `p3`', '`p1`, `p2`'],
  ['pull unit: link', 'the slot `link`', '`bay` or `gap`', 'write `bay`'],
  ['pull unit: gap', 'the slot `gap`, which is empty', 'a slot with a unit', 'leave this move out'],
]

describe('a move that the wiring does not allow', () => {
  test.each(REFUSED)('%s is refused', (line, found, expected, mend) => {
    const before = trialSet()
    const moves = movesOf('park core: line.a', line ?? '', 'fit strap: A2-A3')
    const { set, problems } = applyMoves(before, moves, unitOf)
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatchObject({
      code: 'move-refused',
      severity: 'error',
      place: { file: 'moves.yaml', line: 7, column: 5 },
    })
    expect(problems[0]?.found).toContain(found)
    expect(problems[0]?.expected).toContain(expected)
    if (mend === undefined) expect(problems[0]?.mend).toBeUndefined()
    else expect(problems[0]?.mend).toContain(mend)
    // the moves around it are made, it alone is not
    const others = applyMoves(before, [moves[0]!, moves[2]!], unitOf)
    expect(JSON.stringify(set)).toBe(JSON.stringify(others.set))
  })

  test('at a key of its own is placed there, where that is known', () => {
    const onto = { file: 'moves.yaml', line: 9, column: 5, length: 4 }
    const [move] = movesOf('land core: handset.r2, onto: B22')
    const moves = move === undefined ? [] : [move]
    const placeBy = (places?: ReadonlyMap<string, typeof onto>) =>
      applyMoves(trialSet(), moves, unitOf, places).problems[0]?.place
    expect(placeBy(new Map([['moves.0.onto', onto]]))).toEqual(onto)
    expect(placeBy(new Map())).toEqual(move?.place)
    expect(placeBy()).toEqual(move?.place)
  })

  test('such as a second bridge across one part is refused', () => {
    const { problems } = moved('bridge: shunt', 'bridge: shunt')
    expect(problems).toMatchObject([
      { code: 'move-refused', found: expect.stringContaining('`shunt-bridge`') },
    ])
  })

  test('such as a part that cannot exist is refused with what its kind says', () => {
    // the reader refuses it before; moves that are made in a program pass no reader
    const [move] = movesOf(
      'fit part: tap, with: {kind: induction-coil, coupling: 0.5, windings: {a: {from: A1, to: A2, resistance: 1 Ω, inductance: 1 H}, b: {from: B1, to: B2, resistance: 1 Ω, inductance: 1 H}}}',
    )
    const spec = { ...(move as { with: { kind: string } }).with, coupling: 1.5 }
    const moves = [
      { do: 'fit part', what: 'tap', with: spec },
      { do: 'fit part', what: 'odd', with: { kind: 'resister' } },
    ] as const
    const { problems, set } = applyMoves(trialSet(), moves, unitOf)
    expect(problems).toMatchObject([
      { code: 'move-refused' },
      { code: 'move-refused', found: 'the kind `resister`', mend: 'write `resistor`' },
    ])
    expect(problems[0]).not.toHaveProperty('place')
    expect(set.parts).toEqual(trialSet().parts)
  })
})

describe('moves', () => {
  test('meet the wiring that the moves before them have left', () => {
    expect(moved('lift strap: A1-A2', 'lift strap: A1-A2').problems).toHaveLength(1)
    expect(moved('lift strap: A1-A2', 'fit strap: A1-A2').problems).toEqual([])
  })

  test('leave the set that was handed in as it was', () => {
    const set = trialSet()
    const before = JSON.stringify([set, [...set.places]])
    const lines = [
      'lift strap: A1-A2',
      'land core: handset.r2, onto: B4',
      'lift part: shunt',
      'bridge: block',
      'pull unit: bay',
    ]
    expect(applyMoves(set, movesOf(...lines), unitOf).problems).toEqual([])
    expect(JSON.stringify([set, [...set.places]])).toBe(before)
  })

  test('are where the changed set says that its changes are written', () => {
    const { set } = moved(
      'land core: handset.r2, onto: B4',
      'fit strap: A2-A3',
      'bridge: shunt',
      'pull unit: bay',
      'lift part: block',
    )
    const lineOf = (path: string) => {
      const place = set.places.get(path)
      return place && `${place.file}:${place.line}`
    }
    expect(lineOf('cords.handset.cores.r2')).toBe('moves.yaml:6')
    expect(lineOf('cords.handset.cores.r2.lands')).toBe('moves.yaml:6')
    expect(lineOf('straps.A2-A3')).toBe('moves.yaml:7')
    expect(lineOf('parts.shunt-bridge')).toBe('moves.yaml:8')
    expect(lineOf('slots.bay.fitted')).toBe('moves.yaml:9')
    expect(lineOf('parts.block')).toBeUndefined()
    expect(lineOf('parts.block.capacitance')).toBeUndefined()
    expect(lineOf('cords.handset.cores.r1')).toBe('trial.yaml:20')
  })

  test('that are written nowhere leave the places of what they change', () => {
    const { set } = applyMoves(trialSet(), [{ do: 'park core', what: 'line.b' }], unitOf)
    expect(set.places.get('cords.line.cores.b')).toMatchObject({ file: 'trial.yaml', line: 19 })
  })

  test('keep maps without the words that every object has', () => {
    const { set } = moved('bridge: shunt', 'lift strap: A1-A2', 'park core: line.b', 'pull unit: bay')
    const maps = [set.parts, set.straps, set.cords, set.cords['line']?.cores ?? {}, set.slots, set.units]
    for (const map of maps) expect('constructor' in map).toBe(false)
    expect(moved('lift part: constructor').problems).toHaveLength(1)
    expect(moved('land core: constructor.name, onto: B1').problems).toHaveLength(1)
  })
})
