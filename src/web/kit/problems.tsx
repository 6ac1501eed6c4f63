/** What is wrong with a sheet or a request: where, what stands there, what would be right, and the mend. */
import type { VNode } from 'preact'
import type { Problem } from '../../index.ts'

export interface ProblemsProps {
  readonly problems: readonly Problem[]
  /** Shows where a problem is, when its place is pressed. */
  readonly onPlace?: (problem: Problem) => void
}

export function Problems({ problems, onPlace }: ProblemsProps): VNode | null {
  if (problems.length === 0) return null
  return (
    <ol class="problems">
      {problems.map((problem, at) => (
        <li key={`${problem.code} ${at}`} class={`problem ${problem.severity}`}>
          <OneProblem problem={problem} onPlace={onPlace} />
        </li>
      ))}
    </ol>
  )
}

interface OneProps {
  readonly problem: Problem
  readonly onPlace: ((problem: Problem) => void) | undefined
}

function OneProblem({ problem, onPlace }: OneProps): VNode {
  const { place, severity, code, found, expected, mend, excerpt } = problem
  const where = place === undefined ? '' : `${place.file}, line ${place.line}, column ${place.column}`
  return (
    <>
      <p class="problem-head">
        <strong>{severity === 'warning' ? 'Warning' : 'Problem'}</strong>
        {where === '' ? null : ' at '}
        {where === '' ? null : onPlace === undefined ? (
          where
        ) : (
          <button type="button" class="link" onClick={() => onPlace(problem)}>
            {where}
          </button>
        )}{' '}
        <span class="code">{code}</span>
      </p>
      <dl class="evidence">
        <div>
          <dt>Found</dt>
          <dd>{found}</dd>
        </div>
        <div>
          <dt>Expected</dt>
          <dd>{expected}</dd>
        </div>
        {mend === undefined ? null : (
          <div class="mend">
            <dt>Mend</dt>
            <dd>{mend}</dd>
          </div>
        )}
      </dl>
      {place === undefined || excerpt === undefined || excerpt.trim() === '' ? null : (
        <Excerpt text={excerpt} from={place.column - 1} length={place.length} />
      )}
    </>
  )
}

function Excerpt({
  text,
  from,
  length,
}: {
  readonly text: string
  readonly from: number
  readonly length: number
}): VNode {
  const start = Math.max(0, Math.min(from, text.length))
  const end = start + Math.max(1, length)
  return (
    <pre class="excerpt">
      {text.slice(0, start)}
      <mark>{text.slice(start, end) === '' ? ' ' : text.slice(start, end)}</mark>
      {text.slice(end)}
    </pre>
  )
}
