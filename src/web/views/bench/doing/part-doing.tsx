import type { VNode } from 'preact'
import type { BoardPart } from '../../../../index.ts'
import { Button } from '../../../kit/index.ts'
import { attempt } from '../state/attempt.ts'

export function PartDoing({ part }: { readonly part: BoardPart }): VNode {
  const { name, says, values, ends, fixed, change, bridged } = part
  const gone = change === 'taken out' ? 'it is taken out already' : undefined
  const points = new Set(ends.map(({ on }) => on))
  const noBridge = points.size === 2 ? undefined : `it has ${points.size} ends; a bridge joins two`
  return (
    <>
      <h3>{says === name ? name : `${name}, ${says}`}</h3>
      <p>
        {values === '' ? '' : `${values}. `}Between {[...points].join(', ')}.
      </p>
      <div class="buttons">
        <Button
          says="Take it out"
          disabledBecause={gone ?? fixed}
          onPress={() => void attempt({ do: 'lift part', what: name })}
        />
        <Button
          says="Bridge it by a strap"
          disabledBecause={gone ?? fixed ?? (bridged === true ? 'it is bridged already' : noBridge)}
          onPress={() => void attempt({ do: 'bridge', what: name })}
        />
      </div>
    </>
  )
}
