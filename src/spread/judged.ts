/** Verdicts with the plans of their figures, and the same checks asked of a netlist with other values. */
import type { CheckContext, Rule } from '../checks/context.ts'
import type { Verdict, VerdictLimit } from '../checks/rule.ts'
import type { Figure, FigurePlan } from '../figures/figure.ts'
import { freshSupplier, readFigure, type Supplier } from '../figures/read.ts'
import { type Netlist, placeOf } from '../netlist/netlist.ts'

/** A verdict that compares a figure with a limit. */
export interface Judged {
  readonly context: CheckContext
  readonly rule: Rule
  readonly verdict: Verdict & { readonly figure: Figure; readonly limit: VerdictLimit }
  readonly plan: FigurePlan
}

/** The same places in a netlist of the same wiring with other values; they share what is solved. */
export function contextsIn(
  contexts: readonly CheckContext[],
  net: Netlist,
  supplier: Supplier = freshSupplier(net),
): readonly CheckContext[] {
  return contexts.map((context) => ({
    ...context,
    net,
    place: placeOf(net, context.place.place),
    figure: (plan) => readFigure(net, plan, supplier),
  }))
}

/** Verdicts that can be followed, and those that compare no figure with a limit and so have nothing that could spread. */
export interface AllJudged {
  readonly followed: readonly Judged[]
  readonly left: readonly Verdict[]
}

/** Runs the checks on every place. */
export function judgedIn(contexts: readonly CheckContext[], rules: readonly Rule[]): AllJudged {
  const left: Verdict[] = []
  const followed = contexts.flatMap((context, k) => {
    const plans = new Map<string, FigurePlan>()
    const heard: CheckContext = {
      ...context,
      figure(plan) {
        const figure = context.figure(plan)
        plans.set(keyOf(figure), plan)
        return figure
      },
    }
    return rules
      .filter(({ once }) => once !== true || k === 0)
      .flatMap((rule) =>
        rule.run(heard).flatMap((verdict) => {
          const one = withPlan(context, rule, verdict, plans)
          if (one === undefined) left.push(verdict)
          return one ?? []
        }),
      )
  })
  return { followed, left }
}

function withPlan(
  context: CheckContext,
  rule: Rule,
  verdict: Verdict,
  plans: ReadonlyMap<string, FigurePlan>,
): Judged | undefined {
  const { figure, limit } = verdict
  if (figure === null || figure.value === null || limit === null) return undefined
  const plan = plans.get(keyOf(figure))
  return plan && { context, rule, verdict: { ...verdict, figure, limit }, plan }
}

/** What tells figures of one run of checks apart: those that are asked with changes differ in their value. */
function keyOf({ id, subject, condition, frequency, value }: Figure): string {
  return JSON.stringify([id, subject, condition, frequency ?? null, value])
}

/** The verdict of the same check about the same subject in a netlist with other values; of several the one of that figure. */
export function askedAgain(
  { context, rule, verdict }: Judged,
  net: Netlist,
  supplier?: Supplier,
): Verdict | undefined {
  const [there] = contextsIn([context], net, supplier)
  if (there === undefined) return undefined
  const all = rule.run(there).filter(({ subject }) => subject === verdict.subject)
  return (
    all.find(({ figure }) => figure?.id === verdict.figure.id && figure.subject === verdict.figure.subject) ??
    all[0]
  )
}
