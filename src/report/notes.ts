/** What the sheets note, for whoever asks for the long form. */
import type { Stands } from '../answer/stands.ts'
import type { Page } from './paint.ts'
import { hanging } from './wrap.ts'

/** Each note behind the sheet that it stands in, ended by an empty line; nothing where no sheet has one. */
export function noteLines(stands: Stands | undefined, page: Page): string[] {
  const notes = stands?.notes ?? []
  if (notes.length === 0) return []
  return [
    page.paint.bold('Notes of the sheets'),
    ...notes.flatMap(({ sheet, name, says }) =>
      says.flatMap((one) => hanging('  ', `${sheet} ${name}: ${one}`, page.width)),
    ),
    '',
  ]
}
