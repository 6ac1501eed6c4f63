import { contexts } from '../checks/_ask.ts'

export { house, lineText, MASTER, plainSet } from '../checks/_ask.ts'

type Asked = Parameters<typeof contexts>[0]

/** A standing with its contexts, its netlist and its line. */
export function standing(asked: Asked) {
  const all = contexts(asked)
  const [first] = all
  if (first === undefined || first.net.line === undefined) throw new Error('no set stands on a line')
  return { all, context: first, net: first.net, place: first.place, line: first.net.line }
}
