import type { VNode } from 'preact'
import type { BoardStrap } from '../../../../index.ts'
import { Button } from '../../../kit/index.ts'
import { attempt } from '../state/attempt.ts'

const HELD = { screw: 'held by screws', solder: 'held by solder', board: 'part of the board' } as const

export function StrapDoing({ strap }: { readonly strap: BoardStrap }): VNode {
  const { from, to, hold, change } = strap
  const what = `${from}-${to}`
  const isOut = change === 'taken out'
  const isScrewed = hold === 'screw'
  const gone = isOut ? 'it is not there' : undefined
  return (
    <>
      <h3>
        Strap {what}, {HELD[hold]}
      </h3>
      <div class="buttons">
        {isOut ? (
          <Button says="Fit it again" onPress={() => void attempt({ do: 'fit strap', what, hold })} />
        ) : null}
        <Button
          says="Lift it"
          disabledBecause={gone ?? (isScrewed ? undefined : `it is ${HELD[hold]}: only a cut takes it away`)}
          onPress={() => void attempt({ do: 'lift strap', what })}
        />
        <Button
          says="Cut it"
          sort="grave"
          disabledBecause={gone ?? (isScrewed ? 'it is held by screws and can be lifted' : undefined)}
          onPress={() => void attempt({ do: 'cut', what })}
        />
      </div>
    </>
  )
}
