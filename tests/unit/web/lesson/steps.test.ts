import { bellAt, sizeOf } from 'ringproof/web/lesson/rig/reading'
import { foundOf, type Step, shownState } from 'ringproof/web/lesson/steps/step'
import { STEPS } from 'ringproof/web/lesson/steps/steps'
import { heldIn, saidOf } from 'ringproof/web/lesson/verdict'
import { milli, soundText } from 'ringproof/web/lesson/words'
import { describe, expect, test } from 'vitest'
import { solvedStep } from './solved-house.ts'

function stepOf(id: string): Step {
  const found = STEPS.find((one) => one.id === id)
  if (found === undefined) throw new Error(`no step ${id}`)
  return found
}

describe('every step', () => {
  test.each(STEPS.map((step) => [step.id, step] as const))('%s is answered by the library', (_, step) => {
    const found = solvedStep(step)
    const answer = step.answer(found)
    const known = step.choices.map(({ value }) => value)
    for (const part of step.asks === 'path' ? answer.split(' ') : [answer]) expect(known).toContain(part)
    expect(heldIn(step, answer, found)).toBe(true)
    expect(heldIn(step, undefined, found)).toBeUndefined()
    expect(saidOf(step, undefined, found)).toMatch(/^Solved: .+\.$/)
    const said = [...step.why(found), step.learned(found)].join(' ')
    expect(said).not.toMatch(/NaN|undefined|Infinity/)
    expect(said).toMatch(/\d [mµn]A/)
    expect(step.text.length).toBeGreaterThan(1)
  })

  test('has a name of its own', () => {
    expect(new Set(STEPS.map(({ id }) => id)).size).toBe(STEPS.length)
  })
})

describe('what a bell does', () => {
  test('too little to ring is not yet silent', () => {
    expect(soundText({ current: 0.00299, need: 0.003, rings: false })).toBe('too little to ring')
    expect(soundText({ current: 0.0001, need: 0.003, rings: false })).toBe('silent')
    expect(soundText({ current: 0.003, need: 0.003, rings: true })).toBe('rings')
  })
})

describe('what the steps say follows the values', () => {
  test('a parked third wire silences the bell and leaves the loop as it was', () => {
    const step = stepOf('broken')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('silent')
    const loops = ['landed', 'parked'].map((name) => foundOf(found, name).loops.get('hall') ?? 0)
    expect(loops[1]).toBeCloseTo(loops[0] ?? 1, 6)
    // the capacitor given another value, the sentence has another number
    const other = solvedStep(step, (text) => text.replace('1.8 µF', '0.5 µF'))
    expect(step.learned(other)).not.toBe(step.learned(found))
    expect(step.learned(other)).toContain(milli(bellAt(foundOf(other, 'landed'), 'hall').current))
  })

  test('the path goes through capacitor, third wire and bell, either way round', () => {
    const step = stepOf('path')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('b-wire capacitor third-wire bell a-wire')
    expect(heldIn(step, 'a-wire bell third-wire capacitor b-wire', found)).toBe(true)
    expect(heldIn(step, 'b-wire third-wire capacitor bell a-wire', found)).toBe(false)
    // a set on two wires rings without the third
    const turned = solvedStep(step, (text) => text.replace('reversed: no', 'reversed: yes'))
    expect(step.answer(turned)).toBe('b-wire bell third-wire capacitor a-wire')
  })

  test('a reversal matters at the plug only, and beside a second set it leaks', () => {
    const step = stepOf('reversed')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('plug')
    const beside = foundOf(found, 'beside')
    expect(bellAt(beside, 'hall').rings).toBe(true)
    expect(beside.leakage.value).toBeGreaterThan(beside.leakage.allowed)
    // a resistor small enough in the socket rings the reversed bell as well
    const small = solvedStep(step, (text) => text.replace('470 kΩ', '1 kΩ'))
    expect(step.answer(small)).toBe('neither')
  })

  test('the first bell gets less beside a second, and never as much as alone', () => {
    const step = stepOf('shared')
    expect(step.answer(solvedStep(step))).toBe('shared')
    const small = solvedStep(step, (text) => text.replace('1.8 µF', '0.05 µF'))
    expect(step.answer(small)).not.toBe('own')
  })

  test('the set that starves first depends on the capacitor, the sum of the loads does not', () => {
    const step = stepOf('starve')
    const found = solvedStep(step)
    // shown is the first number at which a bell starves
    expect(shownState(step, found)).toEqual({ line: 'depot-exchange', sets: step.answer(found) })
    const [five, before] = ['depot-exchange 5', `depot-exchange ${Number(step.answer(found)) - 1}`]
    const smaller = solvedStep(step, (text) => text.replace('1.8 µF', '1 µF'), [five, before])
    expect(Number(step.answer(smaller))).toBeLessThan(Number(step.answer(found)))
    expect(foundOf(smaller, five).load.sum).toBeCloseTo(foundOf(found, five).load.sum, 6)
    // where the rule breaks: more load than allowed, and still every bell rings
    expect(foundOf(found, five).load.sum).toBeGreaterThan(foundOf(found, five).load.allowed)
    expect(foundOf(found, five).bells.every(({ rings }) => rings)).toBe(true)
    expect(foundOf(found, `depot-exchange ${step.answer(found)}`).bells.some(({ rings }) => !rings)).toBe(
      true,
    )
  })

  test('the resistor gives the table sets more; like bells gain nothing', () => {
    const step = stepOf('unequal')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('more')
    expect(bellAt(foundOf(found, 'bare'), 'kitchen').rings).toBe(false)
    expect(bellAt(foundOf(found, 'fitted'), 'kitchen').rings).toBe(true)
    const tiny = solvedStep(step, (text) => text.replaceAll('3.3 kΩ', '1 Ω'))
    expect(step.answer(tiny)).toBe('same')
  })

  test('a second capacitor beside the first passes little more, in line clearly less', () => {
    const step = stepOf('two-capacitors')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('same')
    const at = (name: string): number => bellAt(foundOf(found, name), 'hall').current
    expect(at('in-line')).toBeLessThan(at('linked'))
    expect(at('beside')).toBeGreaterThan(at('none'))
    // the second lies truly beside the first: like capacitors between like points carry alike
    const beside = foundOf(found, 'beside')
    const own = sizeOf(beside.currents.get('hall/own-capacitor') ?? { re: 0, im: 0 })
    expect(own / beside.capacitor).toBeCloseTo(1, 3)
    // capacitors so small that they set the current themselves: a second one nearly doubles it
    const small = solvedStep(step, (text) => text.replaceAll('1.8 µF', '0.3 µF'))
    expect(step.answer(small)).toBe('more')
    expect(step.why(small).join(' ')).not.toContain('far from twice')
  })

  test('touching the b wire leaks, touching the a wire silences the house', () => {
    const step = stepOf('touches')
    const found = solvedStep(step)
    expect(step.answer(found)).toBe('b')
    expect(foundOf(found, 'a').bells.some(({ rings }) => rings)).toBe(false)
    expect(bellAt(foundOf(found, 'pair'), 'hall').rings).toBe(true)
    expect(bellAt(foundOf(found, 'pair'), 'kitchen').rings).toBe(false)
    expect(bellAt(foundOf(found, 'two-wire'), 'kitchen').rings).toBe(true)
    const apart = solvedStep(step, (text) => text.replace('  - {fit strap: C1-B5}', '  - {fit strap: C1-A1}'))
    expect(step.answer(apart)).toBe('none')
  })
})
