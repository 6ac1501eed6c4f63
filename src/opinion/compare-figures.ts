/** Figures and verdicts of both opinions side by side. */
import type { CheckAnswer } from '../answer/answer.ts'
import type { FigureDifference } from '../answer/second-opinion.ts'
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { refuse } from '../problem.ts'

/** A figure below this is what rounding leaves of nothing, V, A or Ω. */
const NOTHING = 1e-12

/** The worst figure of each id. @throws ProblemError `ours` where one has a number and the other has none */
export function compareFigures(
  ours: readonly Figure[],
  second: readonly Figure[],
): readonly FigureDifference[] {
  const worst = new Map<string, FigureDifference>()
  ours.forEach((figure, k) => {
    const other = second[k]
    if (other?.state !== figure.state || other?.id !== figure.id) refuseOther(figure, other)
    if (figure.value === null || other.value === null) return
    const { id, subject, unit, value } = figure
    const apart = Math.abs(value - other.value)
    const relative = apart === 0 ? 0 : apart / Math.max(Math.abs(value), Math.abs(other.value), NOTHING)
    const known = worst.get(id)
    if (known !== undefined && known.relative >= relative) return
    worst.set(id, { id, subject, unit, value, second: other.value, relative })
  })
  return [...worst.values()]
}

/** The worst figure of each id, of those that verdicts rest on too. @throws ProblemError `ours` where a verdict is another */
export function compareVerdicts(ours: CheckAnswer, second: CheckAnswer): readonly FigureDifference[] {
  ours.verdicts.forEach((verdict, k) => {
    const other = second.verdicts[k]
    if (other?.state === verdict.state && other.check === verdict.check) return
    refuse({
      code: 'ours',
      found: `${verdict.check} of ${verdict.subject} that ${verdict.state} by the solver and ${other?.state ?? 'is missing'} by the second opinion`,
      expected: 'the same verdict from both',
      mend: 'the figure lies on its limit to the last digit, or the program is wrong: please report it',
    })
  })
  const read = (answer: CheckAnswer): Figure[] => [...answer.figures, ...answer.verdicts.flatMap(figuresOf)]
  return compareFigures(read(ours), read(second))
}

function figuresOf({ figure, consequences = [] }: Verdict): Figure[] {
  const all = [figure, ...consequences.flatMap((one) => [one.figure, one.mended])]
  return all.filter((one) => one !== null && one !== undefined)
}

function refuseOther(figure: Figure, other: Figure | undefined): never {
  const shown = (one: Figure | undefined): string => one?.state ?? String(one?.value ?? 'nothing')
  refuse({
    code: 'ours',
    found: `${figure.id} of ${figure.subject}: ${shown(figure)} by the solver and ${shown(other)} by the second opinion`,
    expected: 'the same from both',
    mend: 'this is a mistake of the program: please report it with the command and its sheets',
  })
}
