/** How a check came out: a drawn shape and the word. */
import type { VNode } from 'preact'
import { VERDICT_WORDS } from '../../index.ts'

type State = keyof typeof VERDICT_WORDS

/** Each state has an outline of its own, so that neither colour nor reading is needed to tell them apart. */
const SHAPES: Readonly<Record<State, { readonly outline: string; readonly inside: string }>> = {
  // a disc with a tick
  holds: { outline: 'M12 2a10 10 0 1 0 0 20a10 10 0 1 0 0-20z', inside: 'M7 12.5l3.5 3.5l6.5-7.5' },
  // a triangle with a bar
  marginal: { outline: 'M12 2L23 21.5H1z', inside: 'M7.5 17h9M12 9v5' },
  // a block with a cross
  fails: { outline: 'M2.5 2.5h19v19h-19z', inside: 'M7.5 7.5l9 9M16.5 7.5l-9 9' },
  // a lozenge with a gap
  unknown: { outline: 'M12 1L23 12L12 23L1 12z', inside: 'M7 12h3M14 12h3' },
}

export interface StateMarkProps {
  readonly state: State
  /** The shape alone, where the word stands beside it anyhow. */
  readonly bare?: boolean
}

export function StateMark({ state, bare }: StateMarkProps): VNode {
  const { outline, inside } = SHAPES[state]
  return (
    <span class={`state ${state}`}>
      <svg class="state-shape" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
        <path class="outline" d={outline} />
        <path class="inside" d={inside} />
      </svg>
      {bare === true ? null : <span class="state-word">{VERDICT_WORDS[state]}</span>}
    </span>
  )
}
