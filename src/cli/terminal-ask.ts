/** Questions to the person at the terminal, or answers out of a pipe, line by line. */
import { createInterface, type Interface } from 'node:readline'

/** Who can be asked, and what ends it: an open input would keep the process waiting. */
export interface Asker {
  /** The next line; undefined where the input has ended. */
  ask(prompt: string): Promise<string | undefined>
  close(): void
}

/** Asks on these streams; nothing is opened before the first question. */
export function askerOn(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Asker {
  let open: { readonly lines: Interface; readonly next: AsyncIterator<string> } | undefined
  return {
    async ask(prompt) {
      output.write(prompt)
      if (open === undefined) {
        const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })
        open = { lines, next: lines[Symbol.asyncIterator]() }
      }
      const { done, value } = await open.next.next()
      return done === true ? undefined : value
    },
    close: () => open?.lines.close(),
  }
}
