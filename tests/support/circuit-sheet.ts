import type { Circuit, Coil, Part, TwoEnded, Winding } from './circuit.ts'

/** The sheet text of a circuit, one part a line, as the skeleton of circuit sheets shows it. */
export function circuitSheet(circuit: Circuit): string {
  const head = ['ringproof: 1', 'sheet: circuit', `name: ${circuit.name}`, 'parts:']
  return `${[...head, ...circuit.parts.map((part) => `  ${part.name}: ${flow(part)}`)].join('\n')}\n`
}

function flow(part: Part): string {
  return braces(part.kind === 'induction-coil' ? coilKeys(part) : twoEndedKeys(part))
}

function coilKeys(coil: Coil): [string, string][] {
  const coupling =
    typeof coil.coupling === 'number'
      ? String(coil.coupling)
      : braces(Object.entries(coil.coupling).map(([pair, k]) => [pair, String(k)]))
  return [
    ['kind', coil.kind],
    ['windings', braces(coil.windings.map((winding) => [winding.name, braces(windingKeys(winding))]))],
    ['coupling', coupling],
  ]
}

function windingKeys(winding: Winding): [string, string][] {
  return [
    ['from', winding.from],
    ['to', winding.to],
    ['resistance', winding.resistance.text],
    ['inductance', winding.inductance.text],
  ]
}

function twoEndedKeys(part: TwoEnded): [string, string][] {
  const keys: [string, string][] = [
    ['kind', part.kind],
    ['from', part.from],
    ['to', part.to],
  ]
  switch (part.kind) {
    case 'resistor':
      return [...keys, ['resistance', part.resistance.text]]
    case 'capacitor':
      keys.push(['capacitance', part.capacitance.text])
      if (part.leakage) keys.push(['leakage', part.leakage.text])
      return keys
    case 'inductor':
      keys.push(['inductance', part.inductance.text])
      if (part.resistance) keys.push(['resistance', part.resistance.text])
      return keys
    case 'strap':
      return part.resistance ? [...keys, ['resistance', part.resistance.text]] : keys
    default:
      return [
        ...keys,
        ['direct', part.direct.text],
        ['alternating', `${part.alternating.size.text} at ${part.alternating.degrees}°`],
      ]
  }
}

function braces(pairs: readonly (readonly [string, string])[]): string {
  return `{${pairs.map(([key, value]) => `${key}: ${value}`).join(', ')}}`
}
