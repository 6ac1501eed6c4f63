/** A fault by its name: what is wrong at the bench, where, what follows from it, and what mends it. */
import type { CheckContext } from '../checks/context.ts'
import type { Consequence, Verdict } from '../checks/rule.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Move } from '../sheet/model.ts'

/** What was recognised. */
export interface NamedFault {
  /** Its id: `core-on-dead-terminal`. */
  readonly fault: string
  /** What people at the bench call it: `a core on a dead terminal`. */
  readonly title: string
  /** Place, core, part or terminal that it is about, as verdicts name them. */
  readonly subject: string
  /** The condition in which it shows. */
  readonly condition: Condition
  /** What was found and what follows from it, in a sentence or two. */
  readonly says: string
  /** Ids of terminals and joints, in order. */
  readonly path: readonly string[]
  /** Figures as they are, and as they come out with the mend, which was tried. */
  readonly consequences: readonly Consequence[]
  readonly mend: string
  /** The same mend as moves in the set that the path lies in, where moves are all of it; they were tried. */
  readonly moves?: readonly Move[]
  /** Checks that do not plainly hold and that it explains. */
  readonly explains: readonly string[]
}

/** What a rule says of what it recognised; its name comes from the rule. */
export type Finding = Omit<NamedFault, 'fault' | 'title' | 'explains'> & {
  /** Checks that the mend was found to bring right, where a rule has tried all of them; else those of the rule that fail. */
  readonly explains?: readonly string[]
}

/** How a fault is recognised. */
export interface FaultRule {
  readonly id: string
  readonly title: string
  /** Checks in which it may show. */
  readonly explains: readonly string[]
  /** Asked once of all that stands on the line, not of every set. */
  readonly once?: true
  /** Ids of faults, earlier in the catalogue, that say the same more exactly: where paths meet, they stand alone. */
  readonly yieldsTo?: readonly string[]
  /** Asked only where nothing else was named in the place. */
  readonly lastResort?: true
  /**
   * `verdicts` are those of this place (of all places for a rule that is asked once); `told` are the ids on the paths of
   * faults that were named before.
   */
  find(context: CheckContext, verdicts: readonly Verdict[], told: ReadonlySet<string>): readonly Finding[]
}

/** The verdicts of a check that fail. */
export function failing(verdicts: readonly Verdict[], ...checks: readonly string[]): readonly Verdict[] {
  return verdicts.filter(({ check, state }) => state === 'fails' && checks.includes(check))
}
