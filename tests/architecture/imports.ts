import { isNode, lineOf, literalText, nodes, parseSource, type SyntaxNode } from './syntax.ts'

/** One import of a file, of whatever form. */
export interface Import {
  readonly line: number
  /** What stands between the quotes; undefined when it is computed and nobody can tell. */
  readonly target: string | undefined
  /** True when only types are taken. */
  readonly typeOnly: boolean
  /** True when it is loaded at run time, by `import(…)`. */
  readonly late: boolean
}

const STATIC = ['ImportDeclaration', 'ExportNamedDeclaration', 'ExportAllDeclaration']

/** A statement takes only types when it says so as a whole or before each of its names. */
function takesOnlyTypes(node: SyntaxNode): boolean {
  if (node.importKind === 'type' || node.exportKind === 'type') return true
  const names = (node.specifiers ?? []) as SyntaxNode[]
  return names.length > 0 && names.every((name) => name.importKind === 'type' || name.exportKind === 'type')
}

function importOf(node: SyntaxNode): Omit<Import, 'line' | 'late'> | undefined {
  if (STATIC.includes(node.type) && isNode(node.source)) {
    return { target: literalText(node.source), typeOnly: takesOnlyTypes(node) }
  }
  if (node.type === 'ImportExpression') return { target: literalText(node.source), typeOnly: false }
  if (node.type === 'TSImportType') return { target: literalText(node.source), typeOnly: true }
  if (node.type === 'TSExternalModuleReference')
    return { target: literalText(node.expression), typeOnly: false }
  if (node.type === 'TSModuleDeclaration' && literalText(node.id) !== undefined) {
    return { target: literalText(node.id), typeOnly: true }
  }
  return undefined
}

/** All imports of one source: static, dynamic, re-exported, of types, of modules that are widened. */
export function importsOf(file: string, source: string): Import[] {
  const found: Import[] = []
  for (const node of nodes(parseSource(file, source))) {
    const taken = importOf(node)
    if (taken)
      found.push({ line: lineOf(source, node.start), late: node.type === 'ImportExpression', ...taken })
  }
  return found
}
