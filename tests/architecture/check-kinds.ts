import type { Sources } from './sources.ts'
import { isNode, lineOf, literalText, nodes, parseSource, type SyntaxNode } from './syntax.ts'

const WRAPPERS = ['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression', 'ChainExpression']
const EQUALITY = ['===', '!==', '==', '!=']
const LOOKUPS = ['get', 'has', 'includes', 'indexOf']
const KEYED = ['Map', 'Set']

/** The expression inside its type assertions, brackets and `Object.freeze`. */
function bare(node: unknown): SyntaxNode | undefined {
  if (!isNode(node)) return undefined
  if (WRAPPERS.includes(node.type) || node.type === 'ParenthesizedExpression') return bare(node.expression)
  const callee = node.type === 'CallExpression' && isNode(node.callee) ? node.callee : undefined
  if (callee?.type === 'MemberExpression' && isNode(callee.property) && callee.property.name === 'freeze') {
    return bare((node.arguments as unknown[])[0])
  }
  return node
}

/** True for `x.kind`, `x['kind']` and a plain `kind` taken out of its object before. */
function isKind(node: unknown): boolean {
  const inner = bare(node)
  if (inner?.type === 'Identifier') return inner.name === 'kind'
  if (inner?.type !== 'MemberExpression' || !isNode(inner.property)) return false
  return inner.computed ? literalText(inner.property) === 'kind' : inner.property.name === 'kind'
}

/** What the names of one file stand for, as far as one can read it off their declarations. */
type Names = ReadonlyMap<unknown, unknown>

/** True for a literal object, list, `Map` or `Set` that spells words out, directly or by its name. */
function spellsWords(node: unknown, names: Names): boolean {
  const inner = bare(node)
  if (inner?.type === 'Identifier')
    return names.has(inner.name) && spellsWords(names.get(inner.name), new Map())
  if (inner?.type === 'ObjectExpression') {
    return (inner.properties as SyntaxNode[]).some(({ type, computed }) => type === 'Property' && !computed)
  }
  if (inner?.type === 'ArrayExpression') {
    return (inner.elements as unknown[]).some((item) => {
      return literalText(item) !== undefined || spellsWords(item, new Map())
    })
  }
  if (inner?.type === 'NewExpression' && isNode(inner.callee) && KEYED.includes(String(inner.callee.name))) {
    return spellsWords((inner.arguments as unknown[])[0], names)
  }
  return false
}

function breach(node: SyntaxNode, names: Names): string | undefined {
  if (node.type === 'BinaryExpression') {
    const sides = [node.left, node.right]
    if (!sides.some(isKind)) return undefined
    if (
      EQUALITY.includes(String(node.operator)) &&
      sides.some((side) => literalText(bare(side)) !== undefined)
    ) {
      return 'compares a kind with a word'
    }
    if (node.operator === 'in' && spellsWords(node.right, names)) return 'looks a kind up among words'
  }
  if (node.type === 'SwitchStatement' && isKind(node.discriminant)) {
    const words = (node.cases as SyntaxNode[]).some(({ test }) => literalText(bare(test)) !== undefined)
    return words ? 'switches on a kind' : undefined
  }
  if (node.type === 'MemberExpression' && node.computed && isKind(node.property)) {
    return spellsWords(node.object, names) ? 'looks a kind up among words' : undefined
  }
  if (node.type === 'CallExpression' && isNode(node.callee) && node.callee.type === 'MemberExpression') {
    const { property, object } = node.callee
    const asks = isNode(property) && LOOKUPS.includes(String(property.name))
    const ofKind = isKind((node.arguments as unknown[])[0])
    return asks && ofKind && spellsWords(object, names) ? 'looks a kind up among words' : undefined
  }
  return undefined
}

/**
 * Every place outside `parts` that asks a part for its kind by a word: by `===` and the like, in a
 * `switch`, or through a table, list, map or set whose keys are spelled out in the same file. A kind
 * answers through its contract instead. Read off the syntax tree, so comments and texts don't count.
 */
export function kindViolations(sources: Sources): string[] {
  const found: string[] = []
  for (const [path, source] of sources) {
    if (path.startsWith('parts/')) continue
    const all = [...nodes(parseSource(path, source))]
    const names = new Map<unknown, unknown>()
    for (const { type, id, init } of all) {
      if (type === 'VariableDeclarator' && isNode(id)) names.set(id.name, init)
    }
    for (const node of all) {
      const asked = breach(node, names)
      if (asked) found.push(`${path}:${lineOf(source, node.start)} ${asked}`)
    }
  }
  return found
}
