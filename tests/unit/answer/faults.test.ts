import { answerText, type BookStore, type FaultsAnswer, faults, PLAIN, ProblemError, toJson } from 'ringproof'
import { askedSymptoms } from 'ringproof/answer/asked-symptoms'
import { layOut } from 'ringproof/answer/book-order'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const held = new Map<string, Uint8Array>()
/** The book is worked out once for all tests of this file. */
const store: BookStore = {
  read: (key) => held.get(key),
  write: (key, bytes) => {
    held.set(key, bytes)
  },
  remove: () => {},
}

const ask = (...symptoms: readonly string[]): Promise<FaultsAnswer> =>
  faults({ target: 'sedge', ...(symptoms.length === 0 ? {} : { symptoms }) }, DEMO, { store })

const ids = ({ faults: rows }: FaultsAnswer): readonly string[] => rows.map(({ fault }) => fault)
const noticed = (answer: FaultsAnswer, fault: string): Readonly<Record<string, string>> => {
  const row = answer.faults.find((one) => one.fault === fault)
  return Object.fromEntries(row?.notices.map(({ test: id, answer: given }) => [id, given]) ?? [])
}

describe('the fault book of a sedge in the workshop', () => {
  test('holds each fault once, with what is noticed and what tells it', async () => {
    const answer = await ask()
    const { counts } = answer
    expect(answer.outcome).toBe('answered')
    expect(answer.sound).toEqual([])
    expect(answer.place).toBe('sedge')
    expect(counts.matching).toBe(counts.faults)
    expect(answer.faults.length + answer['moving nothing'].length).toBe(counts.faults)
    expect(answer['moving nothing']).toHaveLength(counts['moving nothing'])
    expect(new Set(ids(answer)).size).toBe(answer.faults.length)
    // an open transmitter core: the loop never closes, whatever else is right
    expect(noticed(answer, 'sedge/handset.t1 open')).toMatchObject({ tone: 'none', heard: 'no', hears: 'no' })
    expect(noticed(answer, 'sedge/handset.t1 open')).not.toHaveProperty('rings')
    for (const { notices, tells, fault } of answer.faults) {
      expect(notices.length + tells.length, fault).toBeGreaterThan(0)
      for (const one of tells) expect(one.clearness, fault).toBeGreaterThanOrEqual(3)
    }
    for (const { notices, tells } of answer['moving nothing']) expect([notices, tells]).toEqual([[], []])
    expect(answer.cautions.join()).toContain('Unplug the set before you open it')
    expect(answer.cautions.join()).toContain('on a live line')
  })

  test('shows by a reading outside and unplugged what such a reading tells', async () => {
    const { faults: rows } = await ask()
    const parked = rows.find(({ fault }) => fault === 'sedge/line.a parked')
    const [first] = parked?.tells ?? []
    expect(first).toMatchObject({
      site: 'outside',
      live: false,
      unit: 'Ω',
      faulty: { value: null, state: 'open' },
    })
    expect(first?.sound.value).toBeGreaterThan(100)
  })

  test('is filtered by a question with its answer, by a question alone, and by complaints', async () => {
    const all = await ask()
    const withAnswer = (id: string, ...answers: readonly string[]) =>
      ids(all).filter((fault) => answers.includes(noticed(all, fault)[id] ?? ''))
    const silent = await ask('rings=silent')
    expect(ids(silent)).toEqual(withAnswer('rings', 'silent'))
    expect(ids(await ask('bell-silent'))).toEqual(ids(silent))
    const amiss = await ask('rings')
    expect(ids(amiss)).toEqual(withAnswer('rings', 'silent', 'weak'))
    expect(amiss.counts.matching).toBeGreaterThan(silent.counts.matching)
    expect(amiss.counts.faults).toBe(all.counts.faults)
    const both = await ask('rings=rings', 'talk=no')
    expect(both.faults.every(({ notices }) => !notices.some(({ test: id }) => id === 'rings'))).toBe(true)
    expect(both.faults.length).toBeGreaterThan(5)
    const speech = await ask(' rings-but-no-speech ')
    expect(ids(speech)).toEqual(expect.arrayContaining([...ids(both)]))
    // nothing is wrong with what moves nothing, so that no complaint names it
    expect(speech['moving nothing']).toEqual([])
  })

  test('asked for what no fault does is empty, and says so', async () => {
    const none = await ask('rings=weak', 'engaged')
    const rows = none.faults.length
    expect(none.counts.matching).toBe(rows)
    const text = answerText(none, { width: 80, paint: PLAIN })
    expect(text).toContain(`${none.counts.faults} faults, ${rows} of them with what was asked for`)
  })

  test.each([
    [['ring'], 'the symptom `ring`', 'perhaps `rings`'],
    [['rings=silnt'], 'the answer `silnt` to `rings`', 'perhaps `silent`'],
    [['rings='], 'the answer `` to `rings`', undefined],
    [['bell-silnt'], 'the symptom `bell-silnt`', 'perhaps `bell-silent`'],
  ])('refuses %j before anything is worked out', async (symptoms, found, mend) => {
    const told: string[] = []
    const asked = faults({ target: 'sedge', symptoms }, DEMO, { tell: (says) => told.push(says) })
    const thrown: unknown = await asked.catch((error: unknown) => error)
    expect(thrown).toBeInstanceOf(ProblemError)
    const [problem] = (thrown as ProblemError).problems
    expect(problem).toMatchObject({ code: 'request-wrong', found })
    expect(problem?.mend).toBe(mend)
    expect(told).toEqual([])
  })

  test('is laid out for lines of 80 columns, groups first, then what nothing tells', async () => {
    const answer = await ask()
    const text = answerText(answer, { width: 80, paint: PLAIN })
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([])
    expect(text).toMatch(/^faults sedge instrument digital\n/)
    expect(text.indexOf('Does the bell ring? it is silent')).toBeLessThan(text.indexOf('Nothing is noticed'))
    expect(text.indexOf('Nothing is noticed')).toBeLessThan(text.indexOf('Nothing here tells these'))
    expect(text).toContain('Caution: Unplug the set')
    expect(text).not.toMatch(/NaN|Infinity|undefined|e-\d\d/)
    const narrow = answerText(answer, { width: 60, paint: PLAIN })
    expect(narrow.split('\n').filter((line) => line.length > 60)).toEqual([])
  })
})

