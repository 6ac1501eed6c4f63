import { solveCircuit } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { oracleCases } from '../support/oracle-cases.ts'
import { oracleChecks } from '../support/oracle-check.ts'

// Each case names its own source and grade, in its sheet and beside its figures.
for (const oracle of oracleCases()) {
  describe(`${oracle.title} (${oracle.source})`, () => {
    const { frequency } = oracle.given

    for (const { what, run } of oracleChecks(oracle)) {
      test(`${what} is as published`, () => {
        run(
          solveCircuit(oracle.sheet, {
            file: oracle.file,
            ...(frequency === undefined ? {} : { frequency }),
          }),
        )
      })
    }

    test('the sheet names the same source, grade and frequency as the record of its figures', () => {
      const sheet = parse(oracle.sheet) as Record<string, unknown>
      expect(sheet).toMatchObject({
        name: oracle.name,
        title: oracle.title,
        source: oracle.source,
        grade: oracle.grade,
      })
      expect(sheet.frequency).toBe(frequency === undefined ? undefined : `${frequency} Hz`)
    })
  })
}

test('every sheet of the folder has its record and every record its checks', () => {
  const cases = oracleCases()
  expect(cases.length).toBeGreaterThan(30)
  for (const oracle of cases) expect(oracleChecks(oracle), oracle.name).not.toHaveLength(0)
})
