/**
 * Small parts of which the views are made. Their styles stand in look/{kit,verdicts,notices}.css.
 *
 * - `Button` says, onPress; pressed, disabledBecause (stays reachable, the reason shows), sort, label, keys
 * - `Choice` says, options, chosen, onChoose: one of a few, all in sight
 * - `Field` says, value, onInput; hint, error, onEnter
 * - `StateMark` state: shape and word; `VerdictLine`, `VerdictDetails`, `VerdictItem` (opens) verdict
 * - `Problems` problems; onPlace · `Cautions` about? · `Notice` sort, title, urgent · `Busy` tells
 * - `FigureRow` and `FigureTable` figures · `Picture` mark · `Bar` share, mark, state · `Dialog` title, onClose: open while shown
 * - `announce(text)`: says it in the page's one live region
 */
export { announce, LiveRegion } from './announce.tsx'
export { Bar, type BarProps } from './bar.tsx'
export { Button, type ButtonProps } from './button.tsx'
export { Cautions, type CautionsProps } from './cautions.tsx'
export { Choice, type ChoiceProps } from './choice.tsx'
export { Dialog, type DialogProps } from './dialog.tsx'
export { Field, type FieldProps } from './field.tsx'
export { FigureRow, type FigureRowProps, FigureTable, type FigureTableProps } from './figures.tsx'
export { Busy, type BusyProps, Notice, type NoticeProps } from './notice.tsx'
export { Picture } from './picture.tsx'
export { Problems, type ProblemsProps } from './problems.tsx'
export { StateMark, type StateMarkProps } from './state-mark.tsx'
export {
  marginText,
  VerdictDetails,
  type VerdictDetailsProps,
  VerdictItem,
  VerdictLine,
  type VerdictProps,
} from './verdict.tsx'
