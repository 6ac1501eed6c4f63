/** A shelf of texts that are at hand already, for where there are no folders. */
import type { SheetKind } from './model.ts'
import { presentedBy } from './presented.ts'
import type { SheetText, Shelf } from './shelf.ts'

interface Standing {
  readonly kind: string
  readonly name: string
  readonly text: SheetText
}

/**
 * A shelf of one’s own texts and of the packaged ones. One’s own come first; of two of one kind and name that are
 * equally near the first by file name counts. A text that says neither kind nor name in its first lines cannot be
 * found. All texts are looked at once: make a new shelf to see others.
 */
export function textShelf(texts: readonly SheetText[], packaged: readonly SheetText[]): Shelf {
  const tiers = [texts, packaged].map(byKindAndName)
  const nearest = (kind: SheetKind, name: string): readonly Standing[] => {
    const key = keyOf(kind, name)
    return tiers.map((tier) => tier.get(key)).find((found) => found !== undefined) ?? []
  }
  return {
    find: (kind, name) => nearest(kind, name)[0]?.text,
    twins: (kind, name) => nearest(kind, name).map(({ text }) => text.file),
    names(kind) {
      const all = tiers.flatMap((tier) => [...tier.values()].flat())
      return [...new Set(all.filter((one) => one.kind === kind).map(({ name }) => name))].sort()
    },
  }
}

const keyOf = (kind: string, name: string): string => `${kind}/${name}`

function byKindAndName(texts: readonly SheetText[]): ReadonlyMap<string, readonly Standing[]> {
  const all = new Map<string, Standing[]>()
  for (const text of texts) {
    const head = presentedBy(text.text)
    if (head === undefined) continue
    const key = keyOf(head.kind, head.name)
    all.set(key, [...(all.get(key) ?? []), { ...head, text }])
  }
  for (const some of all.values()) some.sort((p, q) => byFile(p.text.file, q.text.file))
  return all
}

/** By the file’s own name, then by its folder, as a shelf of folders does. */
function byFile(p: string, q: string): number {
  const [a, b] = [ownName(p), ownName(q)]
  if (a !== b) return a < b ? -1 : 1
  return p < q ? -1 : 1
}

function ownName(file: string): string {
  return file.slice(file.lastIndexOf('/') + 1)
}
