/** What can be done with what is selected, as plain buttons. */
import type { VNode } from 'preact'
import { type Board, type Thing, thingParts } from '../../../../index.ts'
import { Cautions } from '../../../kit/index.ts'
import { selected, side } from '../../../state/work.ts'
import { board } from '../state/judgement.ts'
import { CoreDoing } from './core-doing.tsx'
import { FitPart } from './fit-part.tsx'
import { Refusal } from './moves-list.tsx'
import { PartDoing } from './part-doing.tsx'
import { SlotDoing } from './slot-doing.tsx'
import { StrapDoing } from './strap-doing.tsx'
import { TerminalDoing } from './terminal-doing.tsx'

export function WhatCan(): VNode {
  const here = board.value
  const thing = selected.value
  return (
    <section class="bench-doing" aria-labelledby="bench-doing-title">
      <h2 id="bench-doing-title">What can be done</h2>
      <Cautions about={['opening', 'ringing', 'burst']} />
      <Refusal />
      {side.value === 'found' ? (
        <p>
          The pictures show the set as found, which stays as it is. Show it as proposed to move something.
        </p>
      ) : thing === undefined || here === undefined ? (
        <p>Point at a core, a terminal, a strap, a part or a slot in a picture.</p>
      ) : (
        <Doing board={here} thing={thing} />
      )}
      {here === undefined || side.value === 'found' ? null : <FitPart board={here} />}
    </section>
  )
}

function Doing({ board: here, thing }: { readonly board: Board; readonly thing: Thing }): VNode {
  const { sort, name } = thingParts(thing)
  const core = here.cores.find((one) => one.thing === thing)
  const strap = here.straps.find((one) => one.thing === thing)
  const part = here.parts.find((one) => one.thing === thing)
  const slot = here.slots.find((one) => one.thing === thing)
  if (core !== undefined) return <CoreDoing key={thing} board={here} core={core} />
  if (strap !== undefined) return <StrapDoing key={thing} strap={strap} />
  if (part !== undefined) return <PartDoing key={thing} part={part} />
  if (slot !== undefined) return <SlotDoing key={thing} slot={slot} />
  if (sort === 'terminal' && here.strips.some((one) => one.terminals.some((two) => two.name === name)))
    return <TerminalDoing key={thing} board={here} name={name} />
  return (
    <>
      <h3>{name}</h3>
      <p>This is outside the set, or fixed in it. Nothing is moved here.</p>
    </>
  )
}
