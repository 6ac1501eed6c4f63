/**
 * A picture before it is text: a tree of SVG elements as plain data. Whoever shows it writes it as text or hands
 * it to a view library; both show the same. Attributes and classes only, never `style`, which a strict content
 * security policy forbids.
 */

/** One element. Attributes whose value is undefined are left out. */
export interface Mark {
  readonly tag: string
  readonly attributes: Readonly<Record<string, string | number | undefined>>
  readonly children: readonly (Mark | string)[]
}

/** Makes an element. */
export function mark(
  tag: string,
  attributes: Mark['attributes'] = {},
  ...children: readonly (Mark | string)[]
): Mark {
  return { tag, attributes, children }
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** What XML 1.0 cannot hold at all, even escaped (clause 2.2). */
const NO_CHARACTER = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu

function escaped(text: string): string {
  return text.replace(NO_CHARACTER, '\uFFFD').replace(/[&<>"]/g, (found) => ESCAPES[found] ?? found)
}

/** The tree as text, one element after the other, nothing between them. */
export function markText({ tag, attributes, children }: Mark): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('')
  if (children.length === 0) return `<${tag}${written}/>`
  const inner = children.map((child) => (typeof child === 'string' ? escaped(child) : markText(child)))
  return `<${tag}${written}>${inner.join('')}</${tag}>`
}
