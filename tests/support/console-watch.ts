/** The methods that print. */
const PRINTING = ['debug', 'dir', 'error', 'group', 'info', 'log', 'table', 'trace', 'warn'] as const

/** A console under watch: what was printed since the last look, and the way back. */
export interface ConsoleWatch {
  /** Throws when anything was printed since the last call, even if the printer swallowed the refusal. */
  check(): void
  /** Puts the original methods back. */
  restore(): void
}

/**
 * Makes every printing method of `target` throw. A thrown error can be caught by the code that is under
 * test, so each call is remembered too and `check` throws again.
 */
export function watchConsole(target: Console): ConsoleWatch {
  const originals = PRINTING.map((name) => [name, target[name]] as const)
  let printed: string[] = []
  for (const name of PRINTING) {
    target[name] = (...words: unknown[]) => {
      const call = `console.${name}(${words.map(String).join(', ')})`
      printed.push(call)
      throw new Error(`printed during a test: ${call}`)
    }
  }
  return {
    check() {
      const calls = printed
      printed = []
      if (calls.length > 0) throw new Error(`printed during a test: ${calls.join('; ')}`)
    },
    restore() {
      for (const [name, original] of originals) target[name] = original
    },
  }
}
