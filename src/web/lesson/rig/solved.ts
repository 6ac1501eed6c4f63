/** Houses solved by the worker; each is solved once. */
import type { SheetText } from '../../../index.ts'
import { fleet } from '../../state/shelf.ts'
import { bench } from '../../talk/solver.ts'
import { HOUSE, type House, houseTexts } from './house.ts'
import { frequencyOf, HOUSE_CHECKS, type HouseReading, readingOf } from './reading.ts'

const solved = new Map<string, Promise<HouseReading>>()

/** What the library says of a house. @throws AskedWrong, Error as the worker's asker does */
export function solvedHouse(house: House): Promise<HouseReading> {
  const key = JSON.stringify(house)
  const known = solved.get(key)
  if (known !== undefined) return known
  const asked = solveHouse(house)
  solved.set(key, asked)
  // what failed may be asked again
  asked.catch(() => solved.delete(key))
  return asked
}

async function solveHouse(house: House): Promise<HouseReading> {
  const texts = [...houseTexts(house), ...(await lessonFleet())]
  const checked = await bench.ask('verdictsAsked', {
    request: { target: HOUSE },
    checks: HOUSE_CHECKS,
    texts,
  })
  const ringing = { target: HOUSE, condition: 'on-hook/ringing' }
  const [answer, followed] = await Promise.all([
    bench.ask('solveAsked', { request: { ...ringing, frequency: frequencyOf(checked) }, texts }),
    bench.ask('followAsked', { request: { ...ringing, from: 'exchange/b', to: 'exchange/a' }, texts }),
  ])
  return readingOf(checked, answer, followed)
}

/** The demo's sets, lines and units: a sheet of the user's own with such a name shall not change the lesson. */
async function lessonFleet(): Promise<readonly SheetText[]> {
  return (await fleet()).filter(({ text }) => /^sheet: (set|line|unit)$/m.test(text))
}
