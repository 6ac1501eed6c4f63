import type { PremisesSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { skeletonShelf } from '../../support/sheets.ts'

const SHELF = skeletonShelf()

function read(...sockets: readonly string[]) {
  const text = [
    'ringproof: 1',
    'sheet: premises',
    'name: trial',
    'line: depot-exchange',
    'sockets:',
    '  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
    ...sockets.map((one) => `  ${one}`),
    '',
  ].join('\n')
  const { sheet, problems } = readSheet({ file: 'trial.yaml', text }, SHELF, 'premises')
  return { sheet: sheet as PremisesSheet | undefined, codes: problems.map(({ code }) => code), problems }
}

describe('sockets with apparatus of their own', () => {
  test('are read as they are written', () => {
    const { sheet, codes } = read(
      'lead: {is: adapter, fed from: front, capacitance: 1.8 µF, resistance: 470 kΩ, earth: no}',
      'bare: {is: adapter, fed from: front, over: {type: house-pair, gauge: 0.5 mm, length: 2 m}}',
      'tones: {is: converter, fed from: front, series resistance: 40 Ω, load: 100 kΩ, passes ringing: yes}',
      'quiet: {is: filter, fed from: tones, inductance: 5 mH, resistance: 10 Ω, capacitance: 22 nF, ringing lead: no}',
    )
    expect(codes).toEqual([])
    expect(sheet?.sockets['lead']).toMatchObject({
      is: 'adapter',
      capacitance: { value: 1.8e-6 },
      earth: false,
    })
    expect(sheet?.sockets['tones']).toMatchObject({
      'series resistance': { value: 40 },
      load: { value: 1e5 },
      'passes ringing': true,
    })
    expect(sheet?.sockets['quiet']).toMatchObject({ inductance: { value: 0.005 }, 'ringing lead': false })
  })

  test('name what is missing, unknown or in a circle', () => {
    expect(read('a: {is: adapter, fed from: front, capacitance: 1.8 µF}').codes).toEqual(['key-missing'])
    const lone = read('a: {is: adapter, fed from: front, resistance: 470 kΩ}').problems[0]
    expect(lone).toMatchObject({
      code: 'key-missing',
      found: 'an adapter with `resistance` but no `capacitance`',
      place: { line: 7 },
    })
    expect(read('a: {is: converter, fed from: front}').codes).toEqual(['key-missing'])
    expect(read('a: {is: filter, fed from: front, inductance: 5 mH, resistance: 10 Ω}').codes).toEqual([
      'key-missing',
    ])
    expect(read('a: {is: adapter, fed from: font}').codes).toEqual(['name-unknown'])
    expect(read('a: {is: adapter, fed from: front, ringing lead: no}').codes).toEqual(['key-unknown'])
    expect(
      read(
        'a: {is: adapter, fed from: b}',
        'b: {is: filter, fed from: a, inductance: 5 mH, resistance: 10 Ω, capacitance: 22 nF}',
      ).codes,
    ).toEqual(['base-circular'])
  })
})

describe('a cable on a circuit sheet', () => {
  const circuit = (cable: string) => {
    const text = `ringproof: 1\nsheet: circuit\nname: trial\nparts:\n  e: {kind: voltage-source, from: p, to: earth, direct: 1 V}\n  line: {kind: cable, ${cable}}\n  load: {kind: resistor, from: q, to: s, resistance: 600 Ω}\n`
    return readSheet({ file: 'trial.yaml', text }, SHELF, 'circuit').problems.map(({ code, found }) => [
      code,
      found,
    ])
  }
  const rest = 'length: 5 km, resistance per km: 168 Ω, capacitance per km: 50 nF'

  test('meets other parts at its four ends', () => {
    expect(circuit(`from a: p, from b: earth, to a: q, to b: s, ${rest}`)).toEqual([])
  })

  test('that leaves an end in the air is told which', () => {
    expect(circuit(`from a: p, from b: earth, to a: q, to b: t, ${rest}`)).toEqual([
      ['end-dangling', 'the end `t`, which no other end meets'],
      ['end-dangling', 'the end `s`, which no other end meets'],
    ])
  })

  test('whose value cannot be read still has its ends', () => {
    expect(circuit(`from a: p, from b: earth, to a: q, to b: s, ${rest.replace('168 Ω', '168 V')}`)).toEqual([
      ['unit-wrong', '`168 V`'],
    ])
  })
})

describe('masters, outlets and mirrored sockets', () => {
  test('are read as they are written', () => {
    const { sheet, codes } = read(
      'second: {is: master, fed from: front, over: {type: house-three, gauge: 0.5 mm, length: 2 m}, ringing lead: no, capacitance: 1.8 µF, resistance: 470 kΩ}',
      'plain: {is: outlet}',
      'wall: {is: outlet, fed from: plain, over: {type: house-pair, gauge: 0.5 mm, length: 2 m}, mirrored: yes}',
    )
    expect(codes).toEqual([])
    expect(sheet?.sockets['second']).toMatchObject({ 'fed from': 'front', 'ringing lead': false })
    expect(sheet?.sockets['wall']).toMatchObject({ is: 'outlet', mirrored: true })
  })

  test('say nothing of a cable where the line ends', () => {
    const { problems } = read('plain: {is: outlet, over: {type: house-pair, gauge: 0.5 mm, length: 2 m}}')
    expect(problems[0]).toMatchObject({ code: 'key-unknown', place: { line: 7 } })
    expect(problems[0]?.mend).toContain('`fed from`')
    expect(read('second: {is: master, ringing lead: no, capacitance: 1 µF, resistance: 1 MΩ}').codes).toEqual(
      ['key-unknown'],
    )
  })
})

describe('the condition of a set in its place', () => {
  const at = (condition: string) => {
    const text = [
      'ringproof: 1',
      'sheet: premises',
      'name: trial',
      'line: depot-exchange',
      'sockets:',
      '  front: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
      'sets:',
      `  desk: {set: fescue, in: front, condition: ${condition}}`,
      '',
    ].join('\n')
    return readSheet({ file: 'trial.yaml', text }, SHELF, 'premises')
  }

  test('says nothing of the line, and is warned about where it does', () => {
    expect(at('off-hook/key').problems).toEqual([])
    const { sheet, problems } = at('on-hook/ringing')
    expect(sheet).toBeDefined()
    expect(problems[0]).toMatchObject({ severity: 'warning', place: { line: 8 } })
    expect(problems[0]?.mend).toContain('`on-hook`')
  })
})
