import type { Sources } from './sources.ts'
import { lineOf, nodes, parseSource, type SyntaxNode } from './syntax.ts'

/** Where the demo sheets may be named, and which: the demo itself all, the default premises alone. */
const ALLOWED: readonly { readonly places: RegExp; readonly names: readonly string[] | 'all' }[] = [
  { places: /^cli\/demo\.ts$/, names: 'all' },
  { places: /^answer\//, names: ['workshop'] },
  { places: /^web\/lesson\//, names: 'all' },
]

/** All pieces of text that a node spells out. */
function texts(node: SyntaxNode): string[] {
  if (node.type === 'Literal' && typeof node.value === 'string') return [node.value]
  if (node.type === 'TemplateElement') return [(node.value as { cooked: string }).cooked]
  return []
}

/** Every string outside the allowed places that names one of the demo sheets, as a whole word. */
export function demoNameViolations(sources: Sources, sheets: readonly string[]): string[] {
  const found: string[] = []
  const names = sheets.map((name) => ({ name, pattern: new RegExp(`(?<![\\w-])${name}(?![\\w-])`, 'i') }))
  for (const [path, source] of sources) {
    const allowed = ALLOWED.find(({ places }) => places.test(path))?.names ?? []
    if (allowed === 'all') continue
    for (const node of nodes(parseSource(path, source))) {
      for (const text of texts(node)) {
        for (const { name, pattern } of names) {
          if (allowed.includes(name) || !pattern.test(text)) continue
          found.push(`${path}:${lineOf(source, node.start)} names the demo sheet ${name}`)
        }
      }
    }
  }
  return found
}
