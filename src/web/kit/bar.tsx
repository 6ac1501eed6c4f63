/** An amount as a bar, beside its number: a length for the eye; those who listen hear the number alone. */
import type { VNode } from 'preact'

export interface BarProps {
  /** What is shown of the whole, 0 to 1; more is cut. */
  readonly share: number
  /** A line across the bar: what is needed, or allowed; same scale. */
  readonly mark?: number | undefined
  /** `fails` is hatched by an outline too, so that it is told without its colour. */
  readonly state?: 'holds' | 'marginal' | 'fails' | 'unknown'
}

const within = (share: number): number => 100 * Math.min(1, Math.max(0, share))

export function Bar({ share, mark, state }: BarProps): VNode {
  const length = within(share)
  return (
    <svg class={`bar ${state ?? ''}`} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      <rect class="bar-whole" x="0" y="2" width="100" height="6" />
      <rect class="bar-part" x="0" y="2" width={length.toFixed(2)} height="6" />
      {mark === undefined ? null : (
        <line class="bar-mark" x1={within(mark)} x2={within(mark)} y1="0" y2="10" />
      )}
    </svg>
  )
}
