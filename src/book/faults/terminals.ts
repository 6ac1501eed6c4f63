/** Terminals and their neighbours: consecutive numbers of one strip. */
import { type Ground, nodeShort } from './ground.ts'

/** A terminal's strip and number. */
function spotOf(ground: Ground, node: number): { readonly strip: string; readonly number: number } {
  const [, strip = '', number = ''] = /^([A-Z]+)([0-9]+)$/.exec(nodeShort(ground, node)) ?? []
  return { strip, number: Number(number) }
}

/** Every two terminals next to each other, in the order of the strips. */
export function neighbours(ground: Ground): readonly (readonly [number, number])[] {
  const { terminals } = ground.place
  return terminals.slice(1).flatMap((two, k) => {
    const one = terminals[k]
    if (one === undefined) return []
    const [p, q] = [spotOf(ground, one), spotOf(ground, two)]
    return p.strip === q.strip && q.number === p.number + 1 ? [[one, two] as const] : []
  })
}

/** The terminals next to this one. */
export function besideOf(ground: Ground, terminal: number): readonly number[] {
  return neighbours(ground).flatMap(([one, two]) =>
    one === terminal ? [two] : two === terminal ? [one] : [],
  )
}

/** Whether something lies on a node. */
function isUsed({ net }: Ground, node: number): boolean {
  return net.branches.some(({ from, to }) => from === node || to === node)
}

/** Whether a strap joins two nodes already. */
function isStrapped({ net }: Ground, [one, two]: readonly [number, number]): boolean {
  return net.branches.some(
    ({ from, to, part }) =>
      part.role === 'link' &&
      part.gate === undefined &&
      ((from === one && to === two) || (from === two && to === one)),
  )
}

/** Whether something new between two nodes can matter: something lies on both, and no strap joins them. */
export function canJoin(ground: Ground, pair: readonly [number, number]): boolean {
  return pair.every((node) => isUsed(ground, node)) && !isStrapped(ground, pair)
}
