import { parseSync } from 'vite'

/** A node of a syntax tree: its type word, where it begins, and whatever else that type carries. */
export interface SyntaxNode {
  readonly type: string
  readonly start: number
  readonly [key: string]: unknown
}

export function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && typeof (value as SyntaxNode).type === 'string'
}

/** Reads one TypeScript source. Throws with the file's name when it cannot be read. */
export function parseSource(file: string, source: string): SyntaxNode {
  const { program, errors } = parseSync(file, source)
  const [first] = errors
  if (first) throw new Error(`${file}: ${first.message}`)
  return program as unknown as SyntaxNode
}

/** Every node below `root`, itself first, in the order of the text. */
export function* nodes(root: unknown): Generator<SyntaxNode> {
  if (Array.isArray(root)) for (const item of root) yield* nodes(item)
  else if (isNode(root)) {
    yield root
    for (const value of Object.values(root)) if (typeof value === 'object') yield* nodes(value)
  }
}

/** The line of an offset, from 1. */
export function lineOf(source: string, offset: number): number {
  return source.slice(0, offset).split('\n').length
}

/** The text of a string literal, or of a template without holes; undefined for any other node. */
export function literalText(node: unknown): string | undefined {
  if (!isNode(node)) return undefined
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value
  if (node.type === 'TemplateLiteral') {
    const quasis = node.quasis as { value: { cooked: string } }[]
    return quasis.length === 1 ? quasis[0]?.value.cooked : undefined
  }
  return undefined
}
