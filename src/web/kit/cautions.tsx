/** The usual cautions, wherever a hand is led to live wires. */
import type { VNode } from 'preact'
import { CAUTIONS, type Caution } from '../../index.ts'

export interface CautionsProps {
  /** Those that matter here; all when absent. */
  readonly about?: readonly Caution['about'][]
}

export function Cautions({ about }: CautionsProps): VNode {
  const meant = CAUTIONS.filter((one) => about === undefined || about.includes(one.about))
  return (
    <aside class="cautions" aria-label="Cautions">
      <svg class="caution-shape" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
        <path class="outline" d="M12 2L23 21.5H1z" />
        <path class="inside" d="M12 9v6M12 17v2" />
      </svg>
      <ul>
        {meant.map(({ about: one, says }) => (
          <li key={one}>{says}.</li>
        ))}
      </ul>
    </aside>
  )
}
