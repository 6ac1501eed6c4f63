/** A small check that a text is well-formed XML: tags that match, attributes once and quoted, no stray characters. */

const NAME = /[A-Za-z_][\w:.-]*/y
const ATTRIBUTE = /\s+([A-Za-z_][\w:.-]*)="([^"<]*)"/y
const REFERENCE = /&(?!(?:amp|lt|gt|quot|apos|#\d+|#x[\da-fA-F]+);)/
const FORBIDDEN = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/u

/** What is wrong; undefined where nothing is. */
export function wellFormed(text: string): string | undefined {
  if (FORBIDDEN.test(text)) return 'a character that XML does not have'
  const source = text.replace(/^<\?xml[^?]*\?>\s*/, '').trimEnd()
  const open: string[] = []
  let at = 0

  while (at < source.length) {
    if (source[at] !== '<') {
      const end = source.indexOf('<', at)
      const words = source.slice(at, end < 0 ? undefined : end)
      if (open.length === 0) return `text outside the root: ${words.slice(0, 40)}`
      if (REFERENCE.test(words)) return `a bare ampersand in ${words.slice(0, 40)}`
      if (words.includes(']]>')) return 'the end of a CDATA section in text'
      at = end < 0 ? source.length : end
      continue
    }
    if (source[at + 1] === '/') {
      const end = source.indexOf('>', at)
      const name = source.slice(at + 2, end)
      const last = open.pop()
      if (last !== name) return `</${name}> closes <${last ?? 'nothing'}>`
      at = end + 1
      continue
    }
    NAME.lastIndex = at + 1
    const name = NAME.exec(source)?.[0]
    if (name === undefined) return `no name behind < at ${source.slice(at, at + 40)}`
    at += 1 + name.length
    const seen = new Set<string>()
    for (;;) {
      ATTRIBUTE.lastIndex = at
      const found = ATTRIBUTE.exec(source)
      if (found === null) break
      const [whole, attribute = '', value = ''] = found
      if (seen.has(attribute)) return `${attribute} twice in <${name}>`
      if (REFERENCE.test(value)) return `a bare ampersand in ${attribute}`
      seen.add(attribute)
      at += whole.length
    }
    if (source.startsWith('/>', at)) at += 2
    else if (source[at] === '>') {
      open.push(name)
      at += 1
    } else return `<${name}> is not closed at ${source.slice(at, at + 40)}`
  }
  if (open.length > 0) return `<${open.at(-1)}> stays open`
  return source === '' ? 'nothing at all' : undefined
}
