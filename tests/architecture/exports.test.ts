import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { ROOT } from './sources.ts'
import { isNode, nodes, parseSource, type SyntaxNode } from './syntax.ts'

const DOCUMENT = 'docs/library.md'

const nameOf = (node: unknown): string => (isNode(node) ? String(node.name ?? node.value) : '')

/** The names that a module hands out. Throws on `export *`: what is public is written by hand. */
function exportedNames(file: string, source: string): string[] {
  const found: string[] = []
  for (const node of nodes(parseSource(file, source))) {
    if (node.type === 'ExportAllDeclaration') throw new Error(`${file} passes everything on by export *`)
    if (node.type === 'ExportDefaultDeclaration') found.push('default')
    if (node.type !== 'ExportNamedDeclaration') continue
    found.push(...(node.specifiers as SyntaxNode[]).map((specifier) => nameOf(specifier.exported)))
    if (!isNode(node.declaration)) continue
    const { id, declarations } = node.declaration
    if (isNode(id)) found.push(nameOf(id))
    if (Array.isArray(declarations)) found.push(...declarations.map((one: SyntaxNode) => nameOf(one.id)))
  }
  return found.sort()
}

/** The names that a document lists: each in code marks, first in its list item or table row. */
function listedNames(markdown: string): string[] {
  return [...markdown.matchAll(/^\s*(?:[-*]|\|) `([A-Za-z_$][\w$]*)/gm)].map((match) => match[1] ?? '').sort()
}

describe('the public face', () => {
  test(`is listed in ${DOCUMENT}, name for name`, () => {
    expect(existsSync(`${ROOT}${DOCUMENT}`), `${DOCUMENT} lists what src/index.ts exports`).toBe(true)
    const exported = exportedNames('index.ts', readFileSync(`${ROOT}src/index.ts`, 'utf8'))
    const listed = listedNames(readFileSync(`${ROOT}${DOCUMENT}`, 'utf8'))
    expect(exported.length).toBeGreaterThan(0)
    expect([...new Set(listed)]).toEqual(exported)
  })

  test('is read off exports of every form, types included', () => {
    const text = [
      "export type { A, B as C } from './a.ts'",
      "export { d, type E } from './b.ts'",
      'export const f: number = 1',
      'export function g(): void {}',
      'export interface H {}',
    ]
    expect(exportedNames('index.ts', text.join('\n'))).toEqual(['A', 'C', 'E', 'H', 'd', 'f', 'g'])
    expect(() => exportedNames('index.ts', "export * from './a.ts'")).toThrow('export *')
  })

  test('is looked for in list items and table rows, not in running text', () => {
    const text = '`no` says\n- `yes(sheet)`: a list\n| `Too` | a row |\n* not `this`\n'
    expect(listedNames(text)).toEqual(['Too', 'yes'])
  })
})
