/** The moves made so far; any one can be taken back. */
import type { VNode } from 'preact'
import { Button, Problems } from '../../../kit/index.ts'
import { refusal, takeBack } from '../state/attempt.ts'
import { judged } from '../state/judgement.ts'

export function MovesList(): VNode {
  const quick = judged.value?.quick
  const moves = quick?.moves ?? []
  return (
    <section class="bench-moves" aria-labelledby="bench-moves-title">
      <h2 id="bench-moves-title">Moves so far</h2>
      {moves.length === 0 ? (
        <p class="hint">None: the set lies as it was found.</p>
      ) : (
        <ol class="bench-list">
          {moves.map((one, k) => (
            <li key={`${k} ${one}`}>
              <span class="bench-move">
                {one}
                {quick?.refusedMoves.includes(k) === true ? ' (refused: changes nothing)' : ''}
              </span>{' '}
              <Button
                says="Take back"
                label={`Take back: ${one}`}
                sort="quiet"
                onPress={() => void takeBack(k)}
              />
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}

/** What was not made, and why. */
export function Refusal(): VNode | null {
  const problems = refusal.value
  if (problems.length === 0) return null
  return (
    <div class="bench-refusal">
      <p>
        <strong>Not made.</strong> The wiring does not allow it.
      </p>
      <Problems problems={problems} />
      <Button
        says="All right"
        onPress={() => {
          refusal.value = []
        }}
      />
    </div>
  )
}
