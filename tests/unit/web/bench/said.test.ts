import { fileURLToPath } from 'node:url'
import { type Figure, figureText, openBench } from 'ringproof'
import { folderShelf } from 'ringproof/host/shelf'
import { answerWords, bellWords, heaviest } from 'ringproof/web/views/bench/condition/said'
import { expect, test } from 'vitest'

const shelf = folderShelf([], fileURLToPath(new URL('../../../../netlists', import.meta.url)))
const side = openBench({ target: 'set/sedge' }, shelf).side([])
const { verdicts } = side.verdicts()

const bell = (figures: readonly Figure[]): Figure => {
  const found = figures.find(({ id }) => id === 'ringing.current')
  if (found === undefined) throw new Error('a sedge has a bell')
  return found
}

test('the bell rings where it gets what its check asks for, and not with the pair reversed', () => {
  const straight = side.now({ condition: 'on-hook/ringing' }).figures
  const turned = side.now({ condition: 'on-hook/ringing', reversed: true }).figures
  // the sheet of this set: rings from 3 mA
  expect(bellWords(straight, verdicts, 'sedge')).toEqual([
    `The bell rings: it gets ${figureText(bell(straight))} and needs 3.00 mA.`,
  ])
  expect(bellWords(turned, verdicts, 'sedge')).toEqual([
    `The bell does not ring: it gets ${figureText(bell(turned))} and needs 3.00 mA.`,
  ])
  expect(bell(straight).value).toBeGreaterThan(0.003)
  expect(bell(turned).value).toBeLessThan(0.003)
  expect(bellWords(straight, [], 'sedge')[0]).toContain('does not say what it needs')
  expect(bellWords([{ ...bell(straight), value: null, state: 'no-convergence' }], verdicts, 'sedge')).toEqual(
    ['Whether the bell rings is not known: no operating point found.'],
  )
  expect(bellWords(side.now({ condition: 'on-hook' }).figures, verdicts, 'sedge')).toEqual([])
})

test('lifting while it rings is told by the direct current against what trips', () => {
  const verdict = verdicts.find(({ check }) => check === 'line.answers-while-ringing')
  if (verdict?.figure == null || verdict.limit === null) throw new Error('this line names its trip')
  const [words] = answerWords(verdicts)
  expect(words).toContain(verdict.says)
  expect(words).toContain(figureText(verdict.figure))
  expect(words).toContain('the ringing stops from 12.0 mA')
  const { figure: _figure, limit: _limit, ...rest } = verdict
  expect(answerWords([{ ...rest, figure: null, limit: null }])).toEqual([verdict.says])
})

test('the heaviest is the greatest of all that is drawn, what stands outside the set too', () => {
  const { shown } = side.now({ condition: 'on-hook/ringing' })
  const inSet = Math.max(...Object.values(shown.carries).map(({ size }) => size))
  const outside = Math.max(
    ...shown.circuit.pieces.flatMap(({ ends }) => ends.map(({ flow }) => flow?.size ?? 0)),
  )
  expect(outside).toBeGreaterThan(inSet)
  expect(heaviest(shown)).toBe(outside)
  expect(
    heaviest({ ...shown, carries: {}, circuit: { name: 'empty', nodes: [], pieces: [], links: [] } }),
  ).toBe(0)
})
