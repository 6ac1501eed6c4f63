/** What is known besides the complaints: readings made before, and answers to questions that would be asked. */
import type { VNode } from 'preact'
import { useId, useState } from 'preact/hooks'
import { linesOf } from './words.ts'

export interface KnownProps {
  readonly readings: readonly string[]
  readonly observed: readonly string[]
  readonly onChange: (known: {
    readonly readings?: readonly string[]
    readonly observed?: readonly string[]
  }) => void
}

export function Known({ readings, observed, onChange }: KnownProps): VNode {
  // open from the beginning where something stands in it; then as the reader leaves it
  const [isOpen] = useState(readings.length + observed.length > 0)
  return (
    <details class="folded" open={isOpen}>
      <summary>Readings and answers that you have already</summary>
      <Lines
        says="Readings, one on each line"
        hint="Where the red lead was, where the black, the condition, and what it showed: plug.a plug.b off-hook 210 Ω"
        begin={readings}
        onLines={(lines) => onChange({ readings: lines })}
      />
      <Lines
        says="Other answers, one on each line"
        hint="The question and its answer, as the command line writes them: tone=none, or stops-ringing=stops"
        begin={observed}
        onLines={(lines) => onChange({ observed: lines })}
      />
    </details>
  )
}

interface LinesProps {
  readonly says: string
  readonly hint: string
  readonly begin: readonly string[]
  readonly onLines: (lines: readonly string[]) => void
}

/** The text stays as it is typed; what is told are its lines. */
function Lines({ says, hint, begin, onLines }: LinesProps): VNode {
  const id = useId()
  const [text, setText] = useState(begin.join('\n'))
  return (
    <div class="field">
      <label for={id}>{says}</label>
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
      <textarea
        id={id}
        rows={3}
        spellcheck={false}
        autocomplete="off"
        autocapitalize="off"
        aria-describedby={`${id}-hint`}
        value={text}
        onInput={(event) => {
          const { value } = event.currentTarget
          setText(value)
          onLines(linesOf(value))
        }}
      />
    </div>
  )
}
