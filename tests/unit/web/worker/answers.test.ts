import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { check, type Move, type SheetText } from 'ringproof'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import type { OnBench } from 'ringproof/web/talk/protocol'
import { benchAnswers } from 'ringproof/web/worker/bench-answers'
import { answered } from 'ringproof/web/worker/serve-asks'
import { studyAnswers } from 'ringproof/web/worker/study-answers'
import { describe, expect, test } from 'vitest'

const root = packagedFolder()
const packaged: readonly SheetText[] = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.includes('/') && file.endsWith('.yaml'))
  .map((file) => ({ file, text: readFileSync(join(root, file), 'utf8') }))
const DEMO = folderShelf([], root)
const quiet = () => {}

function bench(texts: readonly SheetText[] = []) {
  const answers = benchAnswers()
  const rows = answers.shelf({ packaged, texts }, quiet)
  return { answers, rows }
}

const { answers } = bench()
const FOUND: OnBench = { set: 'fescue', moves: [] }
const LIFTED: OnBench = { set: 'fescue', moves: [{ do: 'lift strap', what: 'B2-B3' }] }

describe('the worker of the bench', () => {
  test('lists what is in reach, one’s own first and with their mistakes', async () => {
    const own = [
      {
        file: 'mine.yaml',
        text: 'ringproof: 1\nsheet: set\nname: mine\ntitle: "mine: own"\nbased on: fescue\n',
      },
      { file: 'bad.yaml', text: 'ringproof: 1\nsheet: rewire\nname: bad\nset: nobody\nmoves: []\n' },
      { file: 'note.txt', text: 'just words' },
    ]
    const rows = await bench(own).rows
    expect(rows.slice(0, 3)).toEqual([
      { sheet: 'set', name: 'mine', title: 'mine: own', file: 'mine.yaml', own: true, problems: 0 },
      { sheet: 'rewire', name: 'bad', file: 'bad.yaml', own: true, problems: 1 },
      // what does not say what it is can be found and mended all the same
      { name: 'note.txt', file: 'note.txt', own: true, problems: expect.any(Number) },
    ])
    expect(rows[2]?.problems).toBeGreaterThan(0)
    expect(rows).toHaveLength(3 + packaged.length)
    expect(rows.find(({ name }) => name === 'fescue-converted')).toMatchObject({
      sheet: 'rewire',
      title: 'a fescue from two wires to plug and socket',
      own: false,
    })
    expect(rows.filter(({ title }) => title === undefined).map(({ name }) => name)).toEqual([
      'bad',
      'note.txt',
    ])
  })

  test('opens sets, rewires and premises', async () => {
    expect(await answers.open({ sheet: 'set', name: 'fescue' }, quiet)).toMatchObject({
      set: 'fescue',
      moves: [],
    })
    const rewire = await answers.open({ sheet: 'rewire', name: 'fescue-converted' }, quiet)
    expect(rewire.set).toBe('fescue-as-found')
    expect(rewire.rewire?.name).toBe('fescue-converted')
    expect(rewire.moves).toHaveLength(5)
    expect(rewire.moves[0]).toEqual({ do: 'lift part', what: 'own-capacitor' })
    const many = await answered(answers, 'open', { sheet: 'premises', name: 'station-house' }, quiet)
    expect(many).toMatchObject({ problems: [{ code: 'request-wrong' }] })
    const places = check({ target: 'premises/station-house' }, DEMO).stands?.sets ?? []
    expect(places.length).toBeGreaterThan(1)
    for (const { place, set } of places) {
      expect(JSON.stringify(many)).toContain(place)
      const one = await answers.open({ sheet: 'premises', name: 'station-house', at: place }, quiet)
      expect(one).toMatchObject({ set, on: 'station-house', at: place })
    }
    const strange = { sheet: 'premises', name: 'station-house', at: 'nowhere' }
    expect(await answered(answers, 'open', strange, quiet)).toHaveProperty('problems')
    expect(await answered(answers, 'open', { sheet: 'set', name: 'fescu' }, quiet)).toMatchObject({
      problems: [{ code: 'name-unknown', mend: 'perhaps `fescue`' }],
    })
  })

  test('judges at once, and wholly when asked', async () => {
    const quick = await answers.judge({ bench: LIFTED }, quiet)
    const whole = await answers.check({ bench: LIFTED, side: 'proposed' }, quiet)
    expect(quick.verdicts).toEqual(whole.verdicts)
    expect(quick.moves).toEqual(['lift strap B2-B3'])
    expect(quick.board.straps.find(({ thing }) => thing.includes('B2-B3'))?.change).toBe('taken out')
    expect(quick.conditions).toContain('off-hook/break')
    expect(quick.stands.premises).toBe('workshop')
    expect(whole.faults.length).toBeGreaterThan(0)
    const found = await answers.check({ bench: LIFTED, side: 'found' }, quiet)
    expect(found).toEqual(check({ target: 'set/fescue' }, DEMO))
  })

  test('judges ahead without a word, refused moves too, and says the same when it is asked', async () => {
    const { answers: other } = bench()
    const odd: OnBench = { set: 'fescue', moves: [{ do: 'lift strap', what: 'Z1-Z2' }] }
    for (const one of [LIFTED, odd]) {
      expect(await other.prepare({ bench: one }, quiet)).toBeNull()
      expect(await other.judge({ bench: one }, quiet)).toEqual(await answers.judge({ bench: one }, quiet))
    }
  })

  test('says which moves are refused and judges without them', async () => {
    const odd: Move = { do: 'lift strap', what: 'A1-Z9' }
    const quick = await answers.judge({ bench: { set: 'fescue', moves: [odd, ...LIFTED.moves] } }, quiet)
    expect(quick.refusedMoves).toEqual([0])
    expect(quick.refused.map(({ code }) => code)).toEqual(['move-refused'])
    expect(quick.verdicts).toEqual((await answers.judge({ bench: LIFTED }, quiet)).verdicts)
  })

  test('all that it sends can be cloned', async () => {
    const asks = [
      ['judge', { bench: LIFTED }],
      ['check', { bench: LIFTED, side: 'proposed' }],
      ['now', { bench: LIFTED, side: 'found', condition: 'off-hook' }],
      ['compare', { bench: LIFTED }],
      ['speech', { bench: LIFTED, side: 'proposed' }],
      ['open', { sheet: 'rewire', name: 'fescue-converted' }],
    ] as const
    for (const [what, ask] of asks) {
      const came = await answered(answers, what, structuredClone(ask), quiet)
      expect(came).toHaveProperty('answer')
      expect(structuredClone(came)).toEqual(came)
    }
  })

  test('compares the sides, also where nothing was done', async () => {
    const answer = await answers.compare({ bench: LIFTED }, quiet)
    expect(answer.moves).toEqual(['lift strap B2-B3'])
    expect(answer.changed.checks.length).toBeGreaterThan(0)
    expect((await answers.compare({ bench: FOUND }, quiet)).changed.checks).toEqual([])
  })

  test('reads the meter off the line and on it', async () => {
    const between = ['plug.a', 'plug.b'] as const
    const ask = { bench: FOUND, side: 'found', between, condition: 'off-hook', live: false } as const
    const off = await answers.meter(ask, quiet)
    expect(off.stands?.premises).toBeNull()
    const on = await answers.meter({ ...ask, live: true }, quiet)
    expect(on.stands?.premises).toBe('workshop')
    expect(on.cautions).not.toEqual(off.cautions)
    expect(on.readings).toHaveLength(1)
    const table = await answers.meter({ bench: LIFTED, side: 'proposed', live: false }, quiet)
    expect(table.readings.length).toBeGreaterThan(10)
  })

  test('judges premises with the set on the bench in its place', async () => {
    const [place = ''] =
      check({ target: 'premises/cottage' }, DEMO).stands?.sets.map((one) => one.place) ?? []
    const one = await answers.premises({ name: 'cottage' }, quiet)
    expect(one).toEqual(check({ target: 'premises/cottage' }, DEMO))
    const elsewhere = await answers.premises({ name: 'cottage', bench: LIFTED }, quiet)
    expect(elsewhere).toEqual(one)
    const there = await answers.premises(
      { name: 'cottage', bench: { ...LIFTED, on: 'cottage', at: place } },
      quiet,
    )
    expect(there.stands?.sets).toHaveLength(one.stands?.sets.length ?? 0)
    expect(there.stands?.asked?.place).toBe(place)
    expect(there.outcome).toBe('fails')
  })

  test('reads sheets, with their mistakes at their lines', async () => {
    const bad = { file: 'x.yaml', text: 'ringproof: 1\nsheet: rewire\nname: X\nset: fescue\nmoves: []\n' }
    const read = await answers.read({ text: bad }, quiet)
    expect(read).toMatchObject({ sheet: 'rewire', name: 'X' })
    expect(read.problems[0]?.place).toMatchObject({ file: 'x.yaml', line: 3 })
    const refused = 'ringproof: 1\nsheet: rewire\nname: x\nset: fescue\nmoves:\n  - lift strap: A1-A9\n'
    const moves = await answers.read({ text: { file: 'x.yaml', text: refused } }, quiet)
    expect(moves.problems).toMatchObject([{ code: 'move-refused', place: { line: 6 } }])
    expect(await answers.read({ text: { file: 'y.yaml', text: 'words' } }, quiet)).not.toHaveProperty('sheet')
    for (const text of packaged.slice(0, 40)) {
      const { problems } = await answers.read({ text }, quiet)
      expect(
        problems.filter(({ severity, code }) => severity === 'error' && code !== 'move-refused'),
      ).toEqual([])
    }
  })

  test('writes the bench as a rewire', async () => {
    const { text } = await answers.write({ bench: LIFTED, name: 'mine', title: 'mine' }, quiet)
    expect(text).toContain('title: mine\nset: fescue\nmoves:\n  - lift strap: B2-B3\n')
    const wrong = await answered(answers, 'write', { bench: LIFTED, name: 'Not A Name' }, quiet)
    expect(wrong).toHaveProperty('problems')
  })

  test('hands out texts and lists', async () => {
    const text = await answers.text({ sheet: 'set', name: 'fescue' }, quiet)
    expect(text.text).toContain('name: fescue')
    expect(await answered(answers, 'text', { sheet: 'set', name: 'nobody' }, quiet)).toHaveProperty(
      'problems',
    )
    expect((await answers.list({ what: 'sets' }, quiet)).rows.length).toBeGreaterThan(5)
  })

  test('answers with sheets of the asker in front', async () => {
    const mine = { file: 'mine.yaml', text: 'ringproof: 1\nsheet: set\nname: mine\nbased on: fescue\n' }
    const request = { target: 'set/mine' }
    const texts = [mine]
    expect((await answers.checkAsked({ request, texts }, quiet)).stands?.asked?.place).toBe('mine')
    expect(
      (await answers.figuresAsked({ request: { ...request, only: 'loop' }, texts }, quiet)).figures,
    ).not.toEqual([])
    expect((await answers.followAsked({ request, texts }, quiet)).steps.length).toBeGreaterThan(3)
    expect((await answers.solveAsked({ request, texts }, quiet)).outcome).toBe('answered')
    expect(await answered(answers, 'checkAsked', { request }, quiet)).toHaveProperty('problems')
  })

  test('knows nothing before it is handed sheets, and says what broke', async () => {
    expect(await answered(benchAnswers(), 'judge', { bench: FOUND }, quiet)).toHaveProperty('problems')
    expect(await answered(answers, 'judge', undefined, quiet)).toHaveProperty('broke')
  })
})

