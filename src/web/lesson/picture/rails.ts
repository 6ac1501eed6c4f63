/** The exchange, and the names of the three wires that run down from it. */
import { type Mark, mark } from '../../../index.ts'
import type { House } from '../rig/house.ts'
import { A, B, EXCHANGE, MASTER_HEAD, T } from './lay.ts'
import { words } from './symbols.ts'

export function rails({ turned }: House): readonly Mark[] {
  const top = EXCHANGE
  return [
    mark('circle', { cx: T, cy: top, r: 22, class: 'lesson-body' }),
    mark('path', { d: `M${T - 12} ${top}q6 -14 12 0t12 0`, class: 'lesson-sound' }),
    words(B + 16, top + 5, 'exchange', 'name'),
    words(A - 20, MASTER_HEAD - 34, 'a', 'wire-name'),
    words(B + 12, MASTER_HEAD - 34, 'b', 'wire-name'),
    ...(turned === true ? [words(T, MASTER_HEAD - 48, 'reversed', 'middle')] : []),
    words(T + 9, MASTER_HEAD + 18, 'third', 'wire-name'),
  ]
}
