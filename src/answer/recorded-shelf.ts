/** What a request read from a shelf, so that it can be answered again elsewhere: in another thread, say. */
import type { SheetKind } from '../sheet/model.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'

/** Every question that a shelf was asked, with its answer: plain data. */
export interface ShelfRecord {
  readonly found: readonly (readonly [question: string, text: SheetText | null])[]
  readonly twins: readonly (readonly [question: string, files: readonly string[]])[]
  readonly names: readonly (readonly [question: string, names: readonly string[]])[]
}

/** A shelf that remembers what it was asked. */
export interface RecordedShelf {
  readonly shelf: Shelf
  /** What was asked until now. */
  record(): ShelfRecord
}

function question(kind: SheetKind, from: string | undefined, name = ''): string {
  return JSON.stringify([kind, name, from ?? null])
}

/** A shelf that answers as another one does, each question once, and remembers. */
export function recordedShelf(shelf: Shelf): RecordedShelf {
  const found = new Map<string, SheetText | null>()
  const twins = new Map<string, readonly string[]>()
  const names = new Map<string, readonly string[]>()
  return {
    shelf: {
      find: (kind, name, from) =>
        remembered(found, question(kind, from, name), () => shelf.find(kind, name, from) ?? null) ??
        undefined,
      twins: (kind, name, from) =>
        remembered(twins, question(kind, from, name), () => shelf.twins?.(kind, name, from) ?? []),
      names: (kind, from) => remembered(names, question(kind, from), () => shelf.names(kind, from)),
    },
    record: () => ({ found: [...found], twins: [...twins], names: [...names] }),
  }
}

function remembered<T>(known: Map<string, T>, key: string, ask: () => T): T {
  const before = known.get(key)
  if (before !== undefined) return before
  const answer = ask()
  known.set(key, answer)
  return answer
}

/** A shelf that answers from what was remembered, and holds nothing else. */
export function replayedShelf(record: ShelfRecord): Shelf {
  const [found, twins, names] = [new Map(record.found), new Map(record.twins), new Map(record.names)]
  return {
    find: (kind, name, from) => found.get(question(kind, from, name)) ?? undefined,
    twins: (kind, name, from) => twins.get(question(kind, from, name)) ?? [],
    names: (kind, from) => names.get(question(kind, from)) ?? [],
  }
}
