/** Terminals that were found though no known set has them: a slip, more likely than a new set. */
import { hasTerminal } from './columns.ts'
import type { Finding } from './evidence.ts'
import type { KnownSet } from './known.ts'

/** Terminals of readings, and of straps that were seen, that no known set has; each once, in the order of the findings. */
export function strayTerminals(findings: readonly Finding[], known: readonly KnownSet[]): readonly string[] {
  const found = new Set(findings.flatMap(terminalsOf))
  return [...found].filter((terminal) => !known.some((one) => hasTerminal(one, terminal)))
}

/** Terminals that a finding says are there. */
function terminalsOf(finding: Finding): readonly string[] {
  if (finding.found === 'reading') return [finding.pair.red, finding.pair.black]
  if (finding.found === 'absent') return []
  const { sort, id, answers } = finding.sighting
  if (sort !== 'strap' || answers[finding.answer] !== 'yes') return []
  return id.slice(id.indexOf('.') + 1).split('-')
}
