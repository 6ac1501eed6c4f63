import { describe, expect, test } from 'vitest'
import { oracleCases } from '../support/oracle-cases.ts'
import { oracleChecks, type Readings } from '../support/oracle-check.ts'
import { jsonOf, ringproof } from './ringproof.ts'

// Each case names its own source and grade, in its sheet and beside its figures; here by way of the command line.
for (const oracle of oracleCases()) {
  describe(`${oracle.title} (${oracle.source}), through the command line`, () => {
    const { frequency } = oracle.given
    const solved = async (...more: readonly string[]) => {
      const ran = await ringproof(['solve', oracle.file, ...more, '--json'])
      expect({ code: ran.code, err: ran.err }).toEqual({ code: 0, err: '' })
      return ran
    }

    for (const { what, run } of oracleChecks(oracle)) {
      test(`${what} is as published`, async () => {
        run(JSON.parse((await solved()).out) as Readings)
      })
    }

    test('the JSON is as its schema says and names source and grade', async () => {
      const { data, wrong } = jsonOf(await solved())
      expect(wrong).toEqual([])
      expect(data).toMatchObject({ source: oracle.source, grade: oracle.grade, frequency: frequency ?? null })
    })

    if (frequency !== undefined) {
      test('the frequency can be given with its unit and comes to the same', async () => {
        const { voltages, currents } = JSON.parse(
          (await solved('--frequency', `${frequency} Hz`)).out,
        ) as Readings
        expect({ voltages, currents }).toMatchObject(
          (({ voltages, currents }: Readings) => ({ voltages, currents }))(JSON.parse((await solved()).out)),
        )
      })
    }
  })
}
