import type { VNode } from 'preact'
import type { Board, BoardCore } from '../../../../index.ts'
import { Button } from '../../../kit/index.ts'
import { attempt } from '../state/attempt.ts'
import { hand, pickUp, putDown } from '../state/hand.ts'
import { Chooser } from './chooser.tsx'
import { terminalsOf } from './terminals-of.ts'

export function CoreDoing({ board, core }: { readonly board: Board; readonly core: BoardCore }): VNode {
  const what = `${core.cord}.${core.core}`
  const isHeld = hand.value?.what === 'core' && hand.value.core === what
  const lies = core.lands === undefined ? 'parked, on nothing' : `on ${core.lands}`
  const colour = core.colour === undefined ? '' : `, ${core.colour.word}`
  return (
    <>
      <h3>
        Core {what}
        {colour}
      </h3>
      <p>
        It is {lies}.
        {core.was === undefined
          ? ''
          : ` As found it was ${core.was === 'parked' ? 'parked' : `on ${core.was}`}.`}
      </p>
      <div class="buttons">
        {isHeld ? (
          <Button says="Put it down" onPress={putDown} />
        ) : (
          <Button says="Take it in the hand" onPress={() => pickUp({ what: 'core', core: what })} />
        )}
        <Button
          says="Park it, insulated"
          disabledBecause={core.lands === undefined ? 'it is parked already' : undefined}
          onPress={() => {
            hand.value = undefined
            void attempt({ do: 'park core', what })
          }}
        />
      </div>
      <Chooser
        says="Terminal"
        options={terminalsOf(board).filter(({ value }) => value !== core.lands)}
        does={(onto) => `Land it on ${onto}`}
        onDo={(onto) => {
          hand.value = undefined
          void attempt({ do: 'land core', what, onto })
        }}
      />
    </>
  )
}
