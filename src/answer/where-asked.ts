import type { Where } from './standing.ts'

/** Where the subject stands, as requests repeat it. */
export function whereAsked({ on, onText, at, in: socket }: Omit<Where, 'target'>): Record<string, string> {
  const ground = onText?.file ?? on
  return {
    ...(ground === undefined ? {} : { on: ground }),
    ...(at === undefined ? {} : { at }),
    ...(socket === undefined ? {} : { in: socket }),
  }
}
