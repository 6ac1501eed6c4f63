import {
  ownTermination,
  REFERENCE_NETWORKS,
  type ReferenceName,
  referenceImpedance,
} from 'ringproof/figures/reference-networks'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'

/** To the digits of a table. */
const PRINTED = { relative: 0, absolute: 6e-5 }

function networkOf(name: ReferenceName) {
  const found = REFERENCE_NETWORKS.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no network is called ${name}`)
  return found
}

describe('the reference networks', () => {
  // R + R₂/(1 + jωR₂C) of the networks of TBR 21, of the United Kingdom and of AS/CA S002:2010 figure 5; derived
  const table: readonly (readonly [ReferenceName, number, number, number])[] = [
    ['european-harmonised', 300, 987.7251, -152.199],
    ['european-harmonised', 800, 838.2786, -321.354],
    ['european-harmonised', 1000, 770.1171, -353.512],
    ['european-harmonised', 1020, 763.4748, -355.7931],
    ['european-harmonised', 1600, 599.0772, -372.1775],
    ['european-harmonised', 3400, 380.6858, -266.0131],
    ['british', 300, 918.0649, -198.5576],
    ['british', 800, 690.6862, -309.8158],
    ['british', 1000, 622.2, -304.5639],
    ['british', 1020, 616.2972, -303.3842],
    ['british', 1600, 500.9836, -253.0872],
    ['british', 3400, 404.717, -142.5456],
    ['australian', 300, 1012.728, -147.0349],
    ['australian', 800, 878.8243, -325.8626],
    ['australian', 1000, 813.2347, -366.7765],
    ['australian', 1020, 806.6802, -369.9785],
    ['australian', 1600, 634.4417, -409.9759],
    ['australian', 3400, 371.324, -318.0986],
    ['six-hundred-ohm', 300, 600, 0],
    ['six-hundred-ohm', 3400, 600, 0],
  ]
  test.each(table)('%s at %d Hz is %d %d j', (name, frequency, re, im) => {
    const z = referenceImpedance(networkOf(name), frequency)
    assertClose(z.re, re, PRINTED, 're')
    assertClose(z.im, im, PRINTED, 'im')
  })

  test.each(REFERENCE_NETWORKS.map((one) => [one.name, one] as const))(
    '%s says where it is from',
    (_name, { source, clause, grade, words }) => {
      expect(source.length).toBeGreaterThan(5)
      expect(clause).not.toBe('')
      expect(grade === 'MEMORY').toBe(source.endsWith('from memory'))
      expect(words).toContain('Ω')
    },
  )

  test('have names of their own', () => {
    expect(new Set(REFERENCE_NETWORKS.map(({ name }) => name)).size).toBe(REFERENCE_NETWORKS.length)
  })

  test('are joined by what the sheet of a line says', () => {
    const items = [{ value: 500, unit: 'Ω', text: '500 Ω' }] as const
    const own = ownTermination(items)
    expect(own).toMatchObject({ name: 'own-line', grade: 'SHEET' })
    expect(referenceImpedance(own, 1000)).toEqual({ re: 500, im: 0 })
  })
})
