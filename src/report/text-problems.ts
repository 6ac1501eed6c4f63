/** Problems as text: the only place where their sentences are made. */
import type { Problem } from '../problem.ts'
import type { Page } from './paint.ts'
import { columns, hanging, wrap } from './wrap.ts'

/** Invisible characters could steer a terminal. */
const shown = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (one) => (one === '\t' ? ' ' : '·'))

/** The line of the sheet, cut around the place, with the place underlined. */
function excerptLines({ place, excerpt }: Problem, page: Page): string[] {
  if (place === undefined || excerpt === undefined || excerpt.trim() === '') return []
  const gutter = `${String(place.line).padStart(4)} | `
  const room = page.width - gutter.length
  const start = Math.max(0, Math.min(place.column - 1, excerpt.length))
  const before = Array.from(shown(excerpt.slice(0, start)))
  const marked = Array.from(shown(excerpt.slice(start, start + Math.max(1, place.length))))
  const all = Array.from(shown(excerpt.trimEnd()))
  // the beginning stays in sight while the place fits behind it
  const from = before.length + Math.min(marked.length, 20) <= room ? 0 : Math.max(0, before.length - 20)
  const cut = all.slice(from, from + room)
  const at = before.length - from
  const carets = '^'.repeat(Math.max(1, Math.min(marked.length, room - at)))
  const blank = ' '.repeat(gutter.length - 2)
  return [
    page.paint.dim(gutter) + cut.join(''),
    `${page.paint.dim(`${blank}| `)}${' '.repeat(at)}${page.paint.bad(carets)}`,
  ]
}

/** `file:line:column: found …, expected … [code]`, the excerpt underlined, and the mend. */
export function problemLines(problem: Problem, page: Page): string[] {
  const { place, severity, code, found, expected, mend } = problem
  const where = place === undefined ? '' : `${shown(place.file)}:${place.line}:${place.column}: `
  const warning = severity === 'warning' ? 'warning: ' : ''
  const says = `${where}${warning}found ${shown(found)}, expected ${shown(expected)} [${code}]`
  const [first = '', ...rest] = wrap(says, page.width - 2)
  const bold = where.trimEnd()
  return [
    columns(bold) <= columns(first) ? page.paint.bold(bold) + first.slice(bold.length) : first,
    ...rest.map((line) => `  ${line}`),
    ...excerptLines(problem, page),
    ...(mend === undefined ? [] : hanging('  mend: ', shown(mend), page.width)),
  ]
}

/** All problems, an empty line between two, and how many on the last line. Ends with a line break. */
export function problemsText(problems: readonly Problem[], page: Page): string {
  if (problems.length === 0) return ''
  const blocks = problems.map((problem) => problemLines(problem, page).join('\n'))
  const errors = problems.filter(({ severity }) => severity === 'error').length
  const warnings = problems.length - errors
  const counts = [errors > 0 ? `${errors} ${errors === 1 ? 'problem' : 'problems'}` : '']
  if (warnings > 0) counts.push(`${warnings} ${warnings === 1 ? 'warning' : 'warnings'}`)
  return `${blocks.join('\n\n')}\n\n${counts.filter((one) => one !== '').join(', ')}\n`
}
