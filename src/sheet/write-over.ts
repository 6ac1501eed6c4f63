/** An old text made to say something new: only what changes is written anew. */
import { isMap, isSeq, type Node, type Pair, parseDocument, type YAMLMap } from 'yaml'
import type { Plain } from './written.ts'

/** A stretch of the old text and what comes in its place. */
interface Edit {
  readonly from: number
  readonly to: number
  readonly text: string
}

/**
 * A text whose top keys say this. Keys that it has are changed where they stand, of lists only the items that differ;
 * a key that it lacks comes behind the last of those before it.
 *
 * @param keyText one key and its value as lines
 * @param gone keys that it shall say no more
 * @returns undefined where the text is no map of keys that can be followed; whoever asks must see whether it came out right
 */
export function mended(
  text: string,
  keys: Readonly<Record<string, Plain>>,
  keyText: (key: string, value: Plain) => string,
  gone: readonly string[] = [],
): string | undefined {
  const document = parseDocument(text, { strict: false })
  const root = document.contents
  if (document.errors.length > 0 || !isMap(root) || root.flow === true) return undefined
  const edits: Edit[] = []
  let behind = 0
  for (const [key, value] of Object.entries(keys)) {
    const pair = pairOf(root, key)
    if (pair === undefined) {
      edits.push({ from: behind, to: behind, text: `${keyText(key, value)}\n` })
      continue
    }
    const [, end] = stretchOf(text, pair)
    behind = lineEnd(text, end)
    const edit = isSame(pair.value, value) ? undefined : editOf(text, pair, key, value, keyText)
    if (edit !== undefined) edits.push(edit)
  }
  for (const key of gone) {
    const pair = pairOf(root, key)
    if (pair === undefined) continue
    const [start, end] = stretchOf(text, pair)
    edits.push({ from: lineStart(text, start), to: lineEnd(text, end), text: '' })
  }
  return withEdits(text, edits)
}

/** Lines end as those of the old text do. */
function withEdits(text: string, edits: readonly Edit[]): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n'
  // of two at one place the later asked for stands behind
  const inOrder = edits.toSorted((a, b) => a.from - b.from)
  return inOrder.reduceRight((all, { from, to, text: fresh }) => {
    // a last line without its end gets one before something comes behind it
    const gap = from > 0 && from === to && all[from - 1] !== '\n' ? eol : ''
    return `${all.slice(0, from)}${gap}${fresh.replaceAll('\n', eol)}${all.slice(to)}`
  }, text)
}

type Entry = Pair<Node, Node | null>

function pairOf(root: YAMLMap, key: string): Entry | undefined {
  return (root.items as Entry[]).find(({ key: one }) => String(one) === key)
}

/** Where a key and its value stand, without a comment behind them. */
function stretchOf(text: string, { key, value }: Entry): readonly [number, number] {
  const start = key.range?.[0] ?? 0
  const end = value?.range?.[1] ?? key.range?.[1] ?? start
  // a block ends where its last line does
  return [start, text.slice(start, end).trimEnd().length + start]
}

/** Behind the end of the line in which a place is. */
function lineEnd(text: string, at: number): number {
  const found = text.indexOf('\n', at)
  return found === -1 ? text.length : found + 1
}

function lineStart(text: string, at: number): number {
  return text.lastIndexOf('\n', at - 1) + 1
}

function isSame(node: Node | null, value: Plain): boolean {
  return node !== null && JSON.stringify(plain(node)) === JSON.stringify(value)
}

/** What a node holds; of `true` and of `yes` the same. */
function plain(node: Node): unknown {
  return JSON.parse(JSON.stringify(node), (_, one) => (typeof one === 'boolean' ? (one ? 'yes' : 'no') : one))
}

function editOf(
  text: string,
  pair: Entry,
  key: string,
  value: Plain,
  keyText: (key: string, value: Plain) => string,
): Edit {
  const [from, to] = stretchOf(text, pair)
  const whole = { from, to, text: keyText(key, value) }
  const list = pair.value
  if (!Array.isArray(value) || value.length === 0 || !isSeq(list) || list.flow === true) return whole
  const items = list.items as Node[]
  const most = Math.min(items.length, value.length)
  let first = 0
  while (first < most && isSame(items[first] ?? null, value[first])) first += 1
  let last = 0
  while (last < most - first && isSame(items.at(-1 - last) ?? null, value.at(-1 - last))) last += 1
  const dash = lineStart(text, list.range?.[0] ?? 0)
  const indent = /^[ \t]*/.exec(text.slice(dash))?.[0] ?? ''
  const lineOf = (k: number): number => startOf(text, items, k, to)
  const fresh = value.slice(first, value.length - last)
  const lines = fresh.length === 0 ? '' : `${indented(keyText(key, fresh), indent)}\n`
  return { from: lineOf(first), to: lineOf(items.length - last), text: lines }
}

/** Where the lines of an item begin, those of a comment before it among them; behind the last one, where the list ends. */
function startOf(text: string, items: readonly Node[], k: number, end: number): number {
  const node = items[k]
  if (node === undefined) return lineEnd(text, end)
  if (k === 0) return lineStart(text, node.range?.[0] ?? 0)
  const before = items[k - 1]?.range
  return lineEnd(text, text.slice(0, before?.[1] ?? 0).trimEnd().length)
}

/** The items of a list as its key shows them, moved to another column. */
function indented(shown: string, indent: string): string {
  const [, ...lines] = shown.split('\n')
  const own = /^ */.exec(lines[0] ?? '')?.[0] ?? ''
  return lines.map((line) => (line === '' ? line : `${indent}${line.slice(own.length)}`)).join('\n')
}
