import { follow, solve, verdictsAsked } from 'ringproof'
import { HOUSE, type House, houseTexts } from 'ringproof/web/lesson/rig/house'
import { frequencyOf, HOUSE_CHECKS, type HouseReading, readingOf } from 'ringproof/web/lesson/rig/reading'
import type { Found, Step } from 'ringproof/web/lesson/steps/step'
import { besides } from '../../../support/bench.ts'

/** A house solved by the very asks that the page sends its worker; `rewrite` changes a sheet's text before. */
export function solvedHouse(house: House, rewrite: (text: string) => string = (text) => text): HouseReading {
  const texts = houseTexts(house).map(({ text }) => rewrite(text))
  const key = texts.join('')
  const reading = solved.get(key) ?? solvedTexts(texts)
  solved.set(key, reading)
  return reading
}

/** Several tests look at the same house. */
const solved = new Map<string, HouseReading>()

function solvedTexts(texts: readonly string[]): HouseReading {
  const shelf = besides(...texts)
  const checked = verdictsAsked({ target: HOUSE }, HOUSE_CHECKS, shelf)
  const ringing = { target: HOUSE, condition: 'on-hook/ringing' }
  return readingOf(
    checked,
    solve({ ...ringing, frequency: frequencyOf(checked) }, shelf),
    follow({ ...ringing, from: 'exchange/b', to: 'exchange/a' }, shelf),
  )
}

/** All houses that decide a step, or some of them by name. */
export function solvedStep(
  step: Step,
  rewrite?: (text: string) => string,
  names: readonly string[] = Object.keys(step.needs),
): Found {
  return Object.fromEntries(
    names.map((name) => [name, solvedHouse(step.house(step.needs[name] ?? {}), rewrite)]),
  )
}
