import { deliveredLimits } from 'ringproof/answer/limits-table'
import { stand } from 'ringproof/answer/standing'
import {
  type CheckContext,
  nodeShort,
  plugLinks,
  roleBranches,
  short,
  when,
  wireAt,
} from 'ringproof/checks/context'
import { compile, type Installation } from 'ringproof/netlist/compile'
import { type Netlist, nodeName, placeOf } from 'ringproof/netlist/netlist'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

function contextOf(target: string): CheckContext {
  const { net, installation, places } = stand({ target }, DEMO)
  return contextIn(net, installation, places[0] ?? '')
}

function contextIn(net: Netlist, installation: Installation, place: string): CheckContext {
  const never = () => {
    throw new Error('no figure and no trial is asked for here')
  }
  return {
    net,
    place: placeOf(net, place),
    limits: deliveredLimits(),
    figure: never,
    installation,
    trial: never,
  }
}

function alone(): CheckContext {
  const text = DEMO.find('set', 'fescue')
  const { sheet } = readSheet(text ?? { file: '', text: '' }, DEMO, 'set')
  if (sheet === undefined) throw new Error('no fescue')
  const installation = { name: 'bench', sets: { desk: { set: sheet } } }
  return contextIn(compile(installation), installation, 'desk')
}

describe('the wires at a plug', () => {
  test('are the contacts that meet the wires of the socket', () => {
    const context = contextOf('fescue')
    const names = (['a', 'b', 'ringing'] as const).map((wire) =>
      nodeName(context.net, wireAt(context, wire) ?? -1),
    )
    expect(names).toEqual(['fescue/plug.a', 'fescue/plug.b', 'fescue/plug.ringing'])
  })

  test('are those of the wiring numbers where the set stands in no socket', () => {
    const context = alone()
    expect(plugLinks(context)).toEqual([])
    const names = (['a', 'b', 'ringing'] as const).map((wire) =>
      nodeName(context.net, wireAt(context, wire) ?? -1),
    )
    expect(names).toEqual(['desk/plug.a', 'desk/plug.b', 'desk/plug.ringing'])
  })
})

describe('a context', () => {
  test('puts the examined set into a condition and leaves all others on-hook', () => {
    expect(when(contextOf('fescue'), 'off-hook/break')).toEqual({
      line: 'idle',
      sets: { fescue: { hook: 'off-hook', dial: 'break', key: 'up' } },
    })
    expect(() => when(contextOf('fescue'), 'off-hok')).toThrow(RangeError)
  })

  test('finds parts by their role, in its own place only', () => {
    const context = contextOf('fescue')
    const ids = ['sender', 'receiver', 'sounder'].map((role) =>
      roleBranches(context, role).map(({ id }) => id),
    )
    expect(ids).toEqual([['fescue/transmitter'], ['fescue/receiver'], ['fescue/bell']])
  })

  test('shortens the names of its own place and no others', () => {
    const context = contextOf('fescue')
    expect(short(context, 'fescue/A1')).toBe('A1')
    expect(short(context, 'bench/a')).toBe('bench/a')
    expect(nodeShort(context, wireAt(context, 'a') ?? 0)).toBe('plug.a')
  })
})
