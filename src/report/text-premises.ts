/** Premises on one page: who stands where, who rings and how much, what fails, and what to move. */
import type { CheckAnswer } from '../answer/answer.ts'
import type { Stands } from '../answer/stands.ts'
import { placesText } from './about-place.ts'
import { equalLines } from './equal-bells.ts'
import { grouped } from './groups.ts'
import { caution, heading } from './heading.ts'
import type { Page } from './paint.ts'
import { numberingTable } from './plug-text.ts'
import { premisesFails, premisesFaults } from './premises-fails.ts'
import { lineTable } from './premises-line.ts'
import { mendLines } from './premises-mends.ts'
import { setTable } from './premises-sets.ts'
import { opinionText } from './text-opinion.ts'
import { reasonsOf } from './text-verdict.ts'
import { approximations, countsLine, unknownLines } from './text-verdicts.ts'
import { counted } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** What the page is about. */
export function premisesHead({ line, sockets, sets }: Stands, page: Page): string[] {
  const kinds = [...new Set(sockets.map(({ is }) => is))].map((kind) => {
    const count = sockets.filter(({ is }) => is === kind).length
    return `${count} ${kind}`
  })
  const on = line === null ? 'on no line' : `on the line ${line}`
  const mirrored = sockets.filter((one) => one.mirrored).map(({ socket }) => socket)
  return [
    ...wrap(`${counted(sets.length, 'set')} ${on}; sockets: ${kinds.join(', ')}`, page.width),
    ...(mirrored.length === 0
      ? []
      : hanging('', `Made up by the mirrored numbering: ${mirrored.join(', ')}`, page.width)),
    '',
  ]
}

/** The page, its counts on the last line. */
export function premisesText(answer: CheckAnswer, stands: Stands, page: Page): string[] {
  const { verdicts, faults, counts } = answer
  const places = stands.sets.map(({ place }) => place)
  const shown = verdicts.filter(({ state }) => state === 'fails' || state === 'marginal')
  const rings = answer.figures.filter(({ id }) => id === 'ringing.current')
  const reasons = [
    ...shown.flatMap(reasonsOf),
    ...rings.flatMap(({ approximate }) => (approximate === undefined ? [] : [approximate])),
  ]
  return [
    ...heading(answer, page),
    ...premisesHead(stands, page),
    ...setTable(answer, stands, page),
    ...equalLines(answer['equal bells'], page),
    '',
    ...premisesFaults(faults, places, page),
    ...lineTable(verdicts, places, page),
    ...mendLines(verdicts, faults, places, page),
    ...premisesFails(verdicts, faults, places, page),
    ...unknownLines(verdicts, page, places.length),
    ...holdLines(answer, places, page),
    ...numberingTable(page),
    '',
    ...approximations(reasons, page),
    ...opinionText(answer['second opinion'], undefined, page),
    ...caution(page),
    countsLine(counts, page),
  ]
}

/** How many hold, and the remarks on them, equal ones once. */
function holdLines({ verdicts }: CheckAnswer, places: readonly string[], page: Page): string[] {
  const all = verdicts.filter((one) => one.state === 'holds')
  if (all.length === 0) return []
  const remarked = all.filter(({ remark }) => remark !== undefined)
  const groups = grouped(remarked, places, ({ check, remark = '' }) => `${check}\n${remark}`)
  const says = `${counted(all.length, 'check')}; \`--whole\` names them and gives all figures`
  const [title = '', ...rest] = hanging('HOLDS  ', says, page.width)
  return [
    page.paint.good('HOLDS') + title.slice('HOLDS'.length),
    ...rest,
    ...groups.flatMap(({ first, places: at }) =>
      hanging(
        '  remark  ',
        `${[first.check, placesText(at, places)].filter((one) => one !== '').join(', ')}: ${first.remark}`,
        page.width,
      ),
    ),
    '',
  ]
}

/** Whether an answer is about premises as a whole. */
export function isOfPremises({ request, stands }: CheckAnswer): boolean {
  return stands !== undefined && stands.premises !== null && request.check === stands.premises
}
