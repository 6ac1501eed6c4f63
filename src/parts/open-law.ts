import type { LawSink } from './kind.ts'

/** The law of a branch through which nothing flows: i = 0. For parts with one branch, an equation. */
export function openLaw(sink: LawSink): void {
  sink.equation(0, 0, 1, 0)
}
