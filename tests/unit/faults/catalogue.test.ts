import { CHECKS } from 'ringproof/checks/catalogue'
import { FAULT_RULES } from 'ringproof/faults/catalogue'
import { expect, test } from 'vitest'

const IDS = FAULT_RULES.map(({ id }) => id)

test('every fault has an id of its own, in small letters and hyphens, and a title', () => {
  expect(new Set(IDS).size).toBe(IDS.length)
  for (const { id, title } of FAULT_RULES) {
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/)
    expect(title.length).toBeGreaterThan(5)
  }
})

test('faults explain checks that exist', () => {
  const checks = new Set(CHECKS.map(({ id }) => id))
  for (const { id, explains } of FAULT_RULES) {
    expect(
      explains.filter((one) => !checks.has(one)),
      id,
    ).toEqual([])
  }
})

test('a fault yields only to faults that come before it', () => {
  FAULT_RULES.forEach(({ id, yieldsTo = [] }, k) => {
    expect(
      yieldsTo.filter((one) => !IDS.slice(0, k).includes(one)),
      id,
    ).toEqual([])
  })
})
