/** Prose broken into lines of at most so many columns; ends with a line break. */
export function prose(text: string, width: number): string {
  const lines: string[] = []
  for (const word of text.trim().split(/\s+/)) {
    const last = lines.at(-1)
    if (last === undefined || last.length + 1 + word.length > width) lines.push(word)
    else lines[lines.length - 1] = `${last} ${word}`
  }
  return `${lines.join('\n')}\n`
}
