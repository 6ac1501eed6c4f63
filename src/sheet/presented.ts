/** What a sheet says of itself in its first lines, found without reading it. */

/** Kind, name and title as the head presents them; the kind may be a word that is none. */
export interface Presented {
  readonly kind: string
  readonly name: string
  readonly title?: string
}

/** A sheet presents itself within so many characters. */
const HEAD = 4096

/** What a text presents itself as; undefined where its first lines lack kind or name. */
export function presentedBy(text: string): Presented | undefined {
  const head = text.slice(0, HEAD)
  const kind = wordBehind('sheet', head)
  const name = wordBehind('name', head)
  if (kind === undefined || name === undefined) return undefined
  const title = lineBehind('title', head)
  return { kind, name, ...(title === undefined ? {} : { title }) }
}

/** The word behind a key in the first column, without quotation marks. */
function wordBehind(key: string, head: string): string | undefined {
  return new RegExp(`^\uFEFF?${key}[ \\t]*:[ \\t]+(["']?)([^\\s"'#]+)\\1[ \\t]*(?:#.*)?\\r?$`, 'm').exec(
    head,
  )?.[2]
}

/** The text behind a key in the first column where it stands in one line, without quotation marks and comment. */
function lineBehind(key: string, head: string): string | undefined {
  const line = new RegExp(`^${key}[ \\t]*:[ \\t]+(.*?)[ \\t]*\\r?$`, 'm').exec(head)?.[1]
  if (line === undefined || /^[|>&*!]/.test(line)) return undefined
  const double = /^"([^"\\]*)"(?:[ \t]+#.*)?$/.exec(line)?.[1]
  const single = /^'((?:[^']|'')*)'(?:[ \t]+#.*)?$/.exec(line)?.[1]
  const text =
    double ?? single?.replaceAll("''", "'") ?? (/^["']/.test(line) ? '' : line.replace(/[ \t]+#.*$/, ''))
  return text === '' ? undefined : text
}