describe('a fault book', () => {
  test('needs one set; premises name how to say which', async () => {
    await expect(faults({ target: 'goods-office' }, DEMO)).rejects.toThrow('one set')
  })

  test('of a set that stands alone has readings only', async () => {
    const laidOut = layOut({ target: 'sedge', on: 'none' }, DEMO)
    expect(laidOut.inputs.tests.every(({ words }) => words === undefined)).toBe(true)
    expect(() => askedSymptoms(laidOut.inputs.tests, ['rings'])).toThrow('no symptom')
  })

  test('has another key on another line, by another instrument and of another build', () => {
    const key = (more: object, build?: string) => layOut({ target: 'sedge', ...more }, DEMO, build).key
    const keys = [
      key({}),
      key({}, 'another build'),
      key({ on: 'valley-exchange' }),
      key({ on: 'gatehouse' }),
      key({ instrument: 'needle' }),
      layOut({ target: 'fescue' }, DEMO).key,
    ]
    expect(new Set(keys).size).toBe(keys.length)
    expect(key({})).toBe(keys[0])
  })

  test('is JSON with its notices and readings', async () => {
    const json = JSON.parse(JSON.stringify(toJson(await ask('bell-silent'))))
    expect(json.ringproof).toBe('faults/1')
    expect(json.request).toMatchObject({ faults: 'sedge', symptoms: ['bell-silent'] })
    expect(json.faults[0].notices).toContainEqual({
      test: 'rings',
      asks: 'Does the bell ring?',
      answer: 'silent',
      says: 'it is silent',
    })
  })
})