describe('the worker of the long questions', () => {
  const study = studyAnswers()
  void study.shelf({ packaged, texts: [] }, quiet)

  test('diagnoses question by question', async () => {
    const said: string[] = []
    const ask = { bench: LIFTED, symptoms: [], inside: true, live: true, pairs: false }
    const first = await study.diagnose(ask, (text) => said.push(text))
    expect(said.length).toBeGreaterThan(0)
    const { question, state } = first
    if (question === undefined) throw new Error('no question')
    const [written = ''] = question.outcomes.flatMap(({ answer }) => answer ?? [])
    const second = await study.diagnose(
      { ...ask, state: structuredClone(state), act: { do: 'answer', test: question.test, written } },
      quiet,
    )
    expect(second.result.evidence).toHaveLength(1)
    expect(structuredClone(second)).toEqual(second)
    const back = await study.diagnose({ ...ask, state: second.state, act: { do: 'undo' } }, quiet)
    expect(back.question?.test).toBe(question.test)
    const past = await study.diagnose({ ...ask, state, act: { do: 'skip', test: question.test } }, quiet)
    expect(past.question?.test).not.toBe(question.test)
    const act = { do: 'answer', test: question.test, written: 'no such outcome' }
    expect(await answered(study, 'diagnose', { ...ask, state, act }, quiet)).toHaveProperty('problems')
  }, 60_000)

  test('a request that is wrong is refused every time', async () => {
    const ask = { bench: FOUND, symptoms: ['no-such-complaint'], inside: true, live: true, pairs: false }
    for (let k = 0; k < 2; k += 1)
      expect(await answered(study, 'diagnose', ask, quiet)).toHaveProperty('problems')
  })

  test('identifies by all that was found', async () => {
    const first = await study.identify({ request: {} }, quiet)
    expect(first.next).toBeDefined()
    const id = first.next?.id ?? ''
    const second = await study.identify({ request: { skipped: [id] } }, quiet)
    expect(second.next?.id).not.toBe(id)
    const wrong = await answered(study, 'identify', { request: { seen: ['nothing=such'] } }, quiet)
    expect(wrong).toHaveProperty('problems')
  }, 60_000)
})
