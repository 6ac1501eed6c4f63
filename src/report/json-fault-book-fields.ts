/** The answer to `faults` as JSON shows it, its keys in their order. */
import type { FaultRow, FaultsAnswer, Notice, PairsAnswer, Shown, Telling } from '../answer/faults-answer.ts'
import { conditionJson, placesIn } from './condition-json.ts'
import { type Fields, pick } from './pick.ts'

const noticeJson = (one: Notice): Fields => pick(one, ['test', 'asks', 'answer', 'says'])
const shownJson = (one: Shown): Fields => pick(one, ['value', 'state'])

const TELLING = [
  ...['test', 'asks', 'how', 'site', 'live', 'condition', 'unit', 'resolution', 'sound', 'faulty'],
  'clearness',
]

function tellingJson(one: Telling, single: boolean): Fields {
  return pick(one, TELLING, {
    condition: conditionJson(one.condition, single),
    sound: shownJson(one.sound),
    faulty: shownJson(one.faulty),
  })
}

const ROW = ['fault', 'subjects', 'family', 'says', 'sign', 'mend', 'weight', 'source', 'notices', 'tells']

function rowJson(row: FaultRow, single: boolean): Fields {
  return pick(row, ROW, {
    notices: row.notices.map(noticeJson),
    tells: row.tells.map((one) => tellingJson(one, single)),
  })
}

function pairsJson(pairs: PairsAnswer): Fields {
  const rows = pairs.likeliest.map((one) =>
    pick(one, ['faults', 'says', 'notices'], { notices: one.notices.map(noticeJson) }),
  )
  return pick(pairs, ['count', 'matching', 'only together', 'likeliest'], { likeliest: rows })
}

/** Keys of `faults/1` between its head and its problems. */
export const FAULT_BOOK_KEYS: readonly string[] = [
  ...['outcome', 'place', 'instrument', 'counts', 'sound', 'faults', 'moving nothing', 'pairs', 'cautions'],
]

/** What stands under those keys. */
export function faultBookFields(answer: FaultsAnswer): Fields {
  const rows = [...answer.faults, ...answer['moving nothing']]
  const conditions = rows.flatMap(({ tells }) => tells.map(({ condition }) => condition))
  const single = placesIn(conditions).size <= 1
  return {
    counts: pick(answer.counts, ['faults', 'matching', 'moving nothing', 'symptoms', 'readings']),
    sound: answer.sound.map(noticeJson),
    faults: answer.faults.map((row) => rowJson(row, single)),
    'moving nothing': answer['moving nothing'].map((row) => rowJson(row, single)),
    ...(answer.pairs === undefined ? {} : { pairs: pairsJson(answer.pairs) }),
  }
}
