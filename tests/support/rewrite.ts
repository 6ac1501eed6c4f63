import { type Circuit, isSource, mapParts, type Part, type Winding } from './circuit.ts'

/** The circuit with every node and part under another name; windings keep theirs. `earth` is never renamed. */
export function renamed(
  circuit: Circuit,
  node: (name: string) => string,
  part: (name: string) => string,
): Circuit {
  const at = (name: string): string => (name === 'earth' ? name : node(name))
  return mapParts(circuit, (old): Part => {
    if (old.kind !== 'induction-coil')
      return { ...old, name: part(old.name), from: at(old.from), to: at(old.to) }
    const windings = old.windings.map(
      (winding): Winding => ({ ...winding, from: at(winding.from), to: at(winding.to) }),
    )
    return { ...old, name: part(old.name), windings }
  })
}

/** The circuit with its parts in the order of the given sort keys (one a part, repeated when too few). */
export function reordered(circuit: Circuit, keys: readonly number[]): Circuit {
  const order = circuit.parts.map((part, at) => ({ part, key: keys[at % keys.length] ?? 0 }))
  return { ...circuit, parts: order.sort((a, b) => a.key - b.key).map(({ part }) => part) }
}

/** The circuit with every source silent except those that the test keeps; a silent source stays in place at 0 V or 0 A. */
export function silenced(circuit: Circuit, keep: (name: string) => boolean): Circuit {
  return mapParts(circuit, (part) => {
    if (!isSource(part) || keep(part.name)) return part
    const nil = { text: part.kind === 'voltage-source' ? '0 V' : '0 A', value: 0 }
    return { ...part, direct: nil, alternating: { size: nil, degrees: 0 } }
  })
}

/** The circuit with further parts behind its own. */
export function extended(circuit: Circuit, parts: readonly Part[]): Circuit {
  return { ...circuit, parts: [...circuit.parts, ...parts] }
}

/** The circuit with a prefix before the names of its parts and of all its nodes, `earth` too: it then floats. */
export function afloat(circuit: Circuit, prefix: string): Circuit {
  const moved = <T extends { readonly from: string; readonly to: string }>(ends: T): T => {
    return { ...ends, from: prefix + ends.from, to: prefix + ends.to }
  }
  return mapParts(circuit, (old): Part => {
    if (old.kind !== 'induction-coil') return moved({ ...old, name: prefix + old.name })
    return { ...old, name: prefix + old.name, windings: old.windings.map(moved) }
  })
}
