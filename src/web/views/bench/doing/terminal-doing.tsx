import type { VNode } from 'preact'
import type { Board } from '../../../../index.ts'
import { Button } from '../../../kit/index.ts'
import { attempt } from '../state/attempt.ts'
import { pickUp } from '../state/hand.ts'
import { Chooser } from './chooser.tsx'
import { terminalsOf } from './terminals-of.ts'

export function TerminalDoing({ board, name }: { readonly board: Board; readonly name: string }): VNode {
  const cores = board.cores.map((one) => ({ ...one, id: `${one.cord}.${one.core}` }))
  const here = [
    ...cores.filter(({ lands }) => lands === name).map(({ id }) => `core ${id}`),
    ...board.straps
      .filter(({ from, to, change }) => change !== 'taken out' && (from === name || to === name))
      .map(({ from, to }) => `strap ${from}-${to}`),
    ...board.parts.filter(({ ends }) => ends.some(({ on }) => on === name)).map((one) => one.name),
  ]
  return (
    <>
      <h3>Terminal {name}</h3>
      <p>{here.length === 0 ? 'Nothing lies on it.' : `On it: ${here.join(', ')}.`}</p>
      <Chooser
        says="Core"
        options={cores
          .filter(({ lands }) => lands !== name)
          .map(({ id, lands }) => ({
            value: id,
            says: `${id}, ${lands === undefined ? 'parked' : `on ${lands}`}`,
          }))}
        does={(core) => `Land ${core} here`}
        onDo={(core) => void attempt({ do: 'land core', what: core, onto: name })}
      />
      <Chooser
        says="Other terminal"
        options={terminalsOf(board).filter(({ value }) => value !== name)}
        does={(to) => `Fit a strap ${name}-${to}`}
        onDo={(to) => void attempt({ do: 'fit strap', what: `${name}-${to}` })}
      />
      <p class="buttons">
        <Button says="Begin a strap here" onPress={() => pickUp({ what: 'strap', from: name })} />
      </p>
    </>
  )
}
