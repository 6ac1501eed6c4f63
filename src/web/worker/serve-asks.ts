/** The worker's side of the talk: asks in, answers, problems or a plain word about what broke out. */
import { ProblemError } from '../../index.ts'
import type { Came, Sent } from '../talk/protocol.ts'

/** What a dedicated worker offers, as far as it is used. */
interface Scope {
  postMessage(message: Came): void
  addEventListener(type: 'message', listener: (event: { readonly data: Sent }) => void): void
}

/** One function an ask; `tells` says how far long work is. */
export type Answers<Talk extends { [What in keyof Talk]: [ask: unknown, answer: unknown] }> = {
  readonly [What in keyof Talk]: (
    ask: Talk[What][0],
    tells: (text: string) => void,
  ) => Talk[What][1] | Promise<Talk[What][1]>
}

/** Answers every ask, in the order in which they come. */
export function serveAsks<Talk extends { [What in keyof Talk]: [ask: unknown, answer: unknown] }>(
  answers: Answers<Talk>,
): void {
  const scope = globalThis as unknown as Scope
  scope.addEventListener('message', ({ data: { id, what, ask } }) => {
    void answered(answers, what, ask, (tells) => scope.postMessage({ id, tells }))
      .then((came) => scope.postMessage({ id, ...came }))
      // what cannot be sent is answered too: nobody waits for ever
      .catch((thrown: unknown) => scope.postMessage({ id, broke: wordOf(thrown) }))
  })
}

/** One ask answered, as it goes back. */
export async function answered<Talk extends { [What in keyof Talk]: [ask: unknown, answer: unknown] }>(
  answers: Answers<Talk>,
  what: string,
  ask: unknown,
  tells: (text: string) => void,
): Promise<{ answer: unknown } | { problems: ProblemError['problems'] } | { broke: string }> {
  if (!Object.hasOwn(answers, what)) return { broke: `nothing here answers ${JSON.stringify(what)}` }
  try {
    return { answer: await answers[what as keyof Talk](ask as never, tells) }
  } catch (thrown) {
    if (thrown instanceof ProblemError) return { problems: thrown.problems }
    return { broke: wordOf(thrown) }
  }
}

function wordOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown)
}
