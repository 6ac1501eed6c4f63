import { stand } from 'ringproof/answer/standing'
import { freshSupplier, readFigure } from 'ringproof/figures/read'
import { receivingQuestion, sendingQuestion, speechPlans } from 'ringproof/figures/speech'
import { straightAcross } from 'ringproof/figures/straight'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { branchAt } from 'ringproof/netlist/netlist'
import { currentIn, voltageBetween } from 'ringproof/solver/solution'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { assertClose } from '../../support/close.ts'

const { net } = stand({ target: 'fescue' }, DEMO)
const [place] = net.places
const branch = (id: string) => branchAt(net, net.branchIndex.get(id) ?? -1)
const sender = branch('fescue/transmitter')
const receiver = branch('fescue/receiver')
const { line } = net
const socket = place?.socket
if (line === undefined || socket === undefined) throw new Error('the workshop stands on a line')
const condition = conditionOf('fescue', readCondition('off-hook/speech')!, net.rest)
const supplier = freshSupplier(net)

/** The changes that put a part across the pair by straps, its set unplugged: what the theorems stand for. */
function strapped(part: typeof sender) {
  const ends = [part.from, part.to]
  return {
    lifted: net.branches
      .filter(
        (one) =>
          one !== part &&
          one.part.place === 'fescue' &&
          (one.part.sort === 'plug' || ends.includes(one.from) || ends.includes(one.to)),
      )
      .map(({ index }) => index),
    // ideal links, so that nothing of them is in the figure
    bridges: [
      { from: socket!.a, to: part.from, ohms: 0 },
      { from: part.to, to: socket!.b, ohms: 0 },
    ],
  }
}

const plan = (id: 'speech.send' | 'speech.receive', part: typeof sender, frequency: number) =>
  straightAcross(id, net, { line: line!, socket: socket!, part, condition, frequency })

describe('a handset part straight across the line', () => {
  test.each([200, 1000, 4000])('by theorem does what it does by straps, %d Hz', (frequency) => {
    // Thevenin and reciprocity; the receiver is as good a sender, since it is a resistance and an inductance
    const [send, receive] = speechPlans(
      { line: line!, sender: receiver, receiver },
      condition,
      strapped(receiver),
      frequency,
    ).map((one) => readFigure(net, one, supplier).value ?? 0)
    for (const [id, expected] of [
      ['speech.send', send],
      ['speech.receive', receive],
    ] as const) {
      const figure = readFigure(net, plan(id, receiver, frequency), supplier)
      expect(figure).toMatchObject({ id, unit: 'A', frequency, subject: 'fescue/receiver' })
      assertClose(figure.value, expected ?? 0, { relative: 1e-9 }, id)
    }
  })

  test('counts a transmitter as its set feeds it', () => {
    const fed = supplier({ analysis: 'direct', condition })
    const { re } = currentIn(fed, sender.index)
    // R = R₀·√(I₀/I), 150 Ω at 40 mA
    const chord = 150 * Math.sqrt(0.04 / Math.abs(re))
    const pair = supplier({
      analysis: 'alternating',
      frequency: 1000,
      condition,
      sources: 'none',
      lifted: net.branches.filter(({ part }) => part.sort === 'plug').map(({ index }) => index),
      probes: [{ into: socket!.a, outOf: socket!.b, re: 1 }],
    })
    const seen = voltageBetween(pair, socket!.a, socket!.b) ?? { re: 0, im: 0 }
    const through = currentIn(pair, line!.termination[0] ?? -1)
    assertClose(
      readFigure(net, plan('speech.send', sender, 1000), supplier).value,
      Math.hypot(through.re, through.im) / Math.hypot(seen.re + chord, seen.im),
      { relative: 1e-9 },
      'H/(Z + R)',
    )
  })

  test('has the line alone against it where it has no current to tell its impedance by', () => {
    const lifted = net.branches
      .filter(({ part, from, to }) => part.sort === 'core' && [from, to].includes(sender.from))
      .map(({ index }) => index)
    const cut = readFigure(
      net,
      straightAcross(
        'speech.send',
        net,
        { line: line!, socket: socket!, part: sender, condition, frequency: 1000 },
        { lifted },
      ),
      supplier,
    )
    expect(cut.value).toBeGreaterThan(readFigure(net, plan('speech.send', sender, 1000), supplier).value ?? 1)
  })
})

test('the questions of speech move one source each', () => {
  expect(sendingQuestion(sender, condition, 300).series).toEqual([{ branch: sender.index, re: 1 }])
  const far = receivingQuestion(line, condition, 300)
  expect(far.series?.map(({ branch: index }) => index)).toEqual(line.termination)
  expect(far.series?.reduce((sum, { re }) => sum + re, 0)).toBe(1)
})
