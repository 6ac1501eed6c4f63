/** Figures in rows: what, of whom, how much. */
import type { VNode } from 'preact'
import { type Figure, figureName, figureText, subjectText } from '../../index.ts'

export interface FigureRowProps {
  readonly figure: Figure
  readonly place?: string | undefined
  /** Bells that get nothing: their share is no figure. */
  readonly silent?: ReadonlySet<string>
}

/** A row of a table. */
export function FigureRow({ figure, place, silent }: FigureRowProps): VNode {
  return (
    <tr>
      <th scope="row">{figureName(figure)}</th>
      <td>{subjectText(figure.subject, place)}</td>
      <td class="amount" title={figure.approximate}>
        {figureText(figure, silent)}
      </td>
    </tr>
  )
}

export interface FigureTableProps {
  readonly says: string
  readonly figures: readonly Figure[]
  readonly place?: string | undefined
}

/** A table of figures with its caption. */
export function FigureTable({ says, figures, place }: FigureTableProps): VNode {
  return (
    <div class="wide">
      <table>
        <caption>{says}</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">Of</th>
            <th scope="col" class="amount">
              Amount
            </th>
          </tr>
        </thead>
        <tbody>
          {figures.map((figure, at) => (
            <FigureRow key={`${figure.id} ${figure.subject} ${at}`} figure={figure} place={place} />
          ))}
        </tbody>
      </table>
    </div>
  )
}
