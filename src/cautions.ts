/** What whoever may come near live wires is told: said once, here, and used wherever a hand is led to a line. */

/** One caution, a sentence without its full stop. */
export interface Caution {
  readonly about: 'opening' | 'ringing' | 'burst' | 'line-side' | 'codes'
  readonly says: string
}

/** All of them, in the order in which they are said. Common practice, no source, but for the line side: from memory. */
export const CAUTIONS: readonly Caution[] = Object.freeze([
  { about: 'opening', says: 'Unplug the set before you open it or move a lead' },
  { about: 'ringing', says: 'Ringing voltage can hurt' },
  { about: 'burst', says: 'A ringing burst can come at any moment' },
  { about: 'line-side', says: 'The line side of the master socket is not yours' },
  { about: 'codes', says: 'Local codes and licensed practice come first' },
])

/** Some cautions as one text: those named, in their own order; all when none is named. */
export function cautionText(...about: readonly Caution['about'][]): string {
  const meant = CAUTIONS.filter((one) => about.length === 0 || about.includes(one.about))
  return meant.map(({ says }) => `${says}.`).join(' ')
}
