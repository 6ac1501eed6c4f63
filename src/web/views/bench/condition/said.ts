/** What the figures of a condition come to, in words: whether the bells ring, and whether lifting stops the ringing. */
import {
  type CircuitShown,
  type Figure,
  figureText,
  formatQuantity,
  subjectText,
  type Verdict,
} from '../../../../index.ts'

/** The greatest current that the pictures draw, A; 0 where nothing flows. */
export function heaviest({ carries, circuit: { pieces, links } }: CircuitShown): number {
  const flows = [
    ...Object.values(carries),
    ...pieces.flatMap(({ flow, ends }) => [flow, ...ends.map((end) => end.flow)]),
    ...links.map(({ flow }) => flow),
  ]
  return flows.reduce((most, flow) => Math.max(most, flow?.size ?? 0), 0)
}

/** Whether each bell rings by what it gets now: its need is the one that the check of it alone holds it to. */
export function bellWords(
  figures: readonly Figure[],
  verdicts: readonly Verdict[],
  place: string | undefined,
): readonly string[] {
  return figures
    .filter(({ id }) => id === 'ringing.current')
    .map((figure) => {
      const name = subjectText(figure.subject, place)
      const limit = verdicts.find(
        ({ check, subject }) => check === 'bell.rings-alone' && subject === figure.subject,
      )?.limit
      if (figure.value === null) return `Whether the ${name} rings is not known: ${figureText(figure)}.`
      if (limit == null)
        return `The ${name} gets ${figureText(figure)}; its sheet does not say what it needs.`
      const need = formatQuantity(limit.value, 'A', 3)
      return figure.value >= limit.value
        ? `The ${name} rings: it gets ${figureText(figure)} and needs ${need}.`
        : `The ${name} does not ring: it gets ${figureText(figure)} and needs ${need}.`
    })
}

/** What lifting the handset does while ringing arrives: the direct current, and what the line takes for an answer. */
export function answerWords(verdicts: readonly Verdict[]): readonly string[] {
  return verdicts
    .filter(({ check }) => check === 'line.answers-while-ringing')
    .map(({ figure, limit, says }) => {
      const draws =
        figure === null ? '' : ` Direct current with the handset lifted while it rings: ${figureText(figure)}`
      const trip = limit === null ? '' : `; the ringing stops from ${formatQuantity(limit.value, 'A', 3)}`
      return draws === '' ? says : `${says}${draws}${trip}.`
    })
}
